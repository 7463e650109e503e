namespace PackPlanner.Core.Packs;

/// <summary>Charging a controller's capacitors through a resistor before the contactor closes: a starting point, never final.</summary>
/// <param name="PackV">Volts of the pack.</param>
/// <param name="ResistorOhm">Ohms, above zero.</param>
/// <param name="CapacitanceF">Farads, above zero.</param>
/// <remarks>v(t) = V (1 - exp(-t / RC)). Source: [Tidu73] section 2.2.1, equations 1 to 4.</remarks>
public sealed record PreCharge(double PackV, double ResistorOhm, double CapacitanceF)
{
    /// <summary>Time constant, seconds.</summary>
    public double TauS => ResistorOhm * CapacitanceF;

    /// <summary>Largest current, at the first instant, amperes.</summary>
    public double PeakA => PackV / ResistorOhm;

    /// <summary>Largest power in the resistor, watts.</summary>
    public double PeakW => PackV * PackV / ResistorOhm;

    /// <summary>Energy that the resistor takes each time, joules, whatever its ohms are.</summary>
    public double ResistorJ => CapacitanceF * PackV * PackV / 2;

    /// <summary>Volts still missing after a time.</summary>
    /// <param name="seconds">Seconds.</param>
    /// <returns>Volts that the contactor would close on.</returns>
    public double MissingV(double seconds) => PackV * Math.Exp(-seconds / TauS);

    /// <summary>Largest resistor that gets there in time.</summary>
    /// <param name="capacitanceF">Farads.</param>
    /// <param name="fraction">Part of the pack's volts wanted.</param>
    /// <param name="withinS">Seconds allowed.</param>
    /// <returns>Ohms.</returns>
    public static double LargestResistorOhm(double capacitanceF, double fraction, double withinS) =>
        withinS / (capacitanceF * Math.Log(1 / (1 - fraction)));
}
