namespace PackPlanner.Core.Diagnosis;

/// <summary>What is believed of a pack before its log is read, as terms of the fit: cost, curvature and pull.</summary>
/// <remarks>
/// Most groups are alike and a few are not, so ties between a group and the pack have long tails; what is common to
/// all is held with normal beliefs.
/// </remarks>
internal sealed class PackBeliefs(PackModel model)
{
    private const double TailFreedom = 3;
    private const double LeakSd = 2;

    // However odd a group, its curve stays within some points of charge and some tens of millivolts of the others'.
    private const double WidestOwn = 15;

    private readonly (double Mean, double Sd)[] slow = PackStart.ExpectedSlow(model);

    /// <summary>Adds the beliefs: cost, and curvature and pull where asked for.</summary>
    internal double Of(double[] x, NormalEquations? normal)
    {
        double cost = 0;
        // What the model misses is missed in all groups alike: to the common parameters, many groups are no more than a few.
        double trust = Math.Sqrt(Math.Max(1, model.Groups / 3.0));
        for (int j = 0; j < model.Curve.Shapes; j++)
            cost += Pull(x, j, 0, 1 / trust, normal);
        for (int j = 0; j < slow.Length; j++)
            cost += Pull(x, model.SlowAt + j, slow[j].Mean, slow[j].Sd / trust, normal);
        for (int m = 0; m < 2 * ChargeSlices.Memory.Length; m++)
            cost += Pull(x, model.HysteresisAt + m, 0, 1 / trust, normal);
        cost += Pull(x, model.MeanAt, PackStart.ExpectedLogCapacity(x[model.MeanAt], out double capacitySd), capacitySd / trust, normal);
        cost += Pull(x, model.OffsetAt, 0, model.OffsetSd, normal);
        for (int t = 0; t < model.Taps.Count; t++)
            cost += Pull(x, model.TapAt + t, 0, 10, normal);
        for (int k = 0; k < model.Groups; k++)
            cost += OfGroup(x, k, normal);
        return cost;
    }

    /// <summary>Adds what is believed of one group.</summary>
    internal double OfGroup(double[] x, int k, NormalEquations? normal)
    {
        double cost = 0;
        int at = model.GroupAt(k);
        cost += Tie(x, at + PackParameters.LogCapacity, model.MeanAt, 0.02, normal);
        cost += Pull(x, at + PackParameters.LogCapacity, Math.Log(0.9), 0.3, normal);
        cost += Tie(x, at + PackParameters.Charge, model.MeanAt + 1, 0.01, normal);
        // On a flat curve a wrong tap could else be explained by half a charge.
        cost += Near(x, at + PackParameters.Charge, model.MeanAt + 1, 0.12, normal);
        cost += Alike(x, at + PackParameters.Warp, PackParameters.Warps, 0.4, normal);
        cost += Alike(x, at + PackParameters.Bend, PackParameters.Bends, 1.0, normal);
        cost += PullResistance(x, k, normal);
        if (!model.Leaks)
            return cost;
        cost += Lone(x, at + PackParameters.Leak, LeakSd, normal);
        for (int e = 0; e < model.Tops; e++)
            cost += Pull(x, at + PackParameters.Bleed + e, 0, 15, normal);
        return cost;
    }

    // Most groups are alike, a few are not: a belief with long tails draws the many together and lets the few go.
    private static double Tie(double[] x, int a, int b, double sd, NormalEquations? normal)
    {
        double d = x[a] - x[b], t = d / sd;
        Draw(normal, a, b, 1 / (sd * sd * (1 + (t * t))), d);
        return Math.Log(1 + (t * t));
    }

    private static double Near(double[] x, int a, int b, double sd, NormalEquations? normal)
    {
        double d = x[a] - x[b];
        Draw(normal, a, b, 1 / (sd * sd), d);
        return d / sd * (d / sd);
    }

    private static void Draw(NormalEquations? normal, int a, int b, double weight, double d)
    {
        if (normal is null)
            return;
        normal.Add(a, a, weight);
        normal.Add(b, b, weight);
        normal.Add(a, b, -weight);
        normal.Right[a] -= weight * d;
        normal.Right[b] += weight * d;
    }

    private static double Lone(double[] x, int a, double sd, NormalEquations? normal)
    {
        double t = x[a] / sd;
        if (normal is not null)
        {
            double weight = 1 / (sd * sd * (1 + (t * t)));
            normal.Add(a, a, weight);
            normal.Right[a] -= weight * x[a];
        }
        return Math.Log(1 + (t * t));
    }

    private double Alike(double[] x, int first, int count, double sd, NormalEquations? normal)
    {
        double cost = 0;
        for (int j = 0; j < count; j++)
            cost += Pull(x, first + j, 0, (model.OwnCurves ? WidestOwn : 1) * sd, normal);
        if (!model.OwnCurves)
            return cost;
        double square = 0;
        for (int j = 0; j < count; j++)
            square += x[first + j] * x[first + j] / (sd * sd);
        cost += (TailFreedom + count) * Math.Log(1 + (square / TailFreedom));
        if (normal is null)
            return cost;
        double weight = (TailFreedom + count) / (TailFreedom + square) / (sd * sd);
        for (int j = 0; j < count; j++)
        {
            normal.Add(first + j, first + j, weight);
            normal.Right[first + j] -= weight * x[first + j];
        }
        return cost;
    }

    private static double Pull(double[] x, int at, double value, double sd, NormalEquations? normal)
    {
        double t = (x[at] - value) / sd;
        if (normal is not null)
        {
            normal.Add(at, at, 1 / (sd * sd));
            normal.Right[at] -= t / sd;
        }
        return t * t;
    }

    /// <summary>What the windows know of cells and joint, not trusted beyond a few percent.</summary>
    private double PullResistance(double[] x, int k, NormalEquations? normal)
    {
        PackStart.ResistanceBelief(model, k, out double cells, out double joint, out double cc, out double cj, out double jj);
        int at = model.GroupAt(k) + PackParameters.Cells;
        double dc = x[at] - cells, dj = x[at + 1] - joint;
        if (normal is not null)
        {
            normal.Add(at, at, cc);
            normal.Add(at, at + 1, cj);
            normal.Add(at + 1, at + 1, jj);
            normal.Right[at] -= (cc * dc) + (cj * dj);
            normal.Right[at + 1] -= (cj * dc) + (jj * dj);
        }
        return (cc * dc * dc) + (2 * cj * dc * dj) + (jj * dj * dj);
    }
}
