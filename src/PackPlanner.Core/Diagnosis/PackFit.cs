using System.Numerics;
using Matrix = MathNet.Numerics.LinearAlgebra.Matrix<double>;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Fits curve, slow parts and every group at once to the averaged log, with robust weights and stated beliefs.</summary>
/// <remarks>
/// Damped Gauss-Newton on the reweighted least-squares problem; the normal equations are solved by MathNet's Cholesky
/// factorisation. The groups share one curve, so differences between groups come out sharp even where the curve is wrong.
/// </remarks>
internal sealed class PackFit
{
    private const double Huber = 2.5;
    private readonly PackModel model;
    private readonly PackBeliefs beliefs;
    private readonly double[] floorV;
    private readonly double[] tapSign;
    private readonly int[] tapOf;
    private double[] correctionV = [];

    internal PackFit(PackModel model, double[] start)
    {
        this.model = model;
        beliefs = new PackBeliefs(model);
        X = start;
        correctionV = model.Curve.Correction(start.AsSpan(0, model.Curve.Shapes));
        floorV = new double[model.Groups];
        Array.Fill(floorV, model.FloorV);
        (tapSign, tapOf) = (new double[model.Groups], new int[model.Groups]);
        for (int t = 0; t < model.Taps.Count; t++)
        {
            (tapSign[model.Taps[t].A], tapOf[model.Taps[t].A]) = (1, t);
            if (model.Taps[t].B >= 0)
                (tapSign[model.Taps[t].B], tapOf[model.Taps[t].B]) = (-1, t);
        }
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
    internal void Run(int steps, bool adaptFloors)
    {
        double damping = 1e-3;
        NormalEquations normal = new(model.Shared, model.PerGroup, model.Groups);
        Cost = Assemble(X, normal);
        for (int step = 0; step < steps; step++)
        {
            double[] move = normal.Solve(damping);
            double[] next = [.. X.Select((x, i) => x + move[i])];
            double cost = Evaluate(next);
            if (!(cost <= Cost + 1e-9))
            {
                damping = Math.Max(1e-4, damping * 8);
                if (damping >= 1e6)
                    break;
                continue;
            }
            double gain = Cost - cost;
            X = next;
            damping = Math.Max(1e-9, damping / 6);
            if (adaptFloors && step is 3 or 7)
                AdaptFloors();
            Cost = Assemble(X, normal);
            if (gain < 1e-3 && step > 8)
                break;
        }
        correctionV = model.Curve.Correction(X.AsSpan(0, model.Curve.Shapes));
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
        double[] row = new double[shared + n];
        double cost = OwnCost(x, group, extraV, normal, row);
        double damping = 1e-3;
        for (int step = 0; step < steps; step++)
        {
            double[] move = normal.SolveOwn(group, damping);
            double[] next = (double[])x.Clone();
            for (int i = 0; i < n; i++)
                next[at + i] += move[i];
            double there = OwnCost(next, group, extraV, null, row);
            if (!(there <= cost + 1e-9))
            {
                damping = Math.Max(1e-4, damping * 8);
                if (damping > 1e5)
                    break;
                continue;
            }
            bool small = cost - there < 1e-2;
            x = next;
            damping = Math.Max(1e-9, damping / 6);
            if (small)
            {
                cost = there;
                break;
            }
            normal.Clear();
            cost = OwnCost(x, group, extraV, normal, row);
        }
        return (x[at..(at + n)], cost);
    }

    /// <summary>Puts a group's own parameters in place.</summary>
    internal void Place(int group, double[] own) => own.CopyTo(X, model.GroupAt(group));

    private double OwnCost(double[] x, int group, double extraV, NormalEquations? normal, double[] row)
    {
        double cost = beliefs.OfGroup(x, group, normal);
        int at = model.GroupAt(group), shared = model.Shared, n = model.PerGroup;
        double[]? block = normal is null ? null : new double[n * n];
        for (int i = 0; i < model.Slices.Pieces.Length; i++)
        {
            ChargeSlices.Piece p = model.Slices.Pieces[i];
            if (p.Readings[group] == 0)
                continue;
            double v = Volts(x, p, group, out Local local);
            double sd = Math.Sqrt(Variance(i, group, local.DriveA)), miss = p.Volts[group] - extraV - v, t = Math.Abs(miss) / sd;
            cost += Loss(t);
            if (normal is null || block is null)
                continue;
            double weight = (t <= Huber ? 1 : Huber / t) / (sd * sd);
            FillRow(x, p, group, local, row);
            for (int a = 0; a < n; a++)
            {
                double wa = weight * row[shared + a];
                normal.Right[at + a] += wa * miss;
                for (int b = 0; b <= a; b++)
                    block[(a * n) + b] += wa * row[shared + b];
            }
        }
        for (int a = 0; a < n && normal is not null && block is not null; a++)
        {
            for (int b = 0; b <= a; b++)
                normal.Add(at + a, at + b, block[(a * n) + b]);
        }
        return cost;
    }

    /// <summary>State of charge of a group at a piece.</summary>
    internal double ChargeAt(int piece, int group) => ChargeAt(X, model.Slices.Pieces[piece], group);

    /// <summary>Volts of a group at a state of charge under a steady current, all slow parts grown out, tap error left out.</summary>
    /// <param name="group">Which group.</param>
    /// <param name="charge">State of charge.</param>
    /// <param name="currentA">Amperes, discharge positive; 0 for rest.</param>
    /// <param name="temperatureDegC">Degrees Celsius; NaN for the log's mean.</param>
    /// <param name="joint">Multiplies what the group's joint adds; 0 for a mended one.</param>
    internal double SteadyVolts(int group, double charge, double currentA, double temperatureDegC, double joint = 1)
    {
        int at = model.GroupAt(group);
        ChargeSlices.Piece still = new()
        {
            CurrentA = 0,
            TemperatureDegC = temperatureDegC,
            SlowA = new double[SlowCurrents.TauS.Length],
            Hysteresis = new double[2 * ChargeSlices.Memory.Length],
            TopH = new double[model.Tops],
        };
        double[] x = (double[])X.Clone();
        x[at + PackParameters.Charge] = charge;
        double rest = Volts(x, still, group, out Local local);
        if (tapSign[group] != 0)
            rest -= 0.01 * tapSign[group] * X[model.TapAt + tapOf[group]];
        double slow = 1;
        for (int j = 0; j < SlowCurrents.TauS.Length; j++)
            slow += X[model.SlowAt + j];
        double ohm = model.UnitOhm * ((X[at + PackParameters.Cells] * local.Factor * Math.Max(1, slow)) + (joint * X[at + PackParameters.Joint]));
        return rest - (currentA * ohm);
    }

    /// <summary>Misfit of a group at a piece, volts: measured less modelled.</summary>
    internal double MisfitV(int piece, int group)
    {
        ChargeSlices.Piece p = model.Slices.Pieces[piece];
        return p.Volts[group] - Volts(X, p, group, out _);
    }

    private double ChargeAt(double[] x, ChargeSlices.Piece p, int group)
    {
        int at = model.GroupAt(group);
        return x[at + PackParameters.Charge] - (Lost(x, p, at) / CapacityAh(x, at));
    }

    private double CapacityAh(double[] x, int at) => model.RatedAh * Math.Exp(x[at + PackParameters.LogCapacity]);

    private double Lost(double[] x, ChargeSlices.Piece p, int at)
    {
        double lost = p.DrawnAh - (0.001 * model.RatedAh * x[model.OffsetAt] * p.LoadH);
        if (!model.Leaks)
            return lost;
        double unitA = PackParameters.LeakUnitA(model.RatedAh);
        lost += x[at + PackParameters.Leak] * unitA * p.TimeS / 3600;
        for (int e = 0; e < model.Tops; e++)
            lost += x[at + PackParameters.Bleed + e] * unitA * p.TopH[e];
        return lost;
    }

    /// <summary>The modelled volts, and what their derivatives need.</summary>
    private double Volts(double[] x, ChargeSlices.Piece p, int group, out Local local)
    {
        int at = model.GroupAt(group);
        double z = ChargeAt(x, p, group), stretched = z, stretch = 1, bend = 0;
        if (z is > 0 and < 1)
        {
            // sin(jz) and cos(jz) by going round, which is far cheaper than asking for each.
            (double sin, double cos) = Math.SinCos(Math.PI * z);
            (double s, double c) = (sin, cos);
            for (int j = 1; j <= PackParameters.Warps; j++)
            {
                double size = 0.01 * x[at + PackParameters.Warp + j - 1] / j;
                stretched += size * s;
                stretch += size * Math.PI * j * c;
                if (j <= PackParameters.Bends)
                    bend += 0.001 * x[at + PackParameters.Bend + j - 1] * s;
                (s, c) = ((s * cos) + (c * sin), (c * cos) - (s * sin));
            }
        }
        double v = model.Curve.Volts(stretched, correctionV, out double curveSlopeV) + bend;
        double factor = model.Shape.At(z, p.TemperatureDegC, out double factorSlope);
        double drive = p.CurrentA;
        for (int j = 0; j < p.SlowA.Length; j++)
            drive += x[model.SlowAt + j] * p.SlowA[j];
        double cells = x[at + PackParameters.Cells] * model.UnitOhm;
        v -= (factor * cells * drive) + (x[at + PackParameters.Joint] * model.UnitOhm * p.CurrentA);
        for (int m = 0; m < p.Hysteresis.Length; m++)
            v -= x[model.HysteresisAt + m] * model.HysteresisSdV * p.Hysteresis[m];
        if (tapSign[group] != 0)
            v += 0.01 * tapSign[group] * x[model.TapAt + tapOf[group]];
        double slopeV = (curveSlopeV * Math.Max(0.2, stretch)) - (factorSlope * cells * drive);
        local = new Local(z, stretched, curveSlopeV, slopeV, factor, drive);
        return v;
    }

    private readonly record struct Local(double Charge, double Stretched, double CurveSlopeV, double SlopeV, double Factor, double DriveA);

    private double Variance(int piece, int group, double drive)
    {
        ChargeSlices.Piece p = model.Slices.Pieces[piece];
        double loadV = model.LoadError * model.UnitOhm * drive;
        double noiseV = Math.Max(model.Resistance.NoiseV[group], model.GrainV / 3);
        double shared = (floorV[group] * floorV[group]) + (loadV * loadV) + (model.GrainV * model.GrainV / 24);
        return (shared * model.Slices.SharedBy[piece]) + (noiseV * noiseV / p.Readings[group]);
    }

    private static double Loss(double t) => t <= Huber ? t * t : Huber * ((2 * t) - Huber);

    private double Evaluate(double[] x)
    {
        correctionV = model.Curve.Correction(x.AsSpan(0, model.Curve.Shapes));
        double cost = beliefs.Of(x, null);
        for (int i = 0; i < model.Slices.Pieces.Length; i++)
        {
            ChargeSlices.Piece p = model.Slices.Pieces[i];
            for (int k = 0; k < model.Groups; k++)
            {
                if (p.Readings[k] == 0)
                    continue;
                double v = Volts(x, p, k, out Local local);
                cost += Loss(Math.Abs(p.Volts[k] - v) / Math.Sqrt(Variance(i, k, local.DriveA)));
            }
        }
        return cost;
    }

    private double Assemble(double[] x, NormalEquations normal)
    {
        normal.Clear();
        correctionV = model.Curve.Correction(x.AsSpan(0, model.Curve.Shapes));
        double cost = beliefs.Of(x, normal);
        int size = model.Shared + model.PerGroup;
        double[] row = new double[size], block = new double[size * size], right = new double[size];
        for (int k = 0; k < model.Groups; k++)
        {
            Array.Clear(block);
            Array.Clear(right);
            for (int i = 0; i < model.Slices.Pieces.Length; i++)
            {
                if (model.Slices.Pieces[i].Readings[k] > 0)
                    cost += AddPiece(x, i, k, row, block, right);
            }
            normal.AddBlock(k, block, right);
        }
        return cost;
    }

    private double AddPiece(double[] x, int i, int k, double[] row, double[] block, double[] right)
    {
        ChargeSlices.Piece p = model.Slices.Pieces[i];
        double v = Volts(x, p, k, out Local local);
        double sd = Math.Sqrt(Variance(i, k, local.DriveA)), miss = p.Volts[k] - v, t = Math.Abs(miss) / sd;
        double weight = (t <= Huber ? 1 : Huber / t) / (sd * sd);
        FillRow(x, p, k, local, row);
        for (int a = 0; a < row.Length; a++)
        {
            double wa = weight * row[a];
            if (wa == 0)
                continue;
            right[a] += wa * miss;
            AddScaled(block.AsSpan(a * row.Length, a + 1), row, wa);
        }
        return Loss(t);
    }

    /// <summary>Adds a multiple of a row, several numbers at a time; each sum is the same as one at a time.</summary>
    private static void AddScaled(Span<double> into, ReadOnlySpan<double> row, double factor)
    {
        int wide = Vector<double>.Count, i = 0;
        Vector<double> factors = new(factor);
        for (; i <= into.Length - wide; i += wide)
            (new Vector<double>(into[i..]) + (factors * new Vector<double>(row[i..]))).CopyTo(into[i..]);
        for (; i < into.Length; i++)
            into[i] += factor * row[i];
    }

    /// <summary>Derivatives of the modelled volts by the common parameters and the group's own.</summary>
    private void FillRow(double[] x, ChargeSlices.Piece p, int k, Local local, double[] row)
    {
        int at = model.GroupAt(k), own = model.Shared;
        double cells = x[at + PackParameters.Cells] * model.UnitOhm * local.Factor;
        model.Curve.ShapesAt(local.Stretched, row.AsSpan(0, model.Curve.Shapes));
        for (int j = 0; j < p.SlowA.Length; j++)
            row[model.SlowAt + j] = -cells * p.SlowA[j];
        for (int m = 0; m < p.Hysteresis.Length; m++)
            row[model.HysteresisAt + m] = -model.HysteresisSdV * p.Hysteresis[m];
        row[model.OffsetAt] = local.SlopeV * 0.001 * model.RatedAh * p.LoadH / CapacityAh(x, at);
        row.AsSpan(model.TapAt, model.Taps.Count).Clear();
        if (tapSign[k] != 0)
            row[model.TapAt + tapOf[k]] = 0.01 * tapSign[k];
        double capacityAh = CapacityAh(x, at), unitA = PackParameters.LeakUnitA(model.RatedAh);
        row[own + PackParameters.LogCapacity] = local.SlopeV * Lost(x, p, at) / capacityAh;
        row[own + PackParameters.Charge] = local.SlopeV;
        row[own + PackParameters.Cells] = -model.UnitOhm * local.Factor * local.DriveA;
        row[own + PackParameters.Joint] = -model.UnitOhm * p.CurrentA;
        (double sin, double cos) = local.Charge is > 0 and < 1 ? Math.SinCos(Math.PI * local.Charge) : (0, 0);
        (double s, double c) = (sin, cos);
        for (int j = 1; j <= PackParameters.Warps; j++)
        {
            row[own + PackParameters.Warp + j - 1] = 0.01 * local.CurveSlopeV * s / j;
            if (j <= PackParameters.Bends)
                row[own + PackParameters.Bend + j - 1] = 0.001 * s;
            (s, c) = ((s * cos) + (c * sin), (c * cos) - (s * sin));
        }
        if (!model.Leaks)
            return;
        row[own + PackParameters.Leak] = -local.SlopeV * unitA * p.TimeS / 3600 / capacityAh;
        for (int e = 0; e < model.Tops; e++)
            row[own + PackParameters.Bleed + e] = -local.SlopeV * unitA * p.TopH[e] / capacityAh;
    }

    /// <summary>Learns how far each group's own curve lies from the shared one, so that a strange group does not shout.</summary>
    private void AdaptFloors()
    {
        for (int k = 0; k < model.Groups; k++)
        {
            double sum = 0, weights = 0;
            for (int i = 0; i < model.Slices.Pieces.Length; i++)
            {
                if (model.Slices.Pieces[i].Readings[k] == 0)
                    continue;
                double miss = Math.Clamp(MisfitV(i, k), -0.02, 0.02), weight = 1.0 / model.Slices.SharedBy[i];
                sum += weight * miss * miss;
                weights += weight;
            }
            floorV[k] = weights == 0 ? model.FloorV : Math.Clamp(Math.Sqrt(sum / weights), 0.6 * model.FloorV, 4 * model.FloorV);
        }
    }
}
