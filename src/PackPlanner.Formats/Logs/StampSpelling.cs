using System.Globalization;
using System.Text.RegularExpressions;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Writes stamps that few programs write as most do: weekdays, months in words, Chinese, Japanese and Korean signs, dots and dashes in the clock, the day of the year, zones by name.</summary>
internal static partial class StampSpelling
{
    // The first three letters without accents, or four where three are shared, in the languages of the headings.
    private static readonly string[] Months =
    [
        "jan|ene|gen|sty|januar|ocak|led", "feb|fev|lut|fevr", "mar|maa|mrt|maerz|marz|mars", "apr|avr|abr|kwi", "may|mai|mag|mei|maj", "jun|juin|giu|cze|czerw",
        "jul|juil|lug|lip", "aug|aou|aout|ago|sie", "sep|set|wrz|sept", "oct|okt|ott|out|paz", "nov|lis", "dec|dez|des|dic|gru|deze",
    ];

    /// <summary>The stamp with year, month and day apart by dashes and the clock by colons.</summary>
    /// <returns>Null where nothing had to be written otherwise.</returns>
    internal static string? Usual(string text)
    {
        string usual = text.Trim(' ', '\t', '"', '\'', '[', ']', '(', ')');
        usual = EastAsian(usual);
        usual = Weekday().Replace(usual, "");
        usual = InWords().Replace(usual, match => Date(match.Groups[3].Value, MonthOf(match.Groups[2].Value), match.Groups[1].Value) ?? match.Value);
        usual = DayOfYear().Replace(usual, match => DateOfDay(match));
        usual = ClockApart().Replace(usual, match => $"{match.Groups[1].Value.Replace('_', '-')} {match.Groups[2].Value}:{match.Groups[3].Value}:{(match.Groups[4].Length > 0 ? match.Groups[4].Value : "0")}{match.Groups[5].Value}");
        usual = Zone().Replace(usual, "");
        return usual == text ? null : usual;
    }

    /// <summary>Seconds of "1d 2h 3m 4.5s" or "PT3M4S".</summary>
    internal static bool TryDuration(string text, out double seconds)
    {
        seconds = 0;
        Match match = Duration().Match(text.Trim());
        if (!match.Success || match.Groups.Values.Skip(1).All(group => group.Length == 0))
            return false;
        double[] sizes = [86400, 3600, 60, 1];
        for (int i = 0; i < sizes.Length; i++)
            if (match.Groups[i + 1].Length > 0)
                seconds += sizes[i] * double.Parse(match.Groups[i + 1].Value.Replace(',', '.'), CultureInfo.InvariantCulture);
        return true;
    }

    private static string EastAsian(string text)
    {
        if (text.All(char.IsAscii))
            return text;
        string plain = DateSigns().Replace(text, "$1-$2-$3 ");
        plain = ClockSigns().Replace(plain, match => $"{match.Groups[1].Value}:{match.Groups[2].Value}:{(match.Groups[3].Length > 0 ? match.Groups[3].Value : "0")}");
        Match half = HalfDay().Match(plain);
        return half.Success ? plain.Replace(half.Value, "", StringComparison.Ordinal).Trim() + (half.Value is "下午" or "午後" or "오후" ? " PM" : " AM") : plain.Trim();
    }

    private static int MonthOf(string word)
    {
        string plain = HeadingWords.Plain(word);
        for (int length = Math.Min(5, plain.Length); length >= 3; length--)
            for (int month = 0; month < Months.Length; month++)
                if (Months[month].Split('|').Contains(plain[..length]))
                    return month + 1;
        return 0;
    }

    private static string? Date(string year, int month, string day) =>
        month == 0 ? null : $"{(year.Length == 2 ? "20" + year : year)}-{month:00}-{day}";

    private static string DateOfDay(Match match)
    {
        int year = int.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture);
        int day = int.Parse(match.Groups[2].ValueSpan, CultureInfo.InvariantCulture);
        return year is < 1900 or > 2200 || day < 1 || day > (DateTime.IsLeapYear(year) ? 366 : 365) ? match.Value
            : new DateTime(year, 1, 1, 0, 0, 0, DateTimeKind.Unspecified).AddDays(day - 1).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"^\p{L}{2,10}[.,]{0,2}\s+(?=[0-9])")]
    private static partial Regex Weekday();

    [GeneratedRegex(@"^([0-9]{1,2})[.\s-]*(?:de\s+)?(\p{L}{3,12})\.?[\s,-]*(?:de\s+)?([0-9]{4}|[0-9]{2})(?![0-9])")]
    private static partial Regex InWords();

    [GeneratedRegex(@"^([0-9]{4})-([0-9]{3})(?=[T ]|$)")]
    private static partial Regex DayOfYear();

    [GeneratedRegex(@"^([0-9]{4}[-/._][0-9]{1,2}[-/._][0-9]{1,2}|[0-9]{1,2}[-/._][0-9]{1,2}[-/._][0-9]{2,4})[ T_,-]+([0-9]{1,2})[._hH-]([0-9]{2})(?:[._m:'-]([0-9]{2})s?)?([.,][0-9]+)?$")]
    private static partial Regex ClockApart();

    [GeneratedRegex(@"\s*\(?\b(GMT|CET|CEST|MEZ|MESZ|WET|WEST|EET|EEST|BST|EST|EDT|CST|CDT|MST|MDT|PST|PDT|JST|KST|IST|MSK)\)?$|(?<=\s)(UTC|GMT)(?=[+-])")]
    private static partial Regex Zone();

    [GeneratedRegex(@"^P?(?:([0-9]+)\s*d\p{L}*\s*)?T?(?:([0-9]+)\s*h\p{L}*\s*)?(?:([0-9]+)\s*m\p{L}*\s*)?(?:([0-9]+(?:[.,][0-9]+)?)\s*s\p{L}*)?$", RegexOptions.IgnoreCase)]
    private static partial Regex Duration();

    [GeneratedRegex(@"([0-9]{4})\s*[年년]\s*([0-9]{1,2})\s*[月월]\s*([0-9]{1,2})\s*[日일]\s*")]
    private static partial Regex DateSigns();

    [GeneratedRegex(@"([0-9]{1,2})\s*[时時点點시]\s*([0-9]{1,2})\s*[分분](?:\s*([0-9]{1,2}(?:\.[0-9]+)?)\s*[秒초])?")]
    private static partial Regex ClockSigns();

    [GeneratedRegex("上午|下午|午前|午後|오전|오후")]
    private static partial Regex HalfDay();
}
