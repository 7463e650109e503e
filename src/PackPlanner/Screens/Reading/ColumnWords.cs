using System.Text.RegularExpressions;

namespace PackPlanner.Screens.Reading;

/// <summary>What a column is read as, in words: the names that options and answers use are those of a program.</summary>
internal static partial class ColumnWords
{
    /// <summary>The words.</summary>
    /// <param name="readAs">As the reading has it, such as chargeCurrent.</param>
    /// <returns>Such as "charging current".</returns>
    internal static string Of(string readAs) => readAs switch
    {
        "chargeCurrent" => "charging current",
        "dcResistance" => "DC resistance",
        "acResistance" => "1 kHz resistance",
        "restVoltage" => "rest volts",
        "laterRestVoltage" => "later rest volts",
        "endVoltage" => "end volts",
        "cutoffVoltage" => "cut-off volts",
        "cellVoltage" => "cell volts",
        "packVoltage" => "pack volts",
        "voltage" => "volts",
        "selfDischarge" => "self-discharge",
        "laterDate" => "later date",
        _ => Capitals().Replace(readAs, letter => " " + letter.Value.ToLowerInvariant()),
    };

    [GeneratedRegex("(?<=[a-z])[A-Z]")]
    private static partial Regex Capitals();
}
