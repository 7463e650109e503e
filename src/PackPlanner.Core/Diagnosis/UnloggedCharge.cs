using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Gaps in a log across which the pack was charged or ridden all the same.</summary>
/// <remarks>
/// A parked gap moves no charge; but some loggers sleep while the pack is charged. Then charge counted across the gap is wrong by that much,
/// and capacities with it. On a sloping curve the resting voltage on both sides tells; on LFP it does not, and nothing is claimed.
/// </remarks>
internal static class UnloggedCharge
{
    // Recovering from a hard ride moves the voltage as some points of charge would: only what is plainly more counts.
    private const double LeastPoints = 0.12, LeastV = 0.06;

    /// <summary>First rows after such gaps.</summary>
    /// <param name="log">The columns.</param>
    /// <param name="count">Its counted charge.</param>
    /// <param name="given">Chemistry and resting voltages.</param>
    internal static IReadOnlyList<int> Of(DiagnosisColumns log, ChargeCount count, PackGiven given)
    {
        if (given.Chemistry.HasFlatCurve || count.Gaps.Count == 0)
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

    private static double RestV(DiagnosisColumns log, ChargeCount count, int row, double ratedAh) =>
        GroupEstimates.Median([.. log.GroupV.Select(v => v[row]).Where(double.IsFinite)]) + (count.CurrentA[row] * PackEstimator.UsualOhmAh / ratedAh);
}
