using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Bench;

/// <summary>Tells when a log's volts were read through leads or a contact that carry the current.</summary>
/// <remarks>
/// Three things together: the volts jump within one row at switching on and at switching off; both jumps give the
/// same resistance; and that resistance is far more than a cell of this capacity has. The first two hold for the
/// cell's own ohmic part too, so only the third makes the finding: a lead of the size of the cell's own resistance
/// cannot be told from it in one log.
/// </remarks>
internal static class LeadRecognition
{
    /// <summary>
    /// Ohm times ampere-hours that even a worn cell stays under. The retired cells of our reference data have 0.03 to 0.15,
    /// a worn 18650 read through its holder 0.24. Our choice. Source: [PulseBat], [ArtsLab30Q].
    /// </summary>
    internal const double MostOhmAh = 0.5;

    private const double AlikeFraction = 0.15;
    private const double QuickS = 2;

    /// <summary>Looks for leads in the readings of a log.</summary>
    /// <param name="pulses">Every resistance found.</param>
    /// <param name="capacityAh">The largest whole charge counted in the log, ampere-hours.</param>
    /// <param name="series">Cells in series.</param>
    /// <returns>The finding; null when nothing points to leads.</returns>
    internal static LeadFinding? Of(IReadOnlyList<PulseReading> pulses, double capacityAh, int series)
    {
        double[] on = FirstOf(pulses, switchedOn: true);
        double[] off = FirstOf(pulses, switchedOn: false);
        if (on.Length == 0 || off.Length == 0 || capacityAh <= 0)
            return null;
        double onMilliohm = Robust.Median(on);
        double offMilliohm = Robust.Median(off);
        double milliohm = Robust.Median([.. on, .. off]);
        if (Math.Abs(onMilliohm - offMilliohm) > AlikeFraction * milliohm)
            return null;
        double most = MostOhmAh * series / capacityAh * 1000;
        if (milliohm <= most)
            return null;
        double currentA = Robust.Median([.. pulses.Select(pulse => Math.Abs(pulse.StepA))]);
        return new LeadFinding(milliohm, onMilliohm, offMilliohm, milliohm / 1000 * currentA, milliohm / most);
    }

    private static double[] FirstOf(IReadOnlyList<PulseReading> pulses, bool switchedOn) =>
    [
        .. pulses.Where(pulse => pulse.SwitchedOn == switchedOn)
            .GroupBy(pulse => pulse.AtTimeS)
            .Select(step => step.MinBy(pulse => pulse.AfterS)!)
            .Where(first => first.AfterS <= QuickS)
            .Select(first => first.ResistanceMilliohm),
    ];
}
