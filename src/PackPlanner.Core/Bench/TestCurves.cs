using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Bench;

/// <summary>The door of this room: what a tester recorded of one cell, or of a series string.</summary>
public static class TestCurves
{
    // Shorter stretches of current are pulses, and no part of the list of charges and discharges. Our choice.
    private const double LongestPulseS = 120;

    private const double LongRestS = 24 * 3600;

    /// <summary>Finds charges, discharges, long rests and steps of the current.</summary>
    /// <param name="curve">The log.</param>
    /// <param name="request">What the user says about it.</param>
    /// <returns>What it holds; empty lists where it holds nothing.</returns>
    public static CurveReading Read(TestCurve curve, CurveRequest request)
    {
        CurveColumns columns = CurveColumns.Of(curve);
        List<StepFinder.Stretch> stretches = StepFinder.Find(columns.TimeS, columns.CurrentA);
        double? offset = RestOffset(columns, stretches);
        if (request.CorrectOffset && offset is { } shown)
            columns = columns.Less(shown);
        List<StepFinder.Stretch> tests = [.. stretches.Where(stretch => IsTest(columns, stretch))];
        IReadOnlyList<TestStep> steps = StepMaker.Of(columns, tests, stretches, request);
        List<PulseReading> pulses = PulseFinder.Find(columns.TimeS, columns.CurrentA, columns.Volts);
        double capacityAh = steps.Count == 0 ? 0 : steps.Max(step => step.ChargeAh);
        return new CurveReading
        {
            Steps = steps,
            Rests = [.. Rests(columns, stretches, request)],
            Pulses = pulses,
            Leads = LeadRecognition.Of(pulses, capacityAh, request.Series ?? SeriesFrom(columns, request)),
            RestOffsetA = offset,
            RowsLost = curve.TimeS.Length - columns.Count,
            Source = curve.Source,
        };
    }

    private static bool IsTest(CurveColumns columns, StepFinder.Stretch stretch) =>
        stretch.To > stretch.From && columns.TimeS[stretch.To] - columns.TimeS[stretch.From] > LongestPulseS;

    // How many cells stand in series, for judging a resistance: no cell of any chemistry is above 4.6 V.
    private static int SeriesFrom(CurveColumns columns, CurveRequest request)
    {
        double highest = columns.Count == 0 ? 0 : columns.Volts.Max();
        return Math.Max(1, (int)Math.Ceiling(highest / (request.Chemistry?.Physics.HighestV ?? 4.6)));
    }

    private static double? RestOffset(CurveColumns columns, List<StepFinder.Stretch> stretches)
    {
        List<double> rest = [];
        int from = 0;
        foreach (StepFinder.Stretch stretch in stretches.Append(new StepFinder.Stretch(columns.Count, columns.Count, CurrentDirection.Rest)))
        {
            for (int i = from; i < stretch.From; i++)
                rest.Add(columns.CurrentA[i]);
            from = stretch.To + 1;
        }

        return rest.Count < 3 ? null : Robust.Median([.. rest]);
    }

    private static IEnumerable<RestReading> Rests(CurveColumns columns, List<StepFinder.Stretch> stretches, CurveRequest request)
    {
        int from = 0;
        foreach (StepFinder.Stretch stretch in stretches.Append(new StepFinder.Stretch(columns.Count, columns.Count, CurrentDirection.Rest)))
        {
            int to = stretch.From - 1;
            if (to > from && columns.TimeS[to] - columns.TimeS[from] >= LongRestS)
                yield return Rest(columns, from, to, request);
            from = stretch.To + 1;
        }
    }

    private static RestReading Rest(CurveColumns columns, int from, int to, CurveRequest request)
    {
        double middle = (columns.TimeS[from] + columns.TimeS[to]) / 2;
        int half = from;
        while (half < to - 1 && columns.TimeS[half] < middle)
            half++;
        // A log whose clock stood still at its end has no time between its last rows.
        while (half > from && columns.TimeS[to] <= columns.TimeS[half])
            half--;
        int[] rows = [.. Enumerable.Range(half, to - half + 1)];
        SelfDischarge loss = SelfDischarge.Of(
            [.. rows.Select(i => columns.TimeS[i] / 86400)], [.. rows.Select(i => columns.Volts[i])], stepV: 0, request.Chemistry?.Curve);
        return new RestReading(columns.TimeS[from], columns.TimeS[to], columns.Volts[from], columns.Volts[to], loss);
    }
}
