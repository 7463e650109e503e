using PackPlanner.Core.Cells;
using static System.FormattableString;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Findings from figures with their spreads. A figure accuses only when it is past its limit and past its doubt.</summary>
/// <remarks>Limits stand about midway between what healthy groups spread and what a fault that matters does (docs/methods/diagnosis.md).</remarks>
internal static class Verdicts
{
    // Capacity over the middle group's; state of charge; resistance over the middle group's, above 1; amperes for each ampere-hour.
    internal const double LowShare = 0.937, LowOffset = 0.035, HighTotal = 0.27, LeakPerAh = 0.0009;

    /// <summary>Findings of one group.</summary>
    internal static List<FindingDetail> Of(
        GroupEstimate g, PackEstimator.Estimate estimate, Identifiability told, bool sensor, (double Resistance, double Offset) spread, double standingV, double usualShare)
    {
        List<FindingDetail> findings = [];
        if (sensor)
            findings.Add(Sensor(g));
        if (told.Told && LowCapacity(g) is { } low)
            findings.Add(low);
        if (SelfDischarge(g, estimate) is { } leak)
            findings.Add(leak);
        if (Imbalance(g, estimate, spread.Offset) is { } offset)
            findings.Add(offset);
        if (PackStart.Known(estimate.Model) && Resistance(g, spread.Resistance, usualShare) is { } resistance)
            findings.Add(resistance);
        if (findings.Count == 0 && standingV != 0)
            findings.Add(Standing(standingV));
        return WithCannotTell(findings, told);
    }

    /// <summary>Findings of a group beside a loose sense wire: nothing else about it can be told apart from its neighbour.</summary>
    internal static List<FindingDetail> OfLoose(IReadOnlyList<LooseWires.Wire> wires, int group, Identifiability told, GroupEstimate mean)
    {
        FindingDetail loose = new(
            FindingKind.Sensor,
            [
                .. wires.Select(wire => Invariant($"jumps {wire.Jumps} times against group {(group == wire.Below ? wire.Below + 2 : wire.Below + 1)}, which jumps as far the other way; they stand {1000 * wire.ApartV:f0} mV off their mean")),
                "their sum is steady, so the cells do not jump: the sense wire between them makes and breaks contact",
                "its other figures are the mean of the groups beside the wire, so that a weak one among them would show at half its size in both",
                .. HalfHidden(mean, told),
            ],
            Sureness.High, "Measure both cells with a meter, then move the sense wire and its contact while watching the readings.");
        return WithCannotTell([loose], told);
    }

    /// <summary>What the mean of the groups beside a wire says of the weaker one, were the other sound.</summary>
    private static IEnumerable<string> HalfHidden(GroupEstimate mean, Identifiability told)
    {
        if (told.Told && mean.Share < 0.97)
            yield return Invariant($"that mean holds {100 * mean.Share:f0} % of the median group's charge: were one of two sound, the other would hold {100 * ((2 * mean.Share) - 1):f0} %");
        if (mean.TotalShare > 1 + (HighTotal / 2))
            yield return Invariant($"that mean has {mean.TotalShare:f2} times the median group's resistance: were one of two sound, the other would have {(2 * mean.TotalShare) - 1:f2} times");
        if (Math.Abs(mean.Offset) > LowOffset / 2)
            yield return Invariant($"that mean stands {100 * mean.Offset:+0.0;-0.0} points of charge off: were one of two level, the other would stand {200 * mean.Offset:+0.0;-0.0} off");
    }

    private static List<FindingDetail> WithCannotTell(List<FindingDetail> findings, Identifiability told)
    {
        if (!told.Told)
        {
            findings.Add(new FindingDetail(
                FindingKind.CannotTell, [told.Reason!, "this says nothing for or against the group's health"], Sureness.High, told.Remedy!));
        }
        return findings;
    }

    /// <summary>One standard deviation of the ordinary groups' figures, which a few odd ones do not move; 0 where groups are too few to tell.</summary>
    internal static double Spread(IReadOnlyList<GroupEstimate> groups, Func<GroupEstimate, double> figure) =>
        groups.Count < 6 ? 0 : Robust.Scatter([.. groups.Select(figure)]);

    private static FindingDetail? LowCapacity(GroupEstimate g)
    {
        double beyond = (1 - g.Share) / g.ShareSd;
        if (g.Share > LowShare || beyond < 2)
            return null;
        Ranged percent = Ranged.Relative(100 * g.Share, g.ShareSd);
        List<string> evidence =
        [
            Invariant($"holds {percent.Value:f0} % of the median group's charge (90 % range {percent.Low:f0} to {percent.High:f0} %)"),
            Math.Abs(g.Offset) < 0.02 ? "stands level with the others at the start, so it is not merely less charged"
                : Invariant($"starts {100 * Math.Abs(g.Offset):f1} points {(g.Offset < 0 ? "below" : "above")} the others; that is counted apart from its capacity"),
        ];
        if (g.CellsShare > 1.15 && Math.Abs((g.CellsShare * g.Share) - 1) < 0.15)
            evidence.Add(Invariant($"its resistance is higher by the same factor ({g.CellsShare:f2}): as when a parallel cell has dropped out"));
        return new FindingDetail(FindingKind.LowCapacity, evidence, Grade(beyond),
            "Charge this group full by itself and discharge it on a tester to the cut-off; with parallel cells, look for one that carries no current.");
    }

    private static FindingDetail? Imbalance(GroupEstimate g, PackEstimator.Estimate estimate, double spread)
    {
        // Seen at the start, when the others are full, and when they are empty: a smaller group drifts off at one of them by itself.
        double middle = estimate.MedianCapacityAh, start = estimate.MedianCharge;
        double atFull = g.Offset + ((1 - start) * ((middle / g.CapacityAh) - 1));
        double atEmpty = g.Offset - (start * ((middle / g.CapacityAh) - 1));
        double[] seen = Math.Abs(Math.Log(g.Share)) < 0.05 ? [g.Offset] : [g.Offset, atFull, atEmpty];
        double least = seen.MinBy(Math.Abs);
        if (g.TapV != 0)
            return Math.Abs(least) > 0.06 && Math.Abs(least) > 4 * g.OffsetSd ? Found(least) : null;
        // In a pack that was never balanced all groups scatter: only what stands out of the scatter accuses one of them.
        return Math.Abs(least) < Math.Max(LowOffset, 3 * spread) || Math.Abs(least) < 1.2 * g.OffsetSd || seen.Any(s => Math.Sign(s) != Math.Sign(g.Offset)) ? null : Found(least);

        FindingDetail Found(double size) => new(
            FindingKind.Imbalance,
            [
                Invariant($"{100 * Math.Abs(g.Offset):f1} points {(g.Offset < 0 ? "below" : "above")} the median group at the first row (± {164.5 * g.OffsetSd:f1})"),
                "the same shift in ampere-hours all along the curve; a loss of capacity would grow with depth",
            ],
            Grade(Math.Abs(size) / g.OffsetSd),
            "Balance at the top of a slow charge and log again: the shift must be gone; if it comes back within days, look for a leak.");
    }

    private static FindingDetail Standing(double volts) => new(
        FindingKind.Imbalance,
        [
            Invariant($"reads at least {1000 * Math.Abs(volts):f0} mV {(volts < 0 ? "below" : "above")} the middle group in nine tenths of the log, while the others keep together"),
            "this log does not tell less charge from less capacity or a curve of its own",
        ],
        Sureness.Low, "Balance at the top of a slow charge and log a full ride: if it still falls behind, it holds less.");

    private static FindingDetail? SelfDischarge(GroupEstimate g, PackEstimator.Estimate estimate)
    {
        double limitA = LeakPerAh * estimate.Model.RatedAh;
        if (!estimate.Model.Leaks || g.LeakA < limitA || g.LeakA < 2.5 * g.LeakSd)
            return null;
        return new FindingDetail(
            FindingKind.SelfDischarge,
            [
                Invariant($"loses {1000 * g.LeakA:f0} mA more than the median group, at rest as under load (± {1645 * g.LeakSd:f0})"),
                "its offset moves with time and not with the charge drawn",
            ],
            Grade(g.LeakA / g.LeakSd),
            "Charge full, rest 24 h or more with the balancer off, and read this group against its neighbours twice.");
    }

    private static FindingDetail? Resistance(GroupEstimate g, double spread, double usualShare)
    {
        double excess = (g.TotalShare / usualShare) - 1;
        // Where groups are read at different moments, resistances scatter by half: then only what is beyond the scatter accuses.
        if (excess < Math.Max(HighTotal, 4 * spread))
            return null;
        double slow = (g.CellsShare / usualShare) - 1;
        string size = usualShare == 1
            ? Invariant($"{1000 * (g.ResistanceOhm - (g.ResistanceOhm / g.TotalShare)):f2} milliohm above the median group ({g.TotalShare:f2} times)")
            : Invariant($"{1000 * g.ResistanceOhm * excess / (1 + excess):f2} milliohm above its neighbours in the string ({1 + excess:f2} times; {g.TotalShare:f2} times the median group)");
        bool joint = slow < 0.45 * excess;
        Sureness sure = Grade(Math.Abs(slow - (0.45 * excess)) / g.CellsSd);
        return joint
            ? new FindingDetail(FindingKind.Connection,
                [size, Invariant($"all of it at the instant of the step; the slow part is {g.CellsShare:f2} times the median's"), "within the span of this group's taps: the joint to the neighbour below or above"],
                sure, "Measure millivolts over each joint of this group, and over the tap's own joint, at a known current.")
            : new FindingDetail(FindingKind.HighResistance,
                [size, Invariant($"the slow part is higher too ({g.CellsShare:f2} times the median's): cells or welds inside the group")],
                sure, "Measure each cell of the group four-wire, or its voltage drop one second after a known step of current.");
    }

    private static FindingDetail Sensor(GroupEstimate g) => new(
        FindingKind.Sensor,
        [
            Invariant($"reads {1000 * Math.Abs(g.TapV):f0} mV too {(g.TapV > 0 ? "high" : "low")} at every current and charge"),
            "its neighbour reads wrong by the same amount the other way, or the tap is the last of the string",
        ],
        Math.Abs(g.TapV) > 0.015 ? Sureness.High : Sureness.Medium,
        "Measure this group and its neighbours at the cells with a meter and compare with the log at rest.");

    private static Sureness Grade(double spreads) => spreads > 5 ? Sureness.High : spreads > 3 ? Sureness.Medium : Sureness.Low;
}
