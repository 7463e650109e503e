using System.Globalization;
using PackPlanner.Core.Packs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>The answer of <c>conductor</c> as JSON, as lines and as a table.</summary>
public static class ConductorWords
{
    // 4/0.
    private const int Thickest = -3;

    /// <summary>Fills the answer.</summary>
    /// <param name="kind">wire, cable or bar.</param>
    /// <param name="conductor">The conductor.</param>
    /// <param name="pieces">Side by side.</param>
    /// <param name="loadA">Amperes; null without a load.</param>
    /// <param name="degC">Temperature of the metal; null: 20 °C.</param>
    /// <returns>The answer without cautions.</returns>
    public static ConductorAnswer Answer(string kind, Conductor conductor, int pieces, double? loadA, double? degC)
    {
        double? warmOhm = degC is { } asked ? conductor.OhmAt(asked) : null;
        double ohm = warmOhm ?? conductor.Ohm;
        return new ConductorAnswer(
            kind, conductor.Metal.ToString().ToLowerInvariant(), conductor.LengthM, pieces, conductor.AreaMm2, conductor.Ohm * 1000, degC, warmOhm * 1000,
            loadA, loadA * ohm, loadA * loadA * ohm, loadA / conductor.AreaMm2, loadA is { } ampere ? conductor.KelvinPerSecond(ampere) : null,
            conductor.CopperMm2, conductor.Gauge is { } gauge ? Name(gauge) : null, [.. Basis(kind, conductor, degC)]);
    }

    /// <summary>Lines for people.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The lines, the reservation last.</returns>
    public static IReadOnlyList<string> Lines(ConductorAnswer answer)
    {
        List<string> lines = [$"{Figures.Digits(answer.ResistanceMilliohm, 4)} milliohm at 20 °C: {answer.Metal}, {Figures.Digits(answer.LengthM, 3)} m{(answer.Pieces > 1 ? $", {answer.Pieces} side by side" : "")}."];
        if (answer.WarmMilliohm is { } warm)
            lines.Add($"{Figures.Digits(warm, 4)} milliohm at {Figures.Digits(answer.TemperatureDegC, 3)} °C.");
        if (answer.LoadA is { } loadA)
        {
            string density = answer.CurrentPerMm2A is { } perMm2 ? $", {Figures.Digits(perMm2, 3)} A for each mm2 of metal" : "";
            lines.Add($"At {Figures.Digits(loadA, 3)} A it loses {Figures.Digits(answer.DropV, 3)} V and makes {Figures.Digits(answer.HeatW, 3)} W of heat{density}.");
        }

        if (answer.WarmsKelvinPerSecond is { } perSecond)
            lines.Add($"If no heat left it, it would warm by {Figures.Digits(perSecond, 2)} K each second.");
        lines.Add($"As many ohms as {Figures.Digits(answer.CopperMm2, 3)} mm2 of copper{(answer.EqualAwg is { } gauge ? $"; a solid wire of no more is AWG {gauge}" : "")}.");
        lines.AddRange(answer.Basis.Select(line => "  " + line));
        lines.Add(StartingPointWords.NeverFinal);
        return lines;
    }

    /// <summary>One row.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(ConductorAnswer answer) => new(
        ["kind", "metal", "lengthM", "pieces", "areaMm2", "resistanceMilliohm", "warmMilliohm", "loadA", "dropV", "heatW"],
        [[answer.Kind, answer.Metal, answer.LengthM, answer.Pieces, answer.AreaMm2, answer.ResistanceMilliohm, answer.WarmMilliohm, answer.LoadA, answer.DropV, answer.HeatW]]);

    /// <summary>Reads a gauge as it is written on a reel.</summary>
    /// <param name="typed">36 … 1, 0, 1/0 … 4/0.</param>
    /// <returns>The number with 1/0 as 0 and 4/0 as -3; null when it is none.</returns>
    public static int? Gauge(string typed)
    {
        string[] parts = typed.Split('/');
        return parts is [{ Length: 1 } noughts, "0"] && noughts[0] is >= '1' and <= '4' ? 1 - (noughts[0] - '0')
            : int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out int gauge) && gauge <= 36 ? gauge
            : null;
    }

    /// <summary>The thinnest gauge that has at least a cross-section, as it is written on a reel.</summary>
    /// <param name="areaMm2">Square millimetres, above zero.</param>
    /// <returns>Such as AWG 5; words that say so where the area is above that of the thickest gauge.</returns>
    internal static string GaugeWithAtLeast(double areaMm2) =>
        Conductors.AwgDiameterMm(Thickest) is var most && areaMm2 > Math.PI * most * most / 4 * (1 + 1e-9) ? $"above AWG {Name(Thickest)}" : $"AWG {Name(Conductors.AwgWithAtLeast(areaMm2))}";

    private static string Name(int gauge) => gauge > 0 ? gauge.ToString(CultureInfo.InvariantCulture) : $"{1 - gauge}/0";

    private static IEnumerable<string> Basis(string kind, Conductor conductor, double? degC)
    {
        yield return kind switch
        {
            "cable" => "The highest ohms that the standard for cables allows for this size (IEC 60228).",
            "wire" => "Solid round wire by gauge, annealed copper of 1/58 ohm mm2/m.",
            _ => $"Resistivity of {conductor.Metal.ToString().ToLowerInvariant()} times length over width times thickness; welds and bolts come on top.",
        };
        if (degC is { } asked && conductor.OhmAt(asked) is null)
            yield return "For steel no rise with temperature was found: volts and watts are those at 20 °C, warm ones are more.";
        if (kind == "bar" && conductor.Metal != Metal.Copper)
            yield return "No standard for the current of such strip was found: go by the watts, and measure its temperature under load.";
    }
}
