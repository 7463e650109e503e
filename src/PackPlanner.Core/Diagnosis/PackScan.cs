using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Looks over all capacities and starting charges before the fit, so that it starts in the right valley.</summary>
/// <remarks>
/// At a fixed capacity and charge the rest of the problem is linear (weights of the curve, size of the resistance, hysteresis), so
/// a grid costs little. On flat curves several valleys are near equal; the best few are all tried.
/// </remarks>
internal sealed class PackScan
{
    private const int MostPoints = 220;

    // Capacity from 0.55 to 1.15 of the pack's in steps of 0.03, charge up to 24 points off in steps of one and a half.
    private const int Ratios = 21, Offsets = 33;
    private readonly PackModel model;
    private readonly (double Mean, double Sd)[] slow;
    private readonly List<Point> points = [];

    internal PackScan(PackModel model)
    {
        this.model = model;
        slow = PackStart.ExpectedSlow(model);
        foreach (IGrouping<(int, int, int), int> slice in Enumerable.Range(0, model.Slices.Pieces.Length)
            .GroupBy(i => model.Slices.Pieces[i].Slice))
            points.Add(Merge([.. slice.Select(i => model.Slices.Pieces[i])]));
        // A long log has more slices than a scan needs.
        int stride = Math.Max(1, (points.Count + MostPoints - 1) / MostPoints);
        points = [.. points.Where((_, i) => i % stride == 0)];
    }

    private sealed record Point(double DrawnAh, double DriveA, double[] Hysteresis, double Warm, double MedianV, double[] Volts);

    /// <summary>A starting point: mean capacity and charge, and the curve that goes with them.</summary>
    internal sealed record Start(double LogCapacity, double Charge, double[] Weights, double[] Hysteresis, double Cost);

    /// <summary>The best valleys of the median group, best first.</summary>
    internal IReadOnlyList<Start> Median(int most)
    {
        double low = points.Min(p => p.DrawnAh), high = points.Max(p => p.DrawnAh);
        List<Start> grid = [];
        for (double ratio = 0.55; ratio <= 1.151; ratio += 0.04)
        {
            double capacityAh = ratio * model.RatedAh;
            double from = Math.Max(-0.05, (high / capacityAh) - 0.12), to = Math.Min(1.04, 1.03 + (low / capacityAh));
            for (double charge = from; charge <= to; charge += 0.02)
                grid.Add(Solve(Math.Log(ratio), charge));
        }
        if (grid.Count == 0)
            grid.Add(Solve(Math.Log(Math.Max(0.3, (high - low) / model.RatedAh)), Math.Min(1, high / (high - low + 1e-9))));
        List<Start> kept = [];
        foreach (Start start in grid.OrderBy(s => s.Cost))
        {
            if (kept.Count < most && kept.All(s => Math.Abs(s.Charge - start.Charge) > 0.05 || Math.Abs(s.LogCapacity - start.LogCapacity) > 0.09))
                kept.Add(start);
        }
        return kept;
    }

    /// <summary>The best valleys of one group under a given curve, best first, as (log capacity, charge).</summary>
    internal IReadOnlyList<(double LogCapacity, double Charge)> Group(int group, Start start, int most)
    {
        List<(double LogCapacity, double Charge, double Cost)> grid = [];
        double[] bentV = model.Curve.Bent(start.Weights);
        double?[,] seen = new double?[Ratios, Offsets];
        // A sloping curve has broad valleys: every second point shows where to look closer. On a flat one every point counts.
        int stride = model.Curve.IsFlat ? 1 : 2;
        for (int r = 0; r < Ratios; r += stride)
        {
            for (int o = 0; o < Offsets; o += stride)
                Look(r, o);
        }
        foreach ((int r, int o) in stride == 1 ? [] : Lowest(seen, 10))
        {
            for (int i = Math.Max(0, r - 1); i <= Math.Min(Ratios - 1, r + 1); i++)
            {
                for (int j = Math.Max(0, o - 1); j <= Math.Min(Offsets - 1, o + 1); j++)
                    Look(i, j);
            }
        }
        List<(double LogCapacity, double Charge, double Cost)> kept = [];
        foreach ((double LogCapacity, double Charge, double Cost) g in grid.OrderBy(g => g.Cost))
        {
            if (kept.Count < most && kept.All(s => Math.Abs(s.Charge - g.Charge) > 0.04 || Math.Abs(s.LogCapacity - g.LogCapacity) > 0.07))
                kept.Add(g);
        }
        return [.. kept.Select(g => (g.LogCapacity, g.Charge))];

        void Look(int r, int o)
        {
            double log = start.LogCapacity + Math.Log(0.55 + (0.03 * r)), charge = start.Charge - 0.24 + (0.015 * o);
            if (seen[r, o] is not null || charge is <= -0.02 or >= 1.06)
                return;
            double cost = Misfit(group, log, charge, start, bentV);
            seen[r, o] = cost;
            grid.Add((log, charge, cost));
        }
    }

    private static (int Ratio, int Offset)[] Lowest(double?[,] seen, int most) =>
    [
        .. Enumerable.Range(0, Ratios * Offsets).Select(i => (Ratio: i / Offsets, Offset: i % Offsets))
            .Where(at => seen[at.Ratio, at.Offset] is not null).OrderBy(at => seen[at.Ratio, at.Offset]).Take(most),
    ];

    private Point Merge(ChargeSlices.Piece[] pieces)
    {
        double drive = pieces.Average(p => PackStart.DriveA(slow, p));
        double[] volts = [.. Enumerable.Range(0, model.Groups).Select(k => pieces.Where(p => p.Readings[k] > 0)
            .Select(p => p.Volts[k]).DefaultIfEmpty(double.NaN).Average())];
        double middle = Robust.Median([.. volts.Where(double.IsFinite)]);
        double[] hysteresis = [.. Enumerable.Range(0, pieces[0].Hysteresis.Length).Select(m => pieces.Average(p => p.Hysteresis[m]))];
        return new Point(pieces.Average(p => p.DrawnAh), drive, hysteresis, model.Shape.Warm(pieces.Average(p => p.TemperatureDegC)), middle, volts);
    }

    private Start Solve(double logCapacity, double charge)
    {
        int r = model.Curve.Shapes, h = 2 * ChargeSlices.Memory.Length, size = r + h + 1;
        double capacityAh = model.RatedAh * Math.Exp(logCapacity);
        double sdV = 2 * model.FloorV + (model.GrainV / 5);
        Matrix<double> normal = Matrix<double>.Build.DenseIdentity(size);
        Vector<double> right = Vector<double>.Build.Dense(size);
        double[] row = new double[size], bareV = model.Curve.Bent([]);
        double square = 0;
        double sizeSd = PackStart.Known(model) ? 0.05 : 0.5;
        foreach (Point p in points)
        {
            if (double.IsNaN(p.MedianV))
                continue;
            double z = charge - (p.DrawnAh / capacityAh);
            double factor = p.Warm * model.Shape.AtCharge(z, out _) * model.UnitOhm * p.DriveA;
            double miss = (p.MedianV - model.Curve.Volts(z, bareV, out _) + factor) / sdV;
            model.Curve.ShapesAt(z, row.AsSpan(0, r));
            for (int m = 0; m < h; m++)
                row[r + m] = -model.HysteresisSdV * p.Hysteresis[m];
            row[^1] = -factor * sizeSd;
            square += miss * miss;
            for (int a = 0; a < size; a++)
            {
                double x = row[a] / sdV;
                right[a] += x * miss;
                for (int b = 0; b <= a; b++)
                    normal[a, b] += x * row[b] / sdV;
            }
        }
        for (int a = 0; a < size; a++)
        {
            for (int b = 0; b < a; b++)
                normal[b, a] = normal[a, b];
        }
        MathNet.Numerics.LinearAlgebra.Factorization.Cholesky<double> factorised = PositiveDefinite.Factor(normal);
        Vector<double> weights = factorised.Solve(right);
        double belief = (logCapacity - PackStart.ExpectedLogCapacity(logCapacity, out double capacitySd)) / capacitySd;
        double cost = square - weights.DotProduct(right) + factorised.DeterminantLn + (belief * belief);
        return new Start(logCapacity, charge, [.. weights.Take(r)], [.. weights.Skip(r).Take(h)], cost);
    }

    /// <summary>Cost of one group at a capacity and charge, its own stretching and bending of the curve left free.</summary>
    private double Misfit(int group, double logCapacity, double charge, Start start, double[] bentV)
    {
        const int terms = PackParameters.Warps + PackParameters.Bends;
        double capacityAh = model.RatedAh * Math.Exp(logCapacity);
        PackStart.ResistanceBelief(model, group, out double cells, out double joint, out _, out _, out _);
        Span<double> normal = stackalloc double[terms * terms];
        Span<double> right = stackalloc double[terms];
        Span<double> row = stackalloc double[terms];
        normal.Clear();
        right.Clear();
        double square = 0;
        foreach (Point p in points)
        {
            if (double.IsNaN(p.Volts[group]))
                continue;
            double z = charge - (p.DrawnAh / capacityAh);
            double v = model.Curve.Volts(z, bentV, out double slope);
            double drop = model.UnitOhm * ((p.Warm * model.Shape.AtCharge(z, out _) * cells) + joint) * p.DriveA;
            v -= drop;
            for (int m = 0; m < p.Hysteresis.Length; m++)
                v -= start.Hysteresis[m] * model.HysteresisSdV * p.Hysteresis[m];
            double sd = Math.Sqrt((9 * model.FloorV * model.FloorV) + (0.0025 * drop * drop) + (0.00002 * slope * slope) + (model.GrainV * model.GrainV / 24));
            double miss = Math.Clamp((p.Volts[group] - v) / sd, -40, 40);
            square += miss * miss;
            FillFreeTerms(row, z, slope, sd);
            for (int j = 0; j < terms; j++)
            {
                right[j] += row[j] * miss;
                for (int i = 0; i <= j; i++)
                    normal[(j * terms) + i] += row[j] * row[i];
            }
        }
        double ratio = (logCapacity - start.LogCapacity) / 0.05, offset = (charge - start.Charge) / 0.02;
        double best = double.PositiveInfinity;
        // As ordinary as the others, or as odd as an aged group: the odd one pays for its freedom.
        foreach (double scale in (double[])[1, 4, 16])
            best = Math.Min(best, square - Explained(normal, right, terms, scale) + (2 * 3 * Math.Log(scale)));
        return best + Math.Log(1 + (ratio * ratio)) + Math.Log(1 + (offset * offset));
    }

    /// <summary>What a hundredth of stretching and a millivolt of bending of each order do to the volts at a charge, in deviations.</summary>
    private static void FillFreeTerms(Span<double> row, double z, double slope, double sd)
    {
        (double sine, double cosine) = z is > 0 and < 1 ? Math.SinCos(Math.PI * z) : (0, 0);
        (double s, double c) = (sine, cosine);
        for (int order = 1; order <= PackParameters.Warps; order++)
        {
            row[order - 1] = 0.01 * slope * s / order / sd;
            if (order <= PackParameters.Bends)
                row[PackParameters.Warps + order - 1] = 0.001 * s / sd;
            (s, c) = ((s * cosine) + (c * sine), (c * cosine) - (s * sine));
        }
    }

    /// <summary>How much of the misfit the free terms explain when their spread is a multiple of the ordinary one.</summary>
    private static double Explained(ReadOnlySpan<double> normal, ReadOnlySpan<double> right, int terms, double scale)
    {
        Span<double> lower = stackalloc double[terms * terms];
        Span<double> solved = stackalloc double[terms];
        double explained = 0;
        for (int i = 0; i < terms; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = normal[(i * terms) + j];
                if (i == j)
                    sum += 1 / (scale * scale * (i < PackParameters.Warps ? 0.16 : 1));
                for (int k = 0; k < j; k++)
                    sum -= lower[(i * terms) + k] * lower[(j * terms) + k];
                lower[(i * terms) + j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-12)) : sum / lower[(j * terms) + j];
            }
            double value = right[i];
            for (int k = 0; k < i; k++)
                value -= lower[(i * terms) + k] * solved[k];
            solved[i] = value / lower[(i * terms) + i];
            explained += solved[i] * solved[i];
        }
        return explained;
    }
}
