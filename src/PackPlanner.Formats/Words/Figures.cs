using System.Globalization;

namespace PackPlanner.Formats.Words;

/// <summary>Rounds a figure for people; scripts get it in full.</summary>
public static class Figures
{
    /// <summary>A figure with a fixed number of places.</summary>
    /// <param name="figure">The figure; null or not finite is shown as -.</param>
    /// <param name="places">Digits after the point.</param>
    /// <returns>The text, without a minus before zero.</returns>
    public static string Fixed(double? figure, int places)
    {
        if (figure is not { } known || !double.IsFinite(known))
            return "-";
        string text = known.ToString("F" + places.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.StartsWith('-') && text.All(mark => mark is '-' or '0' or '.') ? text[1..] : text;
    }

    /// <summary>A figure with about so many digits that matter.</summary>
    /// <param name="figure">The figure; null or not finite is shown as -.</param>
    /// <param name="digits">Digits that matter, at least 1.</param>
    /// <returns>The text, without an exponent.</returns>
    public static string Digits(double? figure, int digits)
    {
        if (figure is not { } known || !double.IsFinite(known))
            return "-";
        // Less than a millionth of any unit here is what is left over of a sum.
        int before = Math.Abs(known) < 1e-6 ? 1 : (int)Math.Floor(Math.Log10(Math.Abs(known))) + 1;
        return Fixed(known, Math.Clamp(digits - before, 0, 9));
    }
}
