namespace PackPlanner.Core.Sharing;

/// <summary>What current flows when cells are joined, and what to do first.</summary>
/// <remarks>
/// The current at the first instant is the difference of resting volts over all resistances in its path:
/// V / (R of the cell + R of the others in parallel + link). Source: [Kirchhoff]; with 1 kHz resistances a bound for the
/// first instant, with DC ones the low figure. Judged by amperes against what the receiver may be charged with and the
/// giver may give, never by volts alone.
/// </remarks>
public static class JoiningCheck
{
    /// <summary>Rating over ampere-hours where the data sheet is not at hand. Common practice, no source.</summary>
    public const double UnknownRatingPerHour = 0.5;

    /// <summary>Plans the joining of one group.</summary>
    /// <param name="request">Cells, link and ratings.</param>
    /// <returns>The plan.</returns>
    public static JoinPlan Plan(JoinRequest request)
    {
        JoinBench bench = new(request);
        string[] order = bench.Order();
        JoinStep[] steps = [.. request.Cells.Select(cell => Step(bench, cell, order))];
        // A cell past its limit is brought to the others' volts first; until then it joins nothing and lends no current to those after it.
        HashSet<string> late = [.. steps.Where(step => step.IsLate).Select(step => step.Label)];
        steps = [.. steps.Zip(request.Cells, (step, cell) => step.InrushA is null ? step : step with { InOrderA = bench.InOrderA(cell, order, late) })];
        return new JoinPlan(request.Group, steps, order, WorstPair(bench), JoiningCautions.Of(request, bench, steps));
    }

    private static JoinStep Step(JoinBench bench, JoinCell cell, string[] order)
    {
        if (cell.RestV is not { } restV)
            return new JoinStep { Label = cell.Label, Reason = "no-resting-volts" };
        int place = Array.IndexOf(order, cell.Label) + 1;
        JoinStep step = new()
        {
            Label = cell.Label,
            Place = place > 0 ? place : null,
            Reason = cell.NotToBeCharged ? "not-to-be-charged" : null,
            BringToV = cell.NotToBeCharged ? null : bench.TargetV,
            BringByV = cell.NotToBeCharged ? null : bench.TargetV - restV,
        };
        if (bench.Others(cell) is not { } others)
            return step;
        double differenceV = others.OpenV - restV;
        step = step with { Receives = differenceV == 0 ? null : differenceV > 0 };
        if (JoinBench.OhmOf(cell) is not { } ohm)
            return step;
        double pathOhm = ohm + others.Ohm + bench.LinkOhm;
        double inrushA = Math.Abs(differenceV) / pathOhm;
        double? limitA = bench.LimitA(cell, others, differenceV);
        step = step with { InrushA = inrushA, LimitA = limitA };
        if (cell.NotToBeCharged || limitA is not { } limit)
            return step;
        double resistorOhm = Math.Max(0, Math.Abs(differenceV) / limit - pathOhm);
        (double LowV, double HighV)? apart = Apart(bench, cell, pathOhm);
        return step with
        {
            ApartV = apart is { } sides ? Math.Min(sides.LowV, sides.HighV) : null,
            Within = apart is { } free ? bench.InReach(bench.TargetV - free.LowV, bench.TargetV + free.HighV) : null,
            ResistorOhm = resistorOhm,
            Hours = resistorOhm == 0 ? 0 : bench.HoursThrough(cell, others, resistorOhm + pathOhm, limit * pathOhm),
        };
    }

    // Below the others the cell is charged on joining, above them it gives: each side has its own limit.
    private static (double LowV, double HighV)? Apart(JoinBench bench, JoinCell cell, double pathOhm) =>
        bench.LimitA(cell, receives: true) is { } chargeA && bench.LimitA(cell, receives: false) is { } dischargeA ? (chargeA * pathOhm, dischargeA * pathOhm) : null;

    private static JoinPair? WorstPair(JoinBench bench)
    {
        // The worst pair need not hold the highest and the lowest cell, because resistances differ; some hundred cells at most.
        JoinPair? worst = null;
        JoinCell[] cells = [.. bench.Joinable.Where(cell => JoinBench.OhmOf(cell) is not null)];
        foreach (JoinCell giver in cells)
        {
            foreach (JoinCell receiver in cells.Where(other => other.RestV < giver.RestV))
            {
                double inrushA = (giver.RestV!.Value - receiver.RestV!.Value) / (JoinBench.OhmOf(giver)!.Value + JoinBench.OhmOf(receiver)!.Value + bench.LinkOhm);
                if (worst is null || inrushA > worst.InrushA)
                    worst = new JoinPair(giver.Label, receiver.Label, inrushA);
            }
        }

        return worst;
    }
}
