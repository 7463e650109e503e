using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Words for charge and discharge, in headings and in columns of states.</summary>
internal static class DirectionWords
{
    private static readonly string[] Discharge =
        ["discharg", "dischrg", "dsg", "dchg", "dchrg", "entlad", "decharg", "descarg", "scaric", "ontlad", "ontlaad", "rozlad", "放电", "driving", "riding"];

    private static readonly string[] Charge =
        ["charg", "chrg", "chg", "geladen", "aufladen", "ladung", "ladestrom", "carg", "caric", "opladen", "laadstroom", "ladow", "充电"];

    /// <summary>1 for discharge, -1 for charge, 0 for anything else.</summary>
    internal static int Of(string text)
    {
        string plain = HeadingWords.Plain(text);
        if (plain.Length == 0 || plain.StartsWith("not", StringComparison.Ordinal))
            return 0;
        if (Discharge.Any(word => plain.Contains(word, StringComparison.Ordinal)) || plain is "ampsout" or "currentout" or "iout" or "out" or "dis" or "disa" or "dch" or "drive" or "ride" or "fahrt")
            return 1;
        return Charge.Any(word => plain.Contains(word, StringComparison.Ordinal)) || plain is "ampsin" or "currentin" or "iin" or "in" or "laden" or "laedt" or "ladt" or "cha" ? -1 : 0;
    }

    /// <summary>1 for yes, 0 for no, 2 for anything else.</summary>
    internal static int YesOrNo(string text) => HeadingWords.Plain(text) switch
    {
        "true" or "yes" or "on" or "y" or "t" or "ja" or "oui" or "si" or "ein" or "tak" or "是" => 1,
        "false" or "no" or "off" or "n" or "f" or "nein" or "non" or "nee" or "aus" or "nie" or "否" => 0,
        _ => text.Trim() is "1" ? 1 : text.Trim() is "0" or "" ? 0 : 2,
    };

    /// <summary>Single letters: C and D, or in German L and E.</summary>
    internal static int OfLetter(string text) => text.Trim().ToUpperInvariant() switch
    {
        "D" or "E" => 1,
        "C" or "L" => -1,
        _ => 0,
    };
}
