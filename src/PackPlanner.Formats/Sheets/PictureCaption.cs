using System.Globalization;
using System.Text.RegularExpressions;

namespace PackPlanner.Formats.Sheets;

/// <summary>What a drawing on a page has above it stands under a drawing that is a file of its own: it may be mailed, printed and mixed up.</summary>
internal static partial class PictureCaption
{
    private const double TypeMm = 3.4, LineMm = 4.6;

    // A letter is about half as wide as the type is high.
    private const double LetterMm = 0.53 * TypeMm;

    /// <summary>The drawing with lines of words under it.</summary>
    /// <param name="svg">A drawing whose view box is in millimetres of paper.</param>
    /// <param name="sentences">What it is to say; wrapped at its width.</param>
    internal static string Under(string svg, IReadOnlyList<string> sentences)
    {
        Match size = Size().Match(svg);
        double wide = Number(size.Groups[1].Value), high = Number(size.Groups[2].Value);
        string[] lines = [.. sentences.SelectMany(sentence => Wrap(sentence, (int)((wide - 4) / LetterMm)))];
        string tall = (high + 2 + (lines.Length * LineMm)).ToString("0.##", CultureInfo.InvariantCulture);
        string words = string.Concat(lines.Select((line, i) => string.Create(
            CultureInfo.InvariantCulture, $"<text x=\"2\" y=\"{high + ((i + 0.8) * LineMm):0.##}\" font-size=\"{TypeMm}\" text-anchor=\"start\">{Html.Text(line)}</text>\n")));
        return svg.Replace(size.Value, $"viewBox=\"0 0 {size.Groups[1].Value} {tall}\" width=\"{size.Groups[1].Value}mm\" height=\"{tall}mm\"", StringComparison.Ordinal)
            .Replace("</svg>", words + "</svg>", StringComparison.Ordinal);
    }

    private static IEnumerable<string> Wrap(string text, int most)
    {
        string line = "";
        foreach (string word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > most)
            {
                yield return line;
                line = "";
            }

            line += line.Length == 0 ? word : " " + word;
        }

        yield return line;
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\" width=\"[0-9.]+mm\" height=\"[0-9.]+mm\"")]
    private static partial Regex Size();
}
