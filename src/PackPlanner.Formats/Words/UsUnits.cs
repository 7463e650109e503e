using System.Globalization;
using System.Text.RegularExpressions;

namespace PackPlanner.Formats.Words;

/// <summary>Words with pounds, inches, miles and degrees Fahrenheit, for --units us; JSON and tables stay metric.</summary>
/// <remarks>
/// Sentences are made in many rooms, so the finished text is turned: a figure, or a row of figures that share one unit, a space
/// and a metric unit. Words that a user would type (38Wh/km) have no space and stay. Square millimetres of a cable stay, and the gauge that has at least as many
/// stands beside them.
/// </remarks>
public static partial class UsUnits
{
    /// <summary>Turns the figures of a text.</summary>
    /// <param name="text">Finished words, metric.</param>
    /// <returns>The same words with the other units.</returns>
    public static string Of(string text) => MetricFigures().Replace(Areas().Replace(text, area => $"{area.Value} ({ConductorWords.GaugeWithAtLeast(double.Parse(area.Groups["figure"].Value, CultureInfo.InvariantCulture))})"), found =>
    {
        Unit unit = Units[found.Groups["unit"].Value];
        return AFigure().Replace(found.Groups["figures"].Value, figure => Turned(figure.Value, unit)) + found.Groups["space"].Value + unit.Name;
    });

    /// <summary>Turns one fact of --plain, whose name states its unit.</summary>
    /// <param name="path">Path of the fact, such as options.1.packMassKg or marginMm.-x.</param>
    /// <param name="value">Its values, apart by blanks; - for unknown.</param>
    /// <returns>Path and values, turned where the name ends with a metric unit.</returns>
    public static (string Path, string Value) Fact(string path, string value)
    {
        Match named = MetricName().Match(path);
        if (!named.Success)
            return (path, Of(value));
        Unit unit = Units[named.Groups["unit"].Value switch
        {
            "Kmh" => "km/h",
            "whPerKm" or "WhPerKm" => "Wh/km",
            "Km" => "km",
            "Mm" => "mm",
            "Kg" => "kg",
            _ => "°C",
        }];
        string suffix = char.IsLower(named.Groups["unit"].Value[0]) ? char.ToLowerInvariant(unit.Suffix[0]) + unit.Suffix[1..] : unit.Suffix;
        string turned = AFigure().Replace(value, figure => double.TryParse(figure.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double metric)
            ? unit.From(metric).ToString("R", CultureInfo.InvariantCulture)
            : figure.Value);
        return (path[..named.Groups["unit"].Index] + suffix + named.Groups["rest"].Value, turned);
    }

    private static readonly Dictionary<string, Unit> Units = new(StringComparer.Ordinal)
    {
        ["mm"] = new("in", "In", mm => mm / 25.4, 2),
        ["m"] = new("ft", "Ft", m => m / 0.3048, 0),
        ["km"] = new("miles", "Miles", km => km / 1.609344, 0),
        ["km/h"] = new("mph", "Mph", kmh => kmh / 1.609344, 0),
        ["Wh/km"] = new("Wh/mile", "WhPerMile", whPerKm => whPerKm * 1.609344, 0),
        ["kg"] = new("lb", "Lb", kg => kg / 0.45359237, 0),
        ["°C"] = new("°F", "DegF", degC => (degC * 9 / 5) + 32, 0),
    };

    // As many places as the metric figure has, and more where the unit is larger.
    private static string Turned(string figure, Unit unit)
    {
        int point = figure.IndexOf('.', StringComparison.Ordinal);
        int places = (point < 0 ? 0 : figure.Length - point - 1) + unit.MorePlaces;
        string turned = unit.From(double.Parse(figure, CultureInfo.InvariantCulture)).ToString("F" + places.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return double.Parse(turned, CultureInfo.InvariantCulture) == 0 ? turned.TrimStart('-') : turned;
    }

    [GeneratedRegex(@"(?<![\w.,])(?<figures>-?[0-9]+(?:\.[0-9]+)?(?:(?: to | and | or | by | x | × | y | z | / |, |-|–)-?[0-9]+(?:\.[0-9]+)?)*)(?<space> +)(?<unit>Wh/km|km/h|km|kg|mm|m|°C)(?![\w²³/])", RegexOptions.CultureInvariant)]
    private static partial Regex MetricFigures();

    // Not the copper that a conductor equals: its gauge is told in words of its own.
    [GeneratedRegex(@"(?<![\w.,])(?<figure>[0-9]+(?:\.[0-9]+)?) mm[2²](?! of copper| \((?:above )?AWG)(?![\w/])", RegexOptions.CultureInvariant)]
    private static partial Regex Areas();

    // A minus sign between two figures is a dash.
    [GeneratedRegex(@"(?<![0-9])-?[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?", RegexOptions.CultureInvariant)]
    private static partial Regex AFigure();

    [GeneratedRegex(@"(?<unit>Kmh|[wW]hPerKm|Km|Mm|Kg|DegC|(?<=Temperature|minCharge)C)(?<rest>\.[-+]?[xyz])?$", RegexOptions.CultureInvariant)]
    private static partial Regex MetricName();

    private sealed record Unit(string Name, string Suffix, Func<double, double> From, int MorePlaces);
}
