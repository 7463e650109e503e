using Matrix = MathNet.Numerics.LinearAlgebra.Matrix<double>;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Fits curve, slow parts and every group at once to the averaged log, with robust weights and stated beliefs.</summary>
/// <remarks>
/// Damped Gauss-Newton on the reweighted least-squares problem; the normal equations are solved by MathNet's Cholesky
/// factorisation. The groups share one curve, so differences between groups come out sharp even where the curve is wrong.
/// </remarks>
internal sealed class PackFit
{
    private readonly PackModel model;
    private readonly PackBeliefs beliefs;
    private readonly double[] floorV;
    private readonly PackVolts volts;
    private readonly double[]?[] blocks;
    private readonly double[]?[] rights;

    internal PackFit(PackModel model, double[] start)
    {
        this.model = model;
        beliefs = new PackBeliefs(model);
        X = start;
        (blocks, rights) = (new double[]?[model.Groups], new double[]?[model.Groups]);
        volts = new PackVolts(model);
        volts.TakeCurve(start);
        floorV = new double[model.Groups];
        Array.Fill(floorV, model.FloorV);
    }

    /// <summary>The parameters, laid out as <see cref="PackModel"/> says.</summary>
    internal double[] X { get; private set; }

    /// <summary>What the fit minimised: misfit and beliefs.</summary>
    internal double Cost { get; private set; }

    /// <summary>Covariance of the common parameters and of each group's own, if errors were independent; null when not to be had.</summary>
    internal (Matrix Common, Matrix[] Own, Matrix[] Carried)? Covariances { get; private set; }

    /// <summary>Spread of each group's misfit beyond noise, volts.</summary>
    internal IReadOnlyList<double> FloorV => floorV;

    /// <summary>By how much this solution is to be judged: its cost, and how strange its curve is.</summary>
    internal double Judgement => Cost + (Math.Max(1, model.Groups / 3.0) * model.Curve.Strangeness(X.AsSpan(0, model.Curve.Shapes)));

    /// <summary>Takes over the misfits that another fit has learnt.</summary>
    internal void CopyFloors(PackFit other) => other.floorV.CopyTo(floorV, 0);

    /// <summary>Runs until steps become small, a given count at most.</summary>
    /// <param name="steps">Most steps.</param>
    /// <param name="adaptFloors">Whether each group's misfit beyond noise is learnt on the way.</param>
    /// <param name="enough">A step that gains less is the last.</param>
    internal void Run(int steps, bool adaptFloors, double enough = 1e-3)
    {
        NormalEquations normal = new(model.Shared, model.PerGroup, model.Groups);
        (X, _) = DampedSteps.Run(
            X, steps, x => Assemble(x, normal), normal.Solve, Evaluate, (step, gain) => gain < enough && step > 8,
            (step, x) =>
            {
                if (adaptFloors && step is 3 or 7)
                    AdaptFloors(x);
            });
        Cost = Assemble(X, normal);
        try
        {
            Covariances = normal.Covariances();
        }
        catch (ArgumentException)
        {
            // Not positive definite to rounding: leave the ranges at their widest.
            Covariances = null;
        }
    }

    /// <summary>Cost, pull and curvature at a point, for another minimiser to be measured against this one.</summary>
    internal (double Cost, double[] Pull, Matrix Curvature) Quadratic(double[] x)
    {
        NormalEquations normal = new(model.Shared, model.PerGroup, model.Groups);
        double cost = Assemble(x, normal);
        return (cost, normal.Right, normal.Whole());
    }

    /// <summary>Fits one group's own parameters with all that is common held, from a start; gives them and their cost.</summary>
    /// <param name="group">Which group.</param>
    /// <param name="own">Where to start, shape [PerGroup].</param>
    /// <param name="extraV">Volts taken off its readings: a supposed tap error.</param>
    /// <param name="steps">Most steps.</param>
    internal (double[] Own, double Cost) Polish(int group, double[] own, double extraV, int steps)
    {
        double[] x = (double[])X.Clone();
        int at = model.GroupAt(group), n = model.PerGroup, shared = model.Shared;
        own.CopyTo(x, at);
        NormalEquations normal = new(shared, n, model.Groups);
        double[] row = new double[n];
        (x, double cost) = DampedSteps.Run(
            x, steps,
            now =>
            {
                normal.Clear();
                return OwnCost(now, group, extraV, normal, row);
            },
            damping =>
            {
                double[] move = new double[x.Length];
                normal.SolveOwn(group, damping).CopyTo(move, at);
                return move;
            },
            next => OwnCost(next, group, extraV, null, row), (_, gain) => gain < 1e-2);
        return (x[at..(at + n)], cost);
    }

    /// <summary>Puts a group's own parameters in place.</summary>
    internal void Place(int group, double[] own) => own.CopyTo(X, model.GroupAt(group));

    private double OwnCost(double[] x, int group, double extraV, NormalEquations? normal, double[] row)
    {
        double cost = beliefs.OfGroup(x, group, normal);
        int at = model.GroupAt(group), n = model.PerGroup;
        double[] block = normal is null ? [] : new double[n * n];
        for (int i = 0; i < model.Slices.Pieces.Length; i++)
        {
            ChargeSlices.Piece p = model.Slices.Pieces[i];
            if (p.Readings[group] == 0)
                continue;
            double v = volts.At(x, p, group, out PackVolts.Local local);
            double sd = Math.Sqrt(Variance(i, group, local.DriveA)), miss = p.Volts[group] - extraV - v, t = Math.Abs(miss) / sd;
            cost += HuberLoss.Of(t);
            if (normal is null)
                continue;
            double weight = HuberLoss.Weight(t) / (sd * sd);
            volts.FillOwn(p, local, row);
            for (int a = 0; a < n; a++)
            {
                double wa = weight * row[a];
                normal.Right[at + a] += wa * miss;
                ScaledRows.Add(block.AsSpan(a * n, a + 1), row, wa);
            }
        }
        for (int a = 0; a < n && normal is not null; a++)
            for (int b = 0; b <= a; b++)
                normal.Add(at + a, at + b, block[(a * n) + b]);
        return cost;
    }

    /// <summary>State of charge of a group at a piece.</summary>
    internal double ChargeAt(int piece, int group) => volts.ChargeAt(X, model.Slices.Pieces[piece], group);

    /// <summary>Volts of a group as fitted, under a steady current: see <see cref="PackVolts.SteadyVolts"/>.</summary>
    internal double SteadyVolts(int group, double charge, double currentA, double temperatureDegC, double joint = 1) =>
        volts.SteadyVolts(X, group, charge, currentA, temperatureDegC, joint);

    /// <summary>Misfit of a group at a piece, volts: measured less modelled.</summary>
    private double MisfitV(double[] x, int piece, int group)
    {
        ChargeSlices.Piece p = model.Slices.Pieces[piece];
        return p.Volts[group] - volts.At(x, p, group, out _);
    }

    private double Variance(int piece, int group, double drive)
    {
        ChargeSlices.Piece p = model.Slices.Pieces[piece];
        double loadV = model.LoadError * model.UnitOhm * drive;
        double noiseV = Math.Max(model.Resistance.NoiseV[group], model.GrainV / 3);
        double shared = (floorV[group] * floorV[group]) + (loadV * loadV) + (model.GrainV * model.GrainV / 24);
        return (shared * model.Slices.SharedBy[piece]) + (noiseV * noiseV / p.Readings[group]);
    }

    private double Evaluate(double[] x)
    {
        volts.TakeCurve(x);
        double[] costs = new double[model.Groups];
        Parallel.For(0, model.Groups, k => costs[k] = Misfit(x, k));
        return beliefs.Of(x, null) + costs.Sum();
    }

    private double Misfit(double[] x, int k)
    {
        double cost = 0;
        for (int i = 0; i < model.Slices.Pieces.Length; i++)
        {
            ChargeSlices.Piece p = model.Slices.Pieces[i];
            if (p.Readings[k] == 0)
                continue;
            double v = volts.At(x, p, k, out PackVolts.Local local);
            cost += HuberLoss.Of(Math.Abs(p.Volts[k] - v) / Math.Sqrt(Variance(i, k, local.DriveA)));
        }
        return cost;
    }

    private double Assemble(double[] x, NormalEquations normal)
    {
        normal.Clear();
        volts.TakeCurve(x);
        double cost = beliefs.Of(x, normal);
        int size = model.Shared + model.PerGroup;
        // Groups side by side, their sums in order: the same figures whatever the number of cores.
        double[] costs = new double[model.Groups];
        Parallel.For(0, model.Groups, k =>
        {
            double[] row = new double[size], block = blocks[k] ??= new double[size * size], right = rights[k] ??= new double[size];
            Array.Clear(block);
            Array.Clear(right);
            for (int i = 0; i < model.Slices.Pieces.Length; i++)
            {
                if (model.Slices.Pieces[i].Readings[k] > 0)
                    costs[k] += AddPiece(x, i, k, row, block, right);
            }
        });
        for (int k = 0; k < model.Groups; k++)
            normal.AddBlock(k, blocks[k]!, rights[k]!);
        return cost + costs.Sum();
    }

    private double AddPiece(double[] x, int i, int k, double[] row, double[] block, double[] right)
    {
        ChargeSlices.Piece p = model.Slices.Pieces[i];
        double v = volts.At(x, p, k, out PackVolts.Local local);
        double sd = Math.Sqrt(Variance(i, k, local.DriveA)), miss = p.Volts[k] - v, t = Math.Abs(miss) / sd;
        double weight = HuberLoss.Weight(t) / (sd * sd);
        volts.FillRow(x, p, k, local, row);
        for (int a = 0; a < row.Length; a++)
        {
            double wa = weight * row[a];
            if (wa == 0)
                continue;
            right[a] += wa * miss;
            ScaledRows.Add(block.AsSpan(a * row.Length, a + 1), row, wa);
        }
        return HuberLoss.Of(t);
    }

    /// <summary>Learns how far each group's own curve lies from the shared one, so that a strange group does not shout.</summary>
    private void AdaptFloors(double[] x)
    {
        for (int k = 0; k < model.Groups; k++)
        {
            double sum = 0, weights = 0;
            for (int i = 0; i < model.Slices.Pieces.Length; i++)
            {
                if (model.Slices.Pieces[i].Readings[k] == 0)
                    continue;
                double miss = Math.Clamp(MisfitV(x, i, k), -0.02, 0.02), weight = 1.0 / model.Slices.SharedBy[i];
                sum += weight * miss * miss;
                weights += weight;
            }
            floorV[k] = weights == 0 ? model.FloorV : Math.Clamp(Math.Sqrt(sum / weights), 0.6 * model.FloorV, 4 * model.FloorV);
        }
    }
}
