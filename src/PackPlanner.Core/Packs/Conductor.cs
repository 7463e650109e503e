namespace PackPlanner.Core.Packs;

/// <summary>One wire, cable, bar or strip, or several of them side by side: a starting point, never a final choice.</summary>
/// <param name="Metal">What it is made of.</param>
/// <param name="LengthM">Metres that the current goes through.</param>
/// <param name="Ohm">Ohms at 20 °C, all pieces side by side.</param>
/// <param name="AreaMm2">Metal cross-section of all pieces, square millimetres; null for a cable, whose nominal size is not its metal.</param>
public sealed record Conductor(Metal Metal, double LengthM, double Ohm, double? AreaMm2)
{
    /// <summary>Solid round copper wire.</summary>
    /// <param name="gauge">As for <see cref="Conductors.AwgDiameterMm"/>.</param>
    /// <param name="lengthM">Metres.</param>
    /// <param name="pieces">Side by side, at least 1.</param>
    /// <returns>The conductor.</returns>
    public static Conductor Wire(int gauge, double lengthM, int pieces)
    {
        double areaMm2 = Math.PI * Math.Pow(Conductors.AwgDiameterMm(gauge), 2) / 4;
        return new(Metal.Copper, lengthM, Conductors.AwgOhmPerKm(gauge) * lengthM / 1000 / pieces, areaMm2 * pieces);
    }

    /// <summary>Copper cable of a nominal size.</summary>
    /// <param name="nominalMm2">One of <see cref="CableTable.SizesMm2"/>.</param>
    /// <param name="flexible">Class 5, else class 2.</param>
    /// <param name="lengthM">Metres.</param>
    /// <param name="pieces">Side by side, at least 1.</param>
    /// <returns>The conductor.</returns>
    public static Conductor Cable(double nominalMm2, bool flexible, double lengthM, int pieces) =>
        new(Metal.Copper, lengthM, CableTable.OhmPerKm(nominalMm2, flexible) * lengthM / 1000 / pieces, null);

    /// <summary>Flat bar or strip.</summary>
    /// <param name="metal">What it is made of.</param>
    /// <param name="wideMm">Millimetres.</param>
    /// <param name="thickMm">Millimetres.</param>
    /// <param name="lengthM">Metres.</param>
    /// <param name="pieces">Side by side or in layers, at least 1.</param>
    /// <returns>The conductor.</returns>
    public static Conductor Bar(Metal metal, double wideMm, double thickMm, double lengthM, int pieces)
    {
        double areaMm2 = wideMm * thickMm * pieces;
        return new(metal, lengthM, Conductors.Ohm(Resistivity(metal), lengthM, areaMm2), areaMm2);
    }

    /// <summary>Ohms at another temperature.</summary>
    /// <param name="degC">Temperature of the metal.</param>
    /// <returns>Ohms; null for steel, for which no coefficient was found.</returns>
    public double? OhmAt(double degC) => Metal switch
    {
        Metal.Copper => Ohm * Conductors.WarmCopper(degC),
        Metal.Nickel => Ohm * (1 + Conductors.NickelPerKelvin * (degC - 20)),
        _ => degC == 20 ? Ohm : null,
    };

    /// <summary>How fast it would warm if no heat left it.</summary>
    /// <param name="loadA">Amperes.</param>
    /// <returns>Kelvin per second at 20 °C; null for other metals than copper, and for cables.</returns>
    public double? KelvinPerSecond(double loadA) =>
        Metal == Metal.Copper && AreaMm2 is { } areaMm2 ? Conductors.CopperKelvinPerSecond(loadA / areaMm2) : null;

    /// <summary>Cross-section of copper that has as many ohms, square millimetres.</summary>
    public double CopperMm2 => Conductors.CopperOhmMm2PerM * LengthM / Ohm;

    /// <summary>The thinnest solid wire with no more ohms, by American gauge; null where none of the gauges has so few.</summary>
    public int? Gauge => CopperMm2 <= Math.PI * Math.Pow(Conductors.AwgDiameterMm(-3), 2) / 4 * (1 + 1e-9) ? Conductors.AwgWithAtLeast(CopperMm2) : null;

    private static double Resistivity(Metal metal) => metal switch
    {
        Metal.Copper => Conductors.CopperOhmMm2PerM,
        Metal.Nickel => Conductors.NickelOhmMm2PerM,
        _ => Conductors.SteelOhmMm2PerM,
    };
}
