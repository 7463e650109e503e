using System.Globalization;
using System.Text.RegularExpressions;
using PackPlanner.Formats.Words;

namespace PackPlanner.Screens.Drawing;

/// <summary>How the user wants things shown. What is stored never depends on it.</summary>
/// <param name="Ascii">Nothing beyond ASCII.</param>
/// <param name="DecimalComma">A comma as decimal mark.</param>
/// <param name="UsUnits">Pounds, inches, degrees Fahrenheit and miles.</param>
internal sealed partial record Look(bool Ascii = false, bool DecimalComma = false, bool UsUnits = false)
{
    /// <summary>Words as this look writes them; call before measuring, because ASCII words can be longer.</summary>
    internal string Of(string words) => Ascii ? AsciiText.Of(words) : words;

    /// <summary>The same for words that were cut to a width: what stands for the ellipsis takes the room of the signs before it.</summary>
    internal string OfCut(string words)
    {
        if (!Ascii)
            return words;
        const string Dots = "...";
        for (int at = words.IndexOf('…'); at >= 0; at = words.IndexOf('…'))
            words = string.Concat(words.AsSpan(0, Math.Max(0, at + 1 - Dots.Length)), Dots.AsSpan(0, Math.Min(Dots.Length, at + 1)), words.AsSpan(at + 1));
        return Of(words);
    }

    /// <summary>Sentences made elsewhere, whose figures carry their units: in the user's units and signs.</summary>
    internal string Prose(string words)
    {
        string units = UsUnits ? Formats.Words.UsUnits.Of(words) : words;
        return Of(DecimalComma ? Points().Replace(units, ",") : units);
    }

    /// <summary>A figure with a fixed number of decimals; unknown is a dash.</summary>
    internal string Figure(double? value, int decimals)
    {
        if (value is not { } known || !double.IsFinite(known))
            return "-";
        string text = known.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        if (text.StartsWith('-') && text.AsSpan(1).IndexOfAnyExcept('0', '.') < 0)
            text = text[1..];
        return DecimalComma ? text.Replace('.', ',') : text;
    }

    /// <summary>A figure with as many decimals as it has, up to those of the pattern: as one would type it.</summary>
    internal string AsTyped(double value, string pattern)
    {
        string text = value.ToString(pattern, CultureInfo.InvariantCulture);
        return DecimalComma ? text.Replace('.', ',') : text;
    }

    /// <summary>A share in percent.</summary>
    internal string Percent(double? fraction, int decimals) =>
        fraction is null ? "-" : Figure(fraction * 100, decimals) + " %";

    /// <summary>Millimetres, or inches where the user has chosen them.</summary>
    internal string Length(double? mm, int decimals = 1) => $"{Bare(mm, decimals)} {(UsUnits ? "in" : "mm")}";

    /// <summary>The same without its unit, where the unit follows or stands above.</summary>
    internal string Bare(double? mm, int decimals = 1) => UsUnits ? Figure(mm / 25.4, decimals + 1) : Figure(mm, decimals);

    /// <summary>Kilograms, or pounds where the user has chosen them.</summary>
    internal string Mass(double? kg, int decimals = 1) =>
        UsUnits ? Figure(kg / 0.45359237, decimals) + " lb" : Figure(kg, decimals) + " kg";

    /// <summary>Kilometres, or miles where the user has chosen them.</summary>
    internal string Distance(double? km, int decimals = 0) =>
        UsUnits ? Figure(km / 1.609344, decimals) + " miles" : Figure(km, decimals) + " km";

    /// <summary>Watt-hours per kilometre, or per mile where the user has chosen miles.</summary>
    internal string Use(double whPerKm, int decimals = 0) =>
        UsUnits ? Figure(whPerKm * 1.609344, decimals) + " Wh/mile" : Figure(whPerKm, decimals) + " Wh/km";

    /// <summary>Degrees Celsius, or Fahrenheit where the user has chosen them.</summary>
    internal string Temperature(double? degC, int decimals = 0) =>
        UsUnits ? Figure((degC * 9 / 5) + 32, decimals) + " °F" : Figure(degC, decimals) + " °C";

    // The point of a figure, and no other: not of a date, a paragraph (5.2.2), the name of a file or of a test (UN 38.3).
    [GeneratedRegex(@"(?<=(?<![\w.,/\\])[0-9]+)(?<!UN [0-9]+)\.(?=[0-9]+(?![0-9])(?!\.\w))", RegexOptions.CultureInvariant)]
    private static partial Regex Points();
}
