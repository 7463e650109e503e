using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.Sheets;

/// <summary>Volts to expect from pack minus to each tap, and how far a reading may lie off.</summary>
internal static class SheetVolts
{
    /// <summary>One tap.</summary>
    /// <param name="Number">0 is pack minus.</param>
    /// <param name="Volts">From pack minus; null where a resting reading is missing.</param>
    /// <param name="StepV">From the tap before; null for tap 0 and where a resting reading is missing.</param>
    internal sealed record Tap(int Number, double? Volts, double? StepV)
    {
        internal double? ToleranceV => Volts is { } volts ? TapCheck.Tolerance(volts) : null;
    }

    internal static IReadOnlyList<Tap> Of(IReadOnlyList<JobGroup> groups)
    {
        List<Tap> taps = [new Tap(0, 0, null)];
        foreach (JobGroup group in groups)
            taps.Add(new Tap(taps.Count, taps[^1].Volts + group.RestV, group.RestV));
        return taps;
    }
}
