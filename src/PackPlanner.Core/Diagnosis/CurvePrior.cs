using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>What is believed about the open-circuit curve before the log speaks: a mean and the ways it may differ.</summary>
/// <remarks>
/// Curve(z) = mean(z) + sum over j of weight[j] x shape[j](z), the weights being standard normal. State of charge is 1 at the
/// resting full voltage and 0 at the resting empty voltage by definition, so every shape vanishes at both ends: this is what
/// lets a log that reaches an end tell absolute ampere-hours at all.
/// </remarks>
internal sealed class CurvePrior
{
    private const int Steps = 400;
    private readonly double[] meanV;
    private readonly double[] nodes;
    private readonly double[][] shapeV;
    private readonly int[] nodeBelow;

    private CurvePrior(double[] meanV, double[] nodes, double[][] shapeV, CurveFamily family)
    {
        IsFlat = family == CurveFamily.Lfp;
        CapacityDoubt = family switch { CurveFamily.Lfp => 0.031, CurveFamily.Nmc => 0.033, CurveFamily.Nca => 0.042, _ => 0.055 };
        nodeBelow = [.. Enumerable.Range(0, Steps + 1).Select(i => Math.Clamp(nodes.Count(n => n <= i / (double)Steps) - 1, 0, nodes.Length - 2))];
        this.meanV = meanV;
        this.nodes = nodes;
        this.shapeV = shapeV;
    }

    /// <summary>How many shapes the correction has.</summary>
    internal int Shapes => shapeV[0].Length;

    /// <summary>The curve has a long flat part, on which several charges explain one voltage.</summary>
    internal bool IsFlat { get; }

    /// <summary>How far the pack's capacity may be off although the fit is content, one standard deviation of its logarithm.</summary>
    /// <remarks>
    /// Set on simulated packs with curves of other cells than those held here (docs/methods/diagnosis.md). Of NCA one whole cell
    /// is held only; any other chemistry has a table of its own, which no second one has tried.
    /// </remarks>
    internal double CapacityDoubt { get; }

    /// <summary>Builds the belief for one chemistry between two resting voltages.</summary>
    internal static CurvePrior For(Chemistry chemistry, double fullV, double emptyV)
    {
        CurveFamily family = chemistry.Name switch
        {
            "LFP" => CurveFamily.Lfp,
            "NMC" => CurveFamily.Nmc,
            "NCA" => CurveFamily.Nca,
            _ => CurveFamily.Other,
        };
        if (family == CurveFamily.Other)
            return Build(family, CurveMembers.Between(s => chemistry.Curve.VoltsAt(1 - s), fullV, emptyV), []);
        (Func<double, double> mean, (Func<double, double> To, double Sd)[] modes) = CurveMembers.Of(family, fullV, emptyV);
        return Build(family, mean, modes);
    }

    private static CurvePrior Build(CurveFamily family, Func<double, double> mean, (Func<double, double> To, double Sd)[] modes)
    {
        double[] meanV = [.. Enumerable.Range(0, Steps + 1).Select(i => mean(i / (double)Steps))];
        double[] nodes = Nodes(family == CurveFamily.Lfp ? 0.02 : 0.04);
        Matrix<double> covariance = Matrix<double>.Build.Dense(nodes.Length, nodes.Length);
        foreach ((double sdV, double perSlope, double length) in CurveMembers.Smoothness(family))
            AddSmooth(covariance, nodes, mean, sdV, perSlope, length);
        foreach ((Func<double, double> to, double sd) in modes.Concat(CurveMembers.Slips(family, mean)))
        {
            Vector<double> way = Vector<double>.Build.Dense(nodes.Length, i => sd * (to(nodes[i]) - mean(nodes[i])));
            covariance += way.OuterProduct(way);
        }
        HoldEnds(covariance);
        return new CurvePrior(meanV, nodes, Shape(covariance), family);
    }

    /// <summary>The curve bent by some weights, volts at every four-hundredth of charge; every node is one of them.</summary>
    internal double[] Bent(ReadOnlySpan<double> weights)
    {
        double[] correctionV = new double[nodes.Length];
        for (int i = 0; i < correctionV.Length; i++)
        {
            for (int j = 0; j < weights.Length; j++)
                correctionV[i] += weights[j] * shapeV[i][j];
        }
        double[] bentV = new double[Steps + 1];
        for (int i = 0; i <= Steps; i++)
        {
            int below = Node(i / (double)Steps, out double share);
            bentV[i] = meanV[i] + correctionV[below] + (share * (correctionV[below + 1] - correctionV[below]));
        }
        return bentV;
    }

    /// <summary>Volts of a bent curve at z, and the slope in volts per unit of charge; beyond both ends the unbent one goes on straight.</summary>
    internal double Volts(double z, double[] bentV, out double slopeV)
    {
        double[] volts = z is > 0 and < 1 ? bentV : meanV;
        int i = (int)Math.Clamp(z * Steps, 0, Steps - 1);
        slopeV = (volts[i + 1] - volts[i]) * Steps;
        return volts[i] + ((z - (i / (double)Steps)) * slopeV);
    }

    /// <summary>Writes the value of every shape at z.</summary>
    internal void ShapesAt(double z, Span<double> into)
    {
        if (z <= 0 || z >= 1)
        {
            into.Clear();
            return;
        }
        int i = Node(z, out double share);
        ReadOnlySpan<double> below = shapeV[i], above = shapeV[i + 1];
        for (int j = 0; j < into.Length; j++)
            into[j] = below[j] + (share * (above[j] - below[j]));
    }

    /// <summary>How strange the slopes of a corrected curve are, as a sum of squared spreads over stretches of a tenth.</summary>
    /// <remarks>
    /// The weights alone let a curve lie nearly flat just below full, and then a quarter too much capacity fits as well as
    /// the truth. Slopes of one chemistry differ by a factor, so their logarithms are judged.
    /// </remarks>
    internal double Strangeness(ReadOnlySpan<double> weights)
    {
        double sum = 0;
        double[] corrected = Bent(weights);
        for (int i = 0; i < 10; i++)
        {
            double low = i / 10.0, high = (i + 1) / 10.0;
            double rise = Volts(high, corrected, out _) - Volts(low, corrected, out _), usual = Volts(high, meanV, out _) - Volts(low, meanV, out _);
            double log = Math.Log(Math.Max(rise, 0.02 * usual) / usual) / (IsFlat ? 1.0 : 0.5);
            sum += log * log;
        }
        return sum;
    }

    private int Node(double z, out double share)
    {
        int i = nodeBelow[(int)(z * Steps)];
        while (i < nodes.Length - 2 && nodes[i + 1] <= z)
            i++;
        share = (z - nodes[i]) / (nodes[i + 1] - nodes[i]);
        return i;
    }

    private static double[] Nodes(double step)
    {
        List<double> nodes = [0, 0.01, 0.02, 0.035, 0.05, 0.07];
        for (double z = 0.09; z < 0.93; z += step)
            nodes.Add(z);
        nodes.AddRange([0.94, 0.96, 0.975, 0.985, 0.9925, 1.0]);
        return [.. nodes.Select(z => Math.Round(z * Steps) / Steps)];
    }

    private static void AddSmooth(
        Matrix<double> covariance, double[] nodes, Func<double, double> mean, double sdV, double perSlope, double length)
    {
        double Sd(double z)
        {
            double slope = (mean(Math.Min(1, z + 0.005)) - mean(Math.Max(0, z - 0.005))) / (Math.Min(1, z + 0.005) - Math.Max(0, z - 0.005));
            return Math.Sqrt((sdV * sdV) + (perSlope * perSlope * slope * slope));
        }
        double[] sd = [.. nodes.Select(Sd)];
        for (int i = 0; i < nodes.Length; i++)
        {
            for (int j = 0; j < nodes.Length; j++)
            {
                double d = (nodes[i] - nodes[j]) / length;
                covariance[i, j] += sd[i] * sd[j] * Math.Exp(-d * d / 2);
            }
        }
    }

    /// <summary>Conditions the belief on no correction at either end.</summary>
    private static void HoldEnds(Matrix<double> covariance)
    {
        foreach (int end in (int[])[0, covariance.RowCount - 1])
        {
            Vector<double> column = covariance.Column(end);
            if (column[end] > 1e-12)
                covariance.Subtract(column.OuterProduct(column) / column[end], covariance);
        }
    }

    private static double[][] Shape(Matrix<double> covariance)
    {
        MathNet.Numerics.LinearAlgebra.Factorization.Evd<double> parts = covariance.Evd(Symmetricity.Symmetric);
        int[] kept = [.. Enumerable.Range(0, covariance.RowCount).Where(i => parts.EigenValues[i].Real > 0.0004 * 0.0004)];
        double[][] shape = [.. Enumerable.Range(0, covariance.RowCount).Select(_ => new double[kept.Length])];
        for (int j = 0; j < kept.Length; j++)
        {
            double root = Math.Sqrt(parts.EigenValues[kept[j]].Real);
            for (int i = 0; i < covariance.RowCount; i++)
                shape[i][j] = parts.EigenVectors[i, kept[j]] * root;
        }
        return shape;
    }
}
