using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Gaps in a log across which the pack was charged or ridden all the same.</summary>
/// <remarks>
/// A parked gap moves no charge; but some loggers sleep while the pack is charged. Then charge counted across the gap is wrong by that much,
/// and capacities with it. On a sloping curve the resting voltage on both sides tells. On LFP only the step near 60 % of charge tells: a pack
/// that rested below it and wakes above it was charged. What moved on one side of the step cannot be seen, which is said.
/// </remarks>
internal static class UnloggedCharge
{
    // Recovering from a hard ride moves the voltage as some points of charge would: only what is plainly more counts.
    private const double LeastPoints = 0.12, LeastV = 0.06;

    // Rests of LFP cells below and above the step (the two flats of our tables and of data sheets, 8 mV to spare), and how long a pack must
    // have rested before the gap for what is left of its recovery to be less than lies between them (our choice).
    private const double BelowStepV = 3.285, AboveStepV = 3.328, RestS = 300, RestShare = 0.02;

    /// <summary>First rows after such gaps.</summary>
    /// <param name="log">The columns.</param>
    /// <param name="count">Its counted charge.</param>
    /// <param name="given">Chemistry and resting voltages.</param>
    internal static IReadOnlyList<int> Of(DiagnosisColumns log, ChargeCount count, PackGiven given)
    {
        if (given.Chemistry.HasFlatCurve)
            return AcrossTheStep(log, count, given);
        // Between volts that lie too near together the curve tells no charge.
        if (count.Gaps.Count == 0 || !given.Chemistry.Curve.Spans(given.FullV, given.EmptyV))
            return [];
        OpenCircuitCurve curve = given.Chemistry.Curve.Between(given.FullV, given.EmptyV);
        List<int> rows = [];
        foreach (LogGap gap in count.Gaps)
        {
            double beforeV = RestV(log, count, gap.Row - 1, given.RatedGroupAh), afterV = RestV(log, count, gap.Row, given.RatedGroupAh);
            double movedAh = count.DrawnAh[gap.Row] - count.DrawnAh[gap.Row - 1];
            double points = Charge(afterV) - Charge(beforeV) + (movedAh / given.RatedGroupAh);
            if (Math.Abs(afterV - beforeV) > LeastV && Math.Abs(points) > LeastPoints)
                rows.Add(gap.Row);
        }
        return rows;

        double Charge(double volts) => Math.Clamp(curve.FractionAt(volts), 0, 1);
    }

    /// <summary>What cannot be seen of gaps in a log of a flat curve; empty where there is none.</summary>
    internal static IEnumerable<string> Unseen(ChargeCount count, PackGiven given, IReadOnlyList<int> seen)
    {
        int parked = count.Gaps.Count(g => !g.UnderLoad && g.Seconds > 1800 && !seen.Contains(g.Row));
        if (given.Chemistry.HasFlatCurve && parked > 0)
            yield return FormattableString.Invariant($"on the flat curve of {given.Chemistry.Name} the voltage does not show whether the pack was charged or ridden in {(parked == 1 ? "a gap" : $"{parked} gaps")} of more than half an hour: if it was, the figures are wrong by that charge, so diagnose the log on one side of it");
    }

    private static List<int> AcrossTheStep(DiagnosisColumns log, ChargeCount count, PackGiven given)
    {
        List<int> rows = [];
        foreach (LogGap gap in count.Gaps.Where(g => g.Row > 0 && Rested(g.Row - 1)))
        {
            double beforeV = RestV(log, count, gap.Row - 1, given.RatedGroupAh), afterV = RestV(log, count, gap.Row, given.RatedGroupAh);
            bool up = beforeV < BelowStepV && afterV > AboveStepV, down = beforeV > AboveStepV && afterV < BelowStepV;
            if ((up || down) && Math.Abs(count.CurrentA[gap.Row]) < RestShare * given.RatedGroupAh)
                rows.Add(gap.Row);
        }
        return rows;

        bool Rested(int row)
        {
            int first = row;
            while (first > 0 && log.TimeS[row] - log.TimeS[first] < RestS && Math.Abs(count.CurrentA[first]) < RestShare * given.RatedGroupAh)
                first--;
            return log.TimeS[row] - log.TimeS[first] >= RestS;
        }
    }

    private static double RestV(DiagnosisColumns log, ChargeCount count, int row, double ratedAh) =>
        Robust.Median([.. log.GroupV.Select(v => v[row]).Where(double.IsFinite)]) + (count.CurrentA[row] * PackEstimator.UsualOhmAh / ratedAh);
}
