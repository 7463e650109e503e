using System.Text;

namespace PackPlanner.Formats.Tables;

/// <summary>A heading taken apart: its words without case and accents, the number in it, and the unit it carries.</summary>
internal sealed class HeadingWords
{
    private static readonly Dictionary<char, string> Plainer = Letters(
        "aàáâãäåāą", "cçćč", "dďđ", "eèéêëēęě", "iìíîïī", "lłĺľ", "nñńň", "oòóôõöøō", "rř", "sśšşș", "tťțţ", "uùúûüůūű", "yýÿ", "zźżž");

    private readonly string[] _tokens;
    private readonly string _joined;
    private string? _unitWithFigures;

    /// <summary>Takes a heading apart.</summary>
    /// <param name="raw">As in the file.</param>
    internal HeadingWords(string raw)
    {
        Raw = raw.Trim();
        string rest = TakeBracketedUnit(Raw);
        // The capital ends the word: "SoC" is no "so" in degrees Celsius.
        string[] pieces = [.. Pieces(rest.Replace("SoC", "SOC", StringComparison.Ordinal).Replace("SoH", "SOH", StringComparison.Ordinal))];
        if (Unit is null)
            pieces = TakeTrailingUnit(pieces);
        if (_unitWithFigures is { } written)
            rest = rest.Remove(rest.LastIndexOf(written, StringComparison.Ordinal), written.Length);
        _tokens = [.. pieces.Select(Fold).Select(piece => new string([.. piece.Where(char.IsLetter)])).Where(piece => piece.Length > 0)];
        _joined = string.Concat(_tokens);
        (Numbers, Family) = TakeNumbers(rest);
    }

    /// <summary>As in the file, without outer blanks.</summary>
    internal string Raw { get; }

    /// <summary>The unit in the heading, null when there is none.</summary>
    internal FileUnit? Unit { get; private set; }

    /// <summary>The unit stands in brackets, after a slash or a comma, or alone, and so is no word by chance.</summary>
    internal bool UnitIsCertain { get; private set; }

    /// <summary>The last whole number in the heading, null when there is none.</summary>
    internal int? Number => Numbers.Count == 0 ? null : Numbers[^1];

    /// <summary>All whole numbers in the heading, from the left.</summary>
    internal IReadOnlyList<int> Numbers { get; }

    /// <summary>The heading with its numbers taken out; columns that share it are a family.</summary>
    internal string Family { get; }

    /// <summary>The words run together, without number and unit.</summary>
    internal string Joined => _joined;

    /// <summary>The words apart, without number and unit.</summary>
    internal string Words => string.Join(' ', _tokens);

    /// <summary>Whether one of the words is this one.</summary>
    internal bool Has(string plain) => _tokens.Contains(plain) || (plain.Length > 4 && _joined.Contains(plain, StringComparison.Ordinal));

    /// <summary>A name as it is compared: letters only, lower case, no accents.</summary>
    internal static string Plain(string name) => new([.. Fold(name).Where(char.IsLetter)]);

    /// <summary>How well a known name fits: 0 not at all; longer names fit better; 1000 is added when nothing else is in the heading.</summary>
    /// <param name="plain">The name, letters only.</param>
    /// <param name="unitAgrees">The heading carries a unit of the name's quantity, so that one letter beside it is a symbol: "pack I (A)".</param>
    internal int FitOf(string plain, bool unitAgrees = false)
    {
        if (_joined == plain)
            return 1000 + (10 * plain.Length);
        bool chinese = plain.Length > 0 && plain[0] > 0x2E80;
        if (!chinese && plain.Length < 2)
            return unitAgrees && plain.Length == 1 && _tokens.Contains(plain) ? 12 : 0;
        if (IsRunOfWords(plain))
            return (10 * plain.Length) + 5;
        return (chinese ? plain.Length >= 2 : plain.Length >= 5) && _joined.Contains(plain, StringComparison.Ordinal) ? 10 * plain.Length : 0;
    }

    private bool IsRunOfWords(string plain)
    {
        for (int from = 0; from < _tokens.Length; from++)
        {
            int at = 0;
            for (int word = from; word < _tokens.Length && at < plain.Length; word++)
            {
                if (string.CompareOrdinal(plain, at, _tokens[word], 0, _tokens[word].Length) != 0)
                {
                    at = -1;
                    break;
                }

                at += _tokens[word].Length;
            }

            if (at == plain.Length)
                return true;
        }

        return false;
    }

    private static string Fold(string text)
    {
        StringBuilder plain = new(text.Length);
        foreach (char letter in text.ToLowerInvariant())
            plain.Append(Plainer.TryGetValue(letter, out string? known) ? known : letter.ToString());
        return plain.ToString();
    }

    private static Dictionary<char, string> Letters(params string[] families)
    {
        Dictionary<char, string> table = new() { ['ß'] = "ss" };
        foreach (string family in families)
            foreach (char accented in family[1..])
                table[accented] = family[..1];
        return table;
    }

    private string TakeBracketedUnit(string raw)
    {
        string text = raw.Replace('（', '(').Replace('）', ')').Replace('【', '[').Replace('】', ']');
        for (int open = text.Length - 1; open >= 0; open--)
        {
            if (text[open] is not ('(' or '[' or '{'))
                continue;
            int close = text.AsSpan(open).IndexOfAny(")]}") is var at && at > 0 ? open + at : text.Length;
            if (FileUnit.Find(text[(open + 1)..close]) is { } unit)
            {
                Unit = unit;
                UnitIsCertain = true;
                return text[..open] + " " + text[Math.Min(text.Length, close + 1)..];
            }
        }

        // The slash of "drift mV/day" belongs to the unit.
        if (text.LastIndexOfAny([' ', '_']) is var blank and > 0 && FileUnit.Find(text[(blank + 1)..]) is { Of: Dimension.VoltageRate } rate)
        {
            (Unit, UnitIsCertain) = (rate, true);
            return text[..blank];
        }

        foreach (string mark in (string[])["/", ",", " in ", ";", ":"])
        {
            int at = text.LastIndexOf(mark, StringComparison.Ordinal);
            if (at > 0 && FileUnit.Find(text[(at + mark.Length)..]) is { } unit)
            {
                Unit = unit;
                UnitIsCertain = true;
                return text[..at];
            }
        }

        // "R" alone is a resistance whose unit is not said.
        if (text != "R" && FileUnit.Find(text) is { } alone && text.Trim().Length > 0)
        {
            Unit = alone;
            UnitIsCertain = alone.Name.Length > 1 || alone == FileUnit.Hour || alone == FileUnit.Second;
        }

        return text;
    }

    // Words, and the parts of words such as packVoltage and BMSCellVoltage.
    private static IEnumerable<string> Pieces(string text)
    {
        int from = 0;
        for (int i = 0; i <= text.Length; i++)
        {
            bool apart = i == text.Length || !(char.IsLetterOrDigit(text[i]) || text[i] is '°' or '%' or '‰');
            bool hump = !apart && i > from
                && ((char.IsUpper(text[i]) && char.IsLower(text[i - 1]) && text[i - 1] != 'm' && !IsPrefix(text, from, i))
                    || (char.IsUpper(text[i]) && text[i - 1] == 'm' && i - 1 > from && char.IsLower(text[i - 2]) && !IsMilli(text, i))
                    || (char.IsLower(text[i]) && i - 1 > from && char.IsUpper(text[i - 1]) && char.IsUpper(text[i - 2]) && !IsMilli(text, i)));
            if (!apart && !hump)
                continue;
            int end = hump && char.IsLower(text[i]) ? i - 1 : i;
            if (end > from)
                yield return text[from..end];
            from = apart ? i + 1 : end;
        }
    }

    // "i_dA" counts tenths of amperes: the small letter belongs to the unit, where it stands alone in front of it.
    private static bool IsPrefix(string text, int from, int at) =>
        at - 1 == from && text[from] is 'd' or 'c' or 'u' or 'k' && (at + 1 == text.Length || !char.IsLetter(text[at + 1]));

    // mAh and mOhm hold a capital inside and are one word.
    private static bool IsMilli(string text, int at) =>
        text.AsSpan(Math.Max(0, at - 2), Math.Min(4, text.Length - Math.Max(0, at - 2))).IndexOf("mA", StringComparison.Ordinal) >= 0
        || text.AsSpan(at).StartsWith("h", StringComparison.Ordinal);

    // capacity_Ah, capacityAh, ocv_rest_V_at_30pct: the unit is the last word, or a sure one further in.
    private string[] TakeTrailingUnit(string[] pieces)
    {
        for (int i = pieces.Length - 1; i >= 0; i--)
        {
            bool last = i == pieces.Length - 1;
            bool figures = pieces[i].Any(char.IsDigit);
            if ((figures && !(last && i > 0 && IsMultiple(pieces[i]))) || (!last && !IsSureInside(pieces[i])) || (pieces.Length > 1 && i == 0 && !IsSureInFront(pieces[i])) || (pieces.Length == 1 && pieces[i] == "R"))
                continue;
            if (FileUnit.Find(pieces[i]) is not { } unit)
                continue;
            Unit = unit;
            UnitIsCertain = pieces.Length == 1 || figures || IsSureInside(pieces[i]);
            _unitWithFigures = figures ? pieces[i] : null;
            if (pieces.Length == 1 && pieces[i].Length == 1 && unit != FileUnit.Hour && unit != FileUnit.Second)
                UnitIsCertain = false;
            return [.. pieces.Where((_, at) => at != i)];
        }

        return pieces;
    }

    // i_10ma counts tens of milliamperes; "cell 1mV" is cell 1 in millivolts.
    private static bool IsMultiple(string piece) => piece.StartsWith("10", StringComparison.Ordinal) && FileUnit.Find(piece) is not null;

    // "Ah dis", "mAh chg"; a single letter in front is a symbol.
    private static bool IsSureInFront(string piece) => piece is "Ah" or "mAh" or "Wh" or "mWh" or "mOhm" or "mΩ";

    private static bool IsSureInside(string piece) => piece is "V" or "mV" or "mv" or "Ah" or "ah" or "mAh" or "mah" or "mohm" or "mOhm"
        or "mΩ" or "Ohm" or "ohm" or "mA" or "ma" or "Wh" or "wh" or "mWh" or "degC" or "degc" or "°C" or "Milliohm" or "milliohm" or "Millivolt";

    private static (IReadOnlyList<int> Numbers, string Family) TakeNumbers(string text)
    {
        List<int> numbers = [];
        StringBuilder family = new();
        for (int i = 0; i < text.Length;)
        {
            int end = i;
            while (end < text.Length && char.IsAsciiDigit(text[end]))
                end++;
            if (end > i && end - i <= 6)
            {
                numbers.Add(int.Parse(text.AsSpan(i, end - i), System.Globalization.CultureInfo.InvariantCulture));
                family.Append('#');
            }
            else
            {
                end = Math.Max(end, i + 1);
                family.Append(text, i, end - i);
            }

            i = end;
        }

        return (numbers, family.ToString().Trim());
    }
}
