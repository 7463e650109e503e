using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Fits a pack again with all its capacities a few percent larger and smaller, for the valleys that a first fit did not see.</summary>
/// <remarks>
/// On a sloping curve that may be bent, a larger pack whose log begins and ends elsewhere reads nearly the same. Such valleys lie some percent of
/// capacity apart and differ little in cost; the inverse curvature of one of them knows nothing of the others.
/// </remarks>
internal static class StretchedStarts
{
    private const double Stretch = 0.04;
    private const int Steps = 20, MostInOneDirection = 3;

    // Squared spreads by which valleys differ count a ninth, as formal variances count nine times (GroupEstimates).
    private const double Temper = 9;

    /// <summary>The best of the fits, and how far the others that are nearly as good lie from it: one standard deviation of log capacity.</summary>
    internal static (PackFit Fit, double ValleySd) Best(PackModel model, PackFit fit)
    {
        List<PackFit> seen = [fit];
        foreach (double stretch in (double[])[-Stretch, Stretch])
        {
            PackFit last = fit;
            for (int i = 0; i < MostInOneDirection; i++)
            {
                PackFit next = Stretched(model, last, stretch);
                seen.Add(next);
                if (next.Judgement > last.Judgement - 1)
                    break;
                last = next;
            }
        }
        PackFit best = seen.MinBy(f => f.Judgement)!;
        double weights = 0, squares = 0;
        foreach (PackFit other in seen)
        {
            double weight = Math.Exp((best.Judgement - other.Judgement) / (2 * Temper)), apart = other.X[model.MeanAt] - best.X[model.MeanAt];
            (weights, squares) = (weights + weight, squares + (weight * apart * apart));
        }
        return (best, Math.Sqrt(squares / weights));
    }

    /// <summary>A fit begun with larger capacities: charges stretched about where each group stood lowest, the curve as it was believed to be.</summary>
    private static PackFit Stretched(PackModel model, PackFit from, double stretch)
    {
        double[] x = (double[])from.X.Clone();
        Array.Clear(x, 0, model.Curve.Shapes);
        double[] lowest = [.. Enumerable.Range(0, model.Groups).Select(k => Enumerable.Range(0, model.Slices.Pieces.Length).Min(i => from.ChargeAt(i, k)))];
        Move(model.MeanAt, Robust.Median(lowest));
        for (int k = 0; k < model.Groups; k++)
            Move(model.GroupAt(k) + PackParameters.LogCapacity, lowest[k]);
        PackFit fit = new(model, x);
        fit.CopyFloors(from);
        fit.Run(Steps, adaptFloors: false, enough: 0.01);
        return fit;

        // Charge stands behind log capacity, of the pack as of each group.
        void Move(int at, double low)
        {
            x[at] += stretch;
            x[at + 1] = low + ((x[at + 1] - low) * Math.Exp(-stretch));
        }
    }
}
