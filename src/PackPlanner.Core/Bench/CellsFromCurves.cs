using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Bench;

/// <summary>Turns the log of one cell into rows of a table of cells, a row for each discharge that began full.</summary>
public static class CellsFromCurves
{
    private const double WantedAfterS = 10;

    // Where nobody said where a discharge should have ended, only that its end lies above that is known.
    private const double HighestCutOffV = 3.0;

    /// <summary>Rows of one cell.</summary>
    /// <param name="reading">What its log holds.</param>
    /// <param name="label">What is written on the cell.</param>
    /// <param name="chemistry">Chemistry; null when unknown.</param>
    /// <returns>One row for each discharge from full; one row without a capacity where there is none.</returns>
    /// <remarks>
    /// A later part of a discharge in parts is no test of its own. The resistance is the median at 10 s (or the
    /// nearest later or earlier reading) of the steps that draw current; with leads in the volts there is none.
    /// </remarks>
    public static IReadOnlyList<CellRow> Rows(CurveReading reading, string label, Chemistry? chemistry)
    {
        TestStep[] tests = [.. reading.Steps.Where((step, i) => IsTest(reading.Steps, i))];
        (double? milliohm, double? afterS) = Resistance(reading);
        CellRow bare = new()
        {
            Label = label,
            File = reading.Source,
            ResistanceMilliohm = milliohm,
            ResistanceAfterS = afterS,
            ResistanceKind = milliohm is null ? ResistanceKind.Unknown : ResistanceKind.Dc,
            SelfDischargeMillivoltPerDay = reading.Rests.Count > 0 ? reading.Rests[^1].Loss.MillivoltPerDay : null,
            RestV = reading.Rests.Count > 0 ? reading.Rests[^1].EndV : null,
            Chemistry = chemistry?.Name,
        };
        return tests.Length == 0 ? [bare] : [.. tests.Select(test => Row(bare, test))];
    }

    private static bool IsTest(IReadOnlyList<TestStep> steps, int i) =>
        steps[i].Direction == CurrentDirection.Discharge && (i == 0 || steps[i - 1].Direction == CurrentDirection.Charge)
        && (i + 1 == steps.Count || steps[i + 1].Direction == CurrentDirection.Charge);

    private static CellRow Row(CellRow bare, TestStep test) => bare with
    {
        CapacityAh = test.ChargeAh,
        TestCurrentA = test.UsualCurrentA,
        TestEndV = test.EndV,
        TestCutoffV = test.EndedBy == StepEnd.Aborted ? test.LimitV ?? HighestCutOffV : test.CutOffV ?? test.EndV,
        TemperatureDegC = test.MeanTemperatureDegC,
    };

    private static (double? Milliohm, double? AfterS) Resistance(CurveReading reading)
    {
        if (reading.Leads is not null)
            return (null, null);
        PulseReading[] drawn =
        [
            .. reading.Pulses.Where(pulse => pulse is { SwitchedOn: true, StepA: > 0 })
                .GroupBy(pulse => pulse.AtTimeS)
                .Select(step => step.MinBy(pulse => Math.Abs(pulse.AfterS - WantedAfterS))!),
        ];
        if (drawn.Length == 0)
            return (null, null);
        double afterS = drawn.GroupBy(pulse => pulse.AfterS).OrderByDescending(group => group.Count()).ThenBy(group => group.Key).First().Key;
        return (Robust.Median([.. drawn.Where(pulse => pulse.AfterS == afterS).Select(pulse => pulse.ResistanceMilliohm)]), afterS);
    }
}
