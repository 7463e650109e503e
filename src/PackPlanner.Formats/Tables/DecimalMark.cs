using System.Globalization;

namespace PackPlanner.Formats.Tables;

/// <summary>Which mark stands before the decimals. It is decided once for a file; then every figure is read strictly by it.</summary>
internal enum DecimalMark
{
    Point,
    Comma,
}

/// <summary>Reads figures strictly by a decided mark.</summary>
internal static class Figures
{
    // The group mark cannot occur, so that the other notation is refused and never misread.
    internal static readonly NumberFormatInfo PointFormat = new() { NumberDecimalSeparator = ".", NumberGroupSeparator = "\u0001" };
    internal static readonly NumberFormatInfo CommaFormat = new() { NumberDecimalSeparator = ",", NumberGroupSeparator = "\u0001" };

    private const NumberStyles PlainStyle = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    internal static NumberFormatInfo FormatOf(DecimalMark mark) => mark == DecimalMark.Point ? PointFormat : CommaFormat;

    internal static string NameOf(DecimalMark mark) => mark == DecimalMark.Point ? "point" : "comma";

    /// <summary>Digits with at most one sign in front and one mark among them.</summary>
    internal static bool IsPlain(ReadOnlySpan<char> text)
    {
        int from = text.Length > 0 && text[0] is '+' or '-' ? 1 : 0;
        int marks = 0;
        int digits = 0;
        foreach (char letter in text[from..])
        {
            if (char.IsAsciiDigit(letter))
                digits++;
            else if (letter is '.' or ',')
                marks++;
            else
                return false;
        }

        return digits > 0 && marks < 2;
    }

    /// <summary>Reads a figure that may carry thousands marks and a unit behind it.</summary>
    /// <param name="text">The field.</param>
    /// <param name="mark">The decided mark.</param>
    /// <param name="value">A finite number.</param>
    /// <param name="unitText">What stands behind the figure, without blanks.</param>
    /// <returns>False when the field does not begin with one figure in this notation.</returns>
    internal static bool TryRead(string text, DecimalMark mark, out double value, out string unitText)
    {
        // Most fields are a plain figure, and taking apart is dear.
        unitText = "";
        if (double.TryParse(text, PlainStyle, FormatOf(mark), out value) && double.IsFinite(value))
            return true;
        (string figure, unitText) = Split(text);
        return TryReadPlain(figure, mark, out value) && (unitText.Length == 0 || !char.IsDigit(unitText[0]));
    }

    /// <summary>The same, also with the minus behind the figure or brackets round it, as books of account write what is negative.</summary>
    internal static bool TryReadSigned(string text, DecimalMark mark, out double value, out string unitText)
    {
        string field = text.Trim();
        if (field is ['(', _, .., ')'] && TryRead(field[1..^1], mark, out value, out unitText) && value >= 0)
        {
            value = 0 - value;
            return true;
        }

        if (!TryRead(field, mark, out value, out unitText))
            return false;
        if (unitText is "-" or "\u2212" && value >= 0)
            (value, unitText) = (0 - value, "");
        return true;
    }

    /// <summary>Splits a field into the figure at its front and the rest.</summary>
    internal static (string Figure, string Tail) Split(string text)
    {
        string field = InAscii(Separators.Bare(text.Trim())).Replace('\u2212', '-').Replace('\u00A0', ' ').Replace('\u202F', ' ').Replace('\u2019', '\'');
        int end = 0;
        int lastDigit = 0;
        while (end < field.Length && (char.IsAsciiDigit(field[end]) || field[end] is '.' or ',' or ' ' or '\'' or '+' or '-' || IsExponent(field, end)))
        {
            if (char.IsAsciiDigit(field[end]))
                lastDigit = end + 1;
            end++;
        }

        int figureEnd = lastDigit < field.Length && lastDigit > 0 && field[lastDigit] is '.' or ',' && lastDigit + 1 == field.Length ? lastDigit + 1 : lastDigit;
        return (field[..figureEnd].Trim(), field[figureEnd..].Trim());
    }

    // Digits of full width, Arabic and Persian ones, and a point at half height, as in 2·85.
    private static string InAscii(string text)
    {
        if (!text.AsSpan().ContainsAnyExceptInRange('\0', '\u00B6'))
            return text;
        return string.Create(text.Length, text, static (plain, from) =>
        {
            for (int i = 0; i < plain.Length; i++)
                plain[i] = from[i] switch
                {
                    >= '\uFF01' and <= '\uFF5E' => (char)(from[i] - '\uFEE0'),
                    >= '\u0660' and <= '\u0669' => (char)(from[i] - '\u0660' + '0'),
                    >= '\u06F0' and <= '\u06F9' => (char)(from[i] - '\u06F0' + '0'),
                    '\u066B' => '.',
                    '\u00B7' when i > 0 && i + 1 < from.Length && char.IsAsciiDigit(from[i - 1]) && char.IsAsciiDigit(from[i + 1]) => '.',
                    _ => from[i],
                };
        });
    }

    private static bool TryReadPlain(string figure, DecimalMark mark, out double value)
    {
        value = 0;
        if (figure.Length == 0)
            return false;
        char point = mark == DecimalMark.Point ? '.' : ',';
        char other = mark == DecimalMark.Point ? ',' : '.';
        string plain = figure;
        char group = figure.Contains(' ') ? ' ' : figure.Contains('\'') ? '\'' : figure.Contains(other) ? other : '\0';
        if (group != '\0')
        {
            if (!IsGrouped(figure, group, point))
                return false;
            plain = figure.Replace(group.ToString(), "", StringComparison.Ordinal);
        }

        return double.TryParse(plain, PlainStyle, FormatOf(mark), out value)
            && double.IsFinite(value);
    }

    // 1 234 567,8: one to three digits, then groups of exactly three, then the decimals without a group mark.
    private static bool IsGrouped(string figure, char group, char point)
    {
        int from = figure[0] is '+' or '-' ? 1 : 0;
        int decimals = figure.IndexOf(point, StringComparison.Ordinal);
        string whole = figure[from..(decimals < 0 ? figure.Length : decimals)];
        if (decimals >= 0 && figure[decimals..].Contains(group))
            return false;
        string[] groups = whole.Split(group);
        return groups[0].Length is >= 1 and <= 3
            && groups[0].All(char.IsAsciiDigit)
            && groups.Skip(1).All(each => each.Length == 3 && each.All(char.IsAsciiDigit));
    }

    private static bool IsExponent(string text, int at) =>
        text[at] is 'e' or 'E' && at > 0 && char.IsAsciiDigit(text[at - 1]) && at + 1 < text.Length
        && (char.IsAsciiDigit(text[at + 1]) || (text[at + 1] is '-' or '+' && at + 2 < text.Length && char.IsAsciiDigit(text[at + 2])));
}
