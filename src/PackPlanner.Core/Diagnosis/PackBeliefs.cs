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

    /// <summary>Adds the beliefs: cost, and curvature and pull where asked for.</summary>
    internal double Of(double[] x, NormalEquations? normal)
    {
        double cost = 0;
        // What the model misses is missed in all groups alike: to the common parameters, many groups are no more than a few.
        double trust = Math.Sqrt(Math.Max(1, model.Groups / 3.0));
        for (int j = 0; j < model.Curve.Shapes; j++)
            cost += Pull(x, j, 0, 1 / trust, normal);
        for (int j = 0; j < SlowCurrents.TauS.Length; j++)
            cost += Pull(x, model.SlowAt + j, PackStart.ExpectedSlow(model, j, out double sd), sd / trust, normal);
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
        Tie(at + PackParameters.LogCapacity, model.MeanAt, 0.02);
        cost += Pull(x, at + PackParameters.LogCapacity, Math.Log(0.9), 0.3, normal);
        Tie(at + PackParameters.Charge, model.MeanAt + 1, 0.01);
        // On a flat curve a wrong tap could else be explained by half a charge.
        Near(at + PackParameters.Charge, model.MeanAt + 1, 0.12);
        Alike(at + PackParameters.Warp, PackParameters.Warps, 0.4);
        Alike(at + PackParameters.Bend, PackParameters.Bends, 1.0);
        cost += PullResistance(x, k, normal);
        if (!model.Leaks)
            return cost;
        Lone(at + PackParameters.Leak, LeakSd);
        for (int e = 0; e < model.Tops; e++)
            cost += Pull(x, at + PackParameters.Bleed + e, 0, 15, normal);
        return cost;

        // Most groups are alike, a few are not: a belief with long tails draws the many together and lets the few go.
        void Tie(int a, int b, double sd)
        {
            double d = x[a] - x[b], t = d / sd;
            cost += Math.Log(1 + (t * t));
            if (normal is null)
                return;
            double weight = 1 / (sd * sd * (1 + (t * t)));
            normal.Add(a, a, weight);
            normal.Add(b, b, weight);
            normal.Add(a, b, -weight);
            normal.Right[a] -= weight * d;
            normal.Right[b] += weight * d;
        }
        void Near(int a, int b, double sd)
        {
            double t = (x[a] - x[b]) / sd, weight = 1 / (sd * sd);
            cost += t * t;
            if (normal is null)
                return;
            normal.Add(a, a, weight);
            normal.Add(b, b, weight);
            normal.Add(a, b, -weight);
            normal.Right[a] -= t / sd;
            normal.Right[b] += t / sd;
        }
        void Lone(int a, double sd)
        {
            double t = x[a] / sd;
            cost += Math.Log(1 + (t * t));
            if (normal is null)
                return;
            double weight = 1 / (sd * sd * (1 + (t * t)));
            normal.Add(a, a, weight);
            normal.Right[a] -= weight * x[a];
        }
        void Alike(int first, int count, double sd)
        {
            for (int j = 0; j < count; j++)
                cost += Pull(x, first + j, 0, (model.OwnCurves ? WidestOwn : 1) * sd, normal);
            if (!model.OwnCurves)
                return;
            double square = 0;
            for (int j = 0; j < count; j++)
                square += x[first + j] * x[first + j] / (sd * sd);
            cost += (TailFreedom + count) * Math.Log(1 + (square / TailFreedom));
            if (normal is null)
                return;
            double weight = (TailFreedom + count) / (TailFreedom + square) / (sd * sd);
            for (int j = 0; j < count; j++)
            {
                normal.Add(first + j, first + j, weight);
                normal.Right[first + j] -= weight * x[first + j];
            }
        }
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
