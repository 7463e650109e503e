using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Bench;

/// <summary>Counts each charge and discharge and tells how it ended.</summary>
internal static class StepMaker
{
    // A last row this near a limit has reached it, for each cell in series; the ends of a log are alike when they lie as near. Our choice.
    private const double NearV = 0.02;

    // The current has faded when its last rows are under this share of its middle.
    private const double FadedFraction = 0.6;

    internal static IReadOnlyList<TestStep> Of(
        CurveColumns logged, IReadOnlyList<StepFinder.Stretch> tests, IReadOnlyList<StepFinder.Stretch> all, CurveRequest request)
    {
        // A row of a step table stands for a whole step, and no time between two of them is a hole.
        CurveColumns columns = request.IsStepTable ? logged : logged.At(CurveHoles.CountedS(logged, all));
        double? usualEmpty = UsualEnd(columns, tests, CurrentDirection.Discharge);
        double? usualFull = UsualEnd(columns, tests, CurrentDirection.Charge);
        List<TestStep> steps = [];
        for (int i = 0; i < tests.Count; i++)
        {
            StepFinder.Stretch? next = i + 1 < tests.Count ? tests[i + 1] : null;
            TestStep counted = Step(columns, tests[i], next, all, request, tests[i].Direction == CurrentDirection.Discharge ? usualEmpty : usualFull);
            steps.Add(AsLogged(counted, logged, columns, tests[i]));
        }

        return steps;
    }

    private static TestStep Step(
        CurveColumns columns, StepFinder.Stretch stretch, StepFinder.Stretch? next, IReadOnlyList<StepFinder.Stretch> all,
        CurveRequest request, double? usualEnd)
    {
        (int from, int to) = CapacityCount.WithEdges(columns.TimeS, columns.CurrentA, stretch.From, stretch.To);
        double sign = stretch.Direction == CurrentDirection.Discharge ? 1 : -1;
        (double ah, double wh) = CapacityCount.Between(columns.TimeS, columns.CurrentA, columns.Volts, from, to);
        (double beforeS, double afterS) = CapacityCount.HalvesS(columns.TimeS, columns.CurrentA, stretch.From, stretch.To);
        // Of an interval that touches a rest half is counted, so half of its time goes with it.
        double flowedS = (columns.TimeS[stretch.To] - columns.TimeS[stretch.From] + columns.TimeS[to] - columns.TimeS[from]) / 2 + beforeS + afterS;
        double beforeAh = beforeS * columns.CurrentA[stretch.From] / 3600;
        double afterAh = afterS * columns.CurrentA[stretch.To] / 3600;
        ah += beforeAh + afterAh;
        wh += beforeAh * columns.Volts[stretch.From] + afterAh * columns.Volts[stretch.To];
        double? counterAh = Counted(columns.CounterAh, stretch);
        double? counterWh = Counted(columns.CounterWh, stretch);
        double chargeAh = request.IsStepTable ? counterAh ?? sign * ah : sign * ah;
        bool faded = HasFaded(columns, stretch);
        bool discharge = stretch.Direction == CurrentDirection.Discharge;
        double? heldV = faded ? HeldV(columns, stretch) : null;
        double? limit = Limit(request, discharge, usualEnd);
        StepEnd end = EndOf(columns, stretch, next, faded, limit, request.Series ?? 1);
        double? cutOff = discharge ? CutOff(request, columns, stretch, heldV, end) : null;
        return new TestStep
        {
            Direction = stretch.Direction,
            ChargeAh = chargeAh,
            EnergyWh = request.IsStepTable ? counterWh ?? sign * wh : sign * wh,
            ChargeToCutOffAh = cutOff is not { } volts ? null : request.IsStepTable ? columns.Volts[stretch.To] <= volts ? chargeAh : null : ToCutOff(columns, from, stretch, to, volts) + beforeAh,
            CutOffV = cutOff,
            LimitV = limit,
            MeanCurrentA = chargeAh * 3600 / flowedS,
            UsualCurrentA = Usual(columns, stretch),
            StartV = columns.Volts[StartRow(stretch, all)],
            EndV = columns.Volts[stretch.To],
            EndedBy = end,
            MeanTemperatureDegC = Mean(columns.DegC, stretch),
            CounterAh = counterAh,
            CounterWh = counterWh,
        };
    }

    private static TestStep AsLogged(TestStep counted, CurveColumns logged, CurveColumns columns, StepFinder.Stretch stretch) => counted with
    {
        FromTimeS = logged.TimeS[stretch.From],
        ToTimeS = logged.TimeS[stretch.To],
        LongestGapS = Enumerable.Range(stretch.From, stretch.To - stretch.From).Max(i => logged.TimeS[i + 1] - logged.TimeS[i]),
        NotCountedS = logged.TimeS[stretch.To] - logged.TimeS[stretch.From] - (columns.TimeS[stretch.To] - columns.TimeS[stretch.From]),
    };

    // The volts of the last row at rest, where there is one just before; the step's own first row is already under load.
    private static int StartRow(StepFinder.Stretch stretch, IReadOnlyList<StepFinder.Stretch> all) =>
        stretch.From > 0 && all.All(other => other.To != stretch.From - 1) ? stretch.From - 1 : stretch.From;

    private static double Usual(CurveColumns columns, StepFinder.Stretch stretch)
    {
        return Robust.UpperMedian(columns.CurrentA.AsSpan(stretch.From, stretch.To - stretch.From + 1).ToArray().Select(Math.Abs));
    }

    private static bool HasFaded(CurveColumns columns, StepFinder.Stretch stretch)
    {
        double[] sorted = [.. columns.CurrentA.AsSpan(stretch.From, stretch.To - stretch.From + 1).ToArray().Select(Math.Abs).Order()];
        double upper = sorted[sorted.Length * 9 / 10];
        return Math.Abs(columns.CurrentA[stretch.To]) < FadedFraction * upper;
    }

    // The volts that were held while the current faded: the middle of the rows under 60 % of full current.
    private static double HeldV(CurveColumns columns, StepFinder.Stretch stretch)
    {
        double[] amperes = [.. columns.CurrentA.AsSpan(stretch.From, stretch.To - stretch.From + 1).ToArray().Select(Math.Abs)];
        double upper = amperes.Order().ElementAt(amperes.Length * 9 / 10);
        double[] held = [.. Enumerable.Range(0, amperes.Length).Where(i => i > amperes.Length / 2 && amperes[i] < FadedFraction * upper)
            .Select(i => columns.Volts[stretch.From + i])];
        return held.Length == 0 ? columns.Volts[stretch.To] : Robust.UpperMedian(held);
    }

    private static double? Limit(CurveRequest request, bool discharge, double? usualEnd)
    {
        int series = request.Series ?? 1;
        return discharge
            ? request.CutOffV ?? usualEnd ?? request.Chemistry?.CutoffV * series
            : usualEnd ?? request.Chemistry?.FullV * series;
    }

    // Where more than half of three or more steps one way ended at the same volts, that was their limit.
    private static double? UsualEnd(CurveColumns columns, IReadOnlyList<StepFinder.Stretch> tests, CurrentDirection direction)
    {
        double[] ends = [.. tests.Where(test => test.Direction == direction).Select(test => columns.Volts[test.To]).Order()];
        if (ends.Length < 3)
            return null;
        double extreme = direction == CurrentDirection.Discharge ? ends[0] : ends[^1];
        return ends.Count(end => Math.Abs(end - extreme) <= NearV) * 2 > ends.Length ? extreme : null;
    }

    private static StepEnd EndOf(
        CurveColumns columns, StepFinder.Stretch stretch, StepFinder.Stretch? next, bool faded, double? limit, int series)
    {
        if (faded)
            return StepEnd.CurrentTaper;
        bool discharge = stretch.Direction == CurrentDirection.Discharge;
        double end = columns.Volts[stretch.To];
        if (limit is { } volts)
        {
            if (discharge ? end <= volts + NearV * series : end >= volts - NearV * series)
                return StepEnd.CutOff;

            // A part of a discharge that goes on after a rest was not broken off; it was meant to be a part.
            return next is { } following && following.Direction == stretch.Direction ? StepEnd.Unknown : StepEnd.Aborted;
        }

        if (!discharge)
            return StepEnd.Unknown;
        if (FallsSteeply(columns, stretch))
            return StepEnd.CutOff;
        return FourVoltClass(columns, end / series, next is { } more && more.Direction == stretch.Direction);
    }

    // Nobody said where it should end. A cell that is charged above 3.8 V has a cut-off of 3.0 V or less, whatever its
    // chemistry; well above that it was broken off. Source: [FromMemory].
    private static StepEnd FourVoltClass(CurveColumns columns, double endV, bool goesOn)
    {
        double highestV = columns.Volts.Max();
        if (highestV is < 3.8 or > 4.6)
            return StepEnd.Unknown;
        return endV <= 3.0 + NearV ? StepEnd.CutOff : endV > 3.2 && !goesOn ? StepEnd.Aborted : StepEnd.Unknown;
    }

    // Near empty the volts dive: over the last twentieth of the charge they fall faster than three times their mean.
    private static bool FallsSteeply(CurveColumns columns, StepFinder.Stretch stretch)
    {
        double begin = columns.TimeS[stretch.From];
        double whole = columns.TimeS[stretch.To] - begin;
        int late = stretch.To;
        while (late > stretch.From + 1 && columns.TimeS[late] > begin + 0.95 * whole)
            late--;
        double all = columns.Volts[stretch.From] - columns.Volts[stretch.To];
        double last = columns.Volts[late] - columns.Volts[stretch.To];
        double share = (columns.TimeS[stretch.To] - columns.TimeS[late]) / whole;
        return all > 0 && last > 3 * share * all;
    }

    // Stated first; else the volts that were held; else, for a whole discharge, where it ended.
    private static double? CutOff(CurveRequest request, CurveColumns columns, StepFinder.Stretch stretch, double? heldV, StepEnd end)
    {
        if (request.CutOffV is { } stated)
            return stated;
        double last = columns.Volts[stretch.To];
        if (heldV is { } held)
            return request.Chemistry?.CutoffV * (request.Series ?? 1) is { } usual && Math.Abs(held - usual) <= NearV ? usual : held;
        return end == StepEnd.CutOff ? last : null;
    }

    private static double? ToCutOff(CurveColumns columns, int from, StepFinder.Stretch stretch, int to, double cutOff)
    {
        for (int i = stretch.From; i <= stretch.To; i++)
            if (columns.Volts[i] <= cutOff)
                return CapacityCount.Between(columns.TimeS, columns.CurrentA, columns.Volts, from, i == stretch.To ? to : i).Ah;
        return null;
    }

    private static double? Mean(double[]? column, StepFinder.Stretch stretch)
    {
        if (column is null)
            return null;
        double[] known = [.. column.AsSpan(stretch.From, stretch.To - stretch.From + 1).ToArray().Where(double.IsFinite)];
        return known.Length == 0 ? null : known.Average();
    }

    // Whether the tester sets its counter to zero at each step or lets it run on, the difference over the step is its count.
    private static double? Counted(double[]? counter, StepFinder.Stretch stretch)
    {
        if (counter is null)
            return null;
        double first = counter[stretch.From];
        double last = counter[stretch.To];
        return double.IsFinite(first) && double.IsFinite(last) ? Math.Abs(last - first) : null;
    }
}
