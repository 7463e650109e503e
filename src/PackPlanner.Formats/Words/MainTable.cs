using System.Globalization;
using System.Text;

namespace PackPlanner.Formats.Words;

/// <summary>The main table of an answer, for --csv: headings with units, figures in full.</summary>
/// <param name="Headings">Column names with their unit, such as capacityAh.</param>
/// <param name="Rows">Each row has as many entries as there are headings: string, double, int, bool or null.</param>
public sealed record MainTable(IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<object?>> Rows)
{
    /// <summary>A table without rows.</summary>
    public static MainTable Empty { get; } = new([], []);

    /// <summary>Writes the table for a spreadsheet.</summary>
    /// <param name="decimalComma">Comma as the decimal mark and semicolon between fields; else point and comma.</param>
    /// <returns>Lines that end in CR LF, as RFC 4180 wants.</returns>
    public string ToCsv(bool decimalComma)
    {
        char separator = decimalComma ? ';' : ',';
        StringBuilder text = new();
        text.AppendJoin(separator, Headings.Select(heading => Field(heading, separator))).Append("\r\n");
        foreach (IReadOnlyList<object?> row in Rows)
            text.AppendJoin(separator, row.Select(entry => Field(Text(entry, decimalComma), separator))).Append("\r\n");
        return text.ToString();
    }

    private static string Text(object? entry, bool decimalComma) => entry switch
    {
        null => "",
        double figure when !double.IsFinite(figure) => "",
        double figure => Figure(figure, decimalComma),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        string words => Harmless(words),
        _ => entry.ToString() ?? "",
    };

    private static string Figure(double figure, bool decimalComma)
    {
        string text = figure.ToString("R", CultureInfo.InvariantCulture);
        return decimalComma ? text.Replace('.', ',') : text;
    }

    // A spreadsheet runs a cell that begins with one of these as a formula; a leading apostrophe makes it text.
    private static string Harmless(string words) =>
        words.Length > 0 && "=+-@\t\r".Contains(words[0]) ? "'" + Quiet(words) : Quiet(words);

    // The table may go to a terminal: what steers one is shown as a stand-in, line ends and tabs stay.
    private static string Quiet(string words) => ReferenceEquals(OneLine.Of(words), words)
        ? words
        : string.Concat(words.Select(letter => letter is '\n' or '\r' or '\t' ? letter.ToString() : OneLine.Of(letter.ToString())));

    private static string Field(string text, char separator) =>
        text.AsSpan().ContainsAny([separator, '"', '\r', '\n', '\t'])
            ? '"' + text.Replace("\"", "\"\"", StringComparison.Ordinal) + '"'
            : text;
}
