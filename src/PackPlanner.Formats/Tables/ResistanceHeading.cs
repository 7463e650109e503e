using System.Globalization;
using System.Text.RegularExpressions;

namespace PackPlanner.Formats.Tables;

/// <summary>What a heading tells about a resistance beside its name: DC or 1 kHz, and seconds after the step.</summary>
internal static partial class ResistanceHeading
{
    /// <summary>The figure at 1 kHz.</summary>
    internal static bool IsAc(string raw) => Ac().IsMatch(raw);

    /// <summary>A pulse resistance.</summary>
    internal static bool IsDc(string raw) => Dc().IsMatch(raw) || AfterS(raw) is not null;

    /// <summary>Seconds between the step and the reading; null where the heading does not say.</summary>
    internal static double? AfterS(string raw)
    {
        Match match = Seconds().Match(raw);
        if (!match.Success)
            return null;
        double figure = double.Parse(match.Groups[1].Value.Replace(',', '.'), CultureInfo.InvariantCulture);
        return match.Groups[2].Value.Equals("ms", StringComparison.OrdinalIgnoreCase) ? figure / 1000 : figure;
    }

    [GeneratedRegex(@"(?<![a-z])(ac|acir|acr)(?![a-z])|1\s*khz|impedan|交流", RegexOptions.IgnoreCase)]
    private static partial Regex Ac();

    [GeneratedRegex(@"(?<![a-z])(dc|dcir|dcr)(?![a-z])|pulse|puls|直流", RegexOptions.IgnoreCase)]
    private static partial Regex Dc();

    // Only figures that a number can be made of: \d would also take the digits of other scripts.
    [GeneratedRegex(@"(?<![0-9.,])([0-9]{1,9}(?:[.,][0-9]{1,9})?)\s?(ms|s)(?![a-z])", RegexOptions.IgnoreCase)]
    private static partial Regex Seconds();
}
