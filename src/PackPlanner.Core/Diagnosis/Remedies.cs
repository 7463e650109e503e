using PackPlanner.Core.Cells;
using static System.FormattableString;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Runs the fitted pack down to its loaded cut-off, as it is and as it would be after each repair.</summary>
internal static class Remedies
{
    private const int MostReplaced = 3, Steps = 60;

    /// <summary>The pack as a ride finds it: what each group holds when the charger stops, and where its loaded voltage ends it.</summary>
    private sealed record Ride(double UsableAh, double UsableWh, int Ends);

    /// <summary>Loaded figures and remedies, best gain first.</summary>
    internal static (LoadedRecovery Loaded, IReadOnlyList<Remedy> Remedies) Of(PackEstimator.Estimate estimate, GroupEstimate[] groups, IReadOnlyList<List<FindingDetail>> findings)
    {
        double currentA = estimate.MeanDischargeA;
        double[] capacity = [.. groups.Select(g => g.CapacityAh)];
        double[] room = [.. groups.Select(g => (1 - Math.Clamp(g.Charge, 0, 1)) * g.CapacityAh)];
        double charged = room.Min();
        double[] top = [.. groups.Select(g => Math.Clamp(g.Charge, 0, 1) + (charged / g.CapacityAh))];
        double[] full = [.. groups.Select(_ => 1.0)], joints = [.. full];
        Ride now = Run(estimate, capacity, top, joints, currentA, []);
        Ride balanced = Run(estimate, capacity, full, joints, currentA, []);
        List<Remedy> remedies = [];
        if (findings.Any(f => f.Any(d => d.Kind is FindingKind.Imbalance or FindingKind.SelfDischarge)) || balanced.UsableAh > 1.01 * now.UsableAh)
            remedies.Add(Made("Balance the pack at the top of a slow charge.", balanced));
        int[] joint = [.. Enumerable.Range(0, groups.Length).Where(k => findings[k].Any(d => d.Kind == FindingKind.Connection))];
        foreach (int k in joint)
            remedies.Add(Made(Invariant($"Mend the joint at group {k + 1}."), Run(estimate, capacity, top, Mended(joints, k), currentA, [])));
        List<int> replaced = [];
        Ride last = balanced;
        for (int m = 1; m <= Math.Min(MostReplaced, groups.Length - 1); m++)
        {
            replaced.Add(last.Ends);
            Ride after = Run(estimate, capacity, full, joints, currentA, replaced);
            if (m == 1 || after.UsableAh > 1.005 * last.UsableAh)
                remedies.Add(Made($"Replace group{(m > 1 ? "s" : "")} {string.Join(", ", replaced.Select(k => k + 1))} by one as good as the median group{(m > 1 ? " each" : "")}, and balance.", after));
            else
                break;
            last = after;
        }
        Ride first = replaced.Count == 0 ? balanced : Run(estimate, capacity, full, joints, currentA, [replaced[0]]);
        return (new LoadedRecovery(currentA, now.UsableAh, now.UsableWh, balanced.UsableAh, first.UsableAh), remedies);

        Remedy Made(string what, Ride ride) => new(
            what, ride.UsableAh, ride.UsableWh, now.UsableAh <= 0 ? 0 : 100 * ((ride.UsableAh / now.UsableAh) - 1), ride.Ends + 1);
    }

    private static double[] Mended(double[] joints, int k)
    {
        double[] after = [.. joints];
        after[k] = 0;
        return after;
    }

    private static Ride Run(
        PackEstimator.Estimate estimate, double[] capacity, double[] top, double[] joints, double currentA, List<int> replaced)
    {
        int n = capacity.Length;
        double medianAh = Robust.Median(capacity);
        int typical = Enumerable.Range(0, n).MinBy(k => Math.Abs(capacity[k] - medianAh) + (Math.Abs(joints[k] - 1) * 1e-9));
        int As(int k) => replaced.Contains(k) ? typical : k;
        double Ah(int k) => replaced.Contains(k) ? medianAh : capacity[k];
        double usable = double.PositiveInfinity;
        int ends = 0;
        for (int k = 0; k < n; k++)
        {
            double low = -0.05, high = top[k];
            for (int i = 0; i < 30; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = estimate.Fit.SteadyVolts(As(k), middle, currentA, double.NaN, joints[k]) < estimate.EmptyV ? (middle, high) : (low, middle);
            }
            double ah = Math.Max(0, (top[k] - high) * Ah(k));
            if (ah < usable - 1e-9)
                (usable, ends) = (ah, k);
        }
        double wh = 0;
        for (int i = 0; i < Steps; i++)
        {
            double drawn = usable * (i + 0.5) / Steps;
            for (int k = 0; k < n; k++)
                wh += usable / Steps * estimate.Fit.SteadyVolts(As(k), top[k] - (drawn / Ah(k)), currentA, double.NaN, joints[k]);
        }
        return new Ride(usable, wh, ends);
    }
}
