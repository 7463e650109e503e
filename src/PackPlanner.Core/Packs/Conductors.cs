namespace PackPlanner.Core.Packs;

/// <summary>Resistance of wires, cables and bars. Starting points for a choice, never a final one.</summary>
public static class Conductors
{
    /// <summary>Annealed copper of 100 % conductivity at 20 °C, ohm mm² per metre: 1/58 to five digits, as published. Source: [Nbs100].</summary>
    public const double CopperOhmMm2PerM = 0.017241;

    /// <summary>Nickel at 20 °C, ohm mm² per metre. Source: [MetalTables].</summary>
    public const double NickelOhmMm2PerM = 0.0699;

    /// <summary>Rise of nickel's resistance for each kelvin above 20 °C. Source: [MetalTables].</summary>
    public const double NickelPerKelvin = 0.006;

    /// <summary>Core of plated steel strip at 20 °C, ohm mm² per metre. Source: [MetalTables].</summary>
    public const double SteelOhmMm2PerM = 0.143;

    /// <summary>Rise of copper's resistance for each kelvin above 20 °C. Source: [Nbs100]; from memory, 0.0039 seen in three tables.</summary>
    public const double CopperPerKelvin = 0.00393;

    private const double SmallestAwgMm = 0.127;

    /// <summary>Diameter of solid round wire by American gauge.</summary>
    /// <param name="gauge">36 … 0; 1/0 is 0, 2/0 is -1, 3/0 is -2, 4/0 is -3.</param>
    /// <returns>Millimetres. Source: [AstmB258]: No. 36 is 0.005 in, No. 0000 is 0.46 in, 39 equal ratios between.</returns>
    public static double AwgDiameterMm(double gauge) => SmallestAwgMm * Math.Pow(92, (36 - gauge) / 39);

    /// <summary>The thinnest gauge that has at least a cross-section.</summary>
    /// <param name="areaMm2">Square millimetres, above zero.</param>
    /// <returns>Gauge number; 0 is 1/0, -1 is 2/0 and so on.</returns>
    public static int AwgWithAtLeast(double areaMm2)
    {
        double diameterMm = Math.Sqrt(4 * areaMm2 / Math.PI);
        // A hair of tolerance, so that a wire of exactly the area asked for is enough.
        return (int)Math.Floor(36 - 39 * Math.Log(diameterMm / SmallestAwgMm, 92) + 1e-9);
    }

    /// <summary>Resistance of a straight conductor.</summary>
    /// <param name="ohmMm2PerM">Resistivity, ohm mm² per metre.</param>
    /// <param name="lengthM">Metres of conductor, both ways counted.</param>
    /// <param name="areaMm2">Cross-section of metal, square millimetres.</param>
    /// <returns>Ohms at the temperature of the resistivity.</returns>
    public static double Ohm(double ohmMm2PerM, double lengthM, double areaMm2) => ohmMm2PerM * lengthM / areaMm2;

    /// <summary>Ohms for each kilometre of solid copper wire by American gauge.</summary>
    /// <param name="gauge">As for <see cref="AwgDiameterMm"/>.</param>
    /// <param name="degC">Temperature of the conductor.</param>
    /// <returns>Ohms per kilometre.</returns>
    public static double AwgOhmPerKm(double gauge, double degC = 20)
    {
        double diameterMm = AwgDiameterMm(gauge);
        return Ohm(CopperOhmMm2PerM, 1000, Math.PI * diameterMm * diameterMm / 4) * WarmCopper(degC);
    }

    /// <summary>Factor on a copper resistance given at 20 °C.</summary>
    /// <param name="degC">Temperature of the conductor, degrees Celsius.</param>
    /// <returns>The factor, 1 at 20 °C.</returns>
    public static double WarmCopper(double degC) => 1 + CopperPerKelvin * (degC - 20);

    /// <summary>How fast a conductor heats when no heat leaves it.</summary>
    /// <param name="currentPerMm2">Amperes for each square millimetre.</param>
    /// <returns>Kelvin per second for copper of 385 J/(kg K), from memory, and 8890 kg/m³. Source: [Nbs100] for the density.</returns>
    public static double CopperKelvinPerSecond(double currentPerMm2)
    {
        const double specificHeat = 385;
        const double density = 8890;
        double perM2 = currentPerMm2 * 1e6;
        return perM2 * perM2 * CopperOhmMm2PerM * 1e-6 / (specificHeat * density);
    }
}
