using System.Diagnostics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Tests.Core.Diagnosis.Simulator;
using static System.FormattableString;

namespace PackPlanner.Benchmarks;

/// <summary>The fit's own damped steps against MathNet's Levenberg-Marquardt on the same problem from the same start (docs/decisions/own-damping.md).</summary>
internal static class MinimiserTargets
{
    /// <summary>Prints cost reached and processor time of both, for packs of growing strings.</summary>
    internal static void Run(int fromSeed, int packs)
    {
        foreach (int series in (int[])[4, 8, 16, 32, 64])
        {
            double ownS = 0, theirS = 0, worst = double.NegativeInfinity, best = double.PositiveInfinity;
            int size = 0;
            for (int seed = fromSeed; seed < fromSeed + packs; seed++)
            {
                SimulatedLog log = SimulatedScenario.Make(seed);
                // The same columns over and over make a string of any length.
                DiagnosisColumns wide = new(
                    log.Columns.TimeS, log.Columns.CurrentA, [.. Enumerable.Range(0, series).Select(k => log.Columns.GroupV[k % log.Columns.Groups])],
                    log.Columns.TemperatureDegC, log.Columns.RowsAreAverages);
                PackGiven given = DiagnosisScore.Given(log) with { Series = series };
                PackEstimator.Estimate estimate = PackEstimator.Of(wide, ChargeCount.Of(wide, given), given, CancellationToken.None);
                double[] start = Ordinary(estimate);
                size = start.Length;
                PackFit own = new(estimate.Model, (double[])start.Clone());
                double fromS = Seconds();
                own.Run(60, adaptFloors: false);
                ownS += Seconds() - fromS;
                PackFit held = new(estimate.Model, (double[])start.Clone());
                fromS = Seconds();
                NonlinearMinimizationResult theirs = new LevenbergMarquardtMinimizer(maximumIterations: 60)
                    .FindMinimum(new Whole(held, size), Vector<double>.Build.Dense(start));
                theirS += Seconds() - fromS;
                double apart = theirs.ModelInfoAtMinimum.Value - own.Cost;
                (worst, best) = (Math.Max(worst, apart), Math.Min(best, apart));
            }
            Console.WriteLine(Invariant($"{series} groups, {size} parameters: own {ownS / packs:f2} s, MathNet's {theirS / packs:f2} s of processor time for a fit; MathNet's cost is {best:f2} to {worst:f2} above"));
        }
    }

    /// <summary>The fitted common parameters with every group like the pack.</summary>
    private static double[] Ordinary(PackEstimator.Estimate estimate)
    {
        PackModel model = estimate.Model;
        double[] x = (double[])estimate.Fit.X.Clone();
        for (int k = 0; k < model.Groups; k++)
        {
            int at = model.GroupAt(k);
            Array.Clear(x, at, model.PerGroup);
            (x[at], x[at + 1], x[at + 2]) = (x[model.MeanAt], x[model.MeanAt + 1], 1);
        }
        return x;
    }

    private static double Seconds() => Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds;

    /// <summary>The whole fit as MathNet wants it: cost, gradient and curvature, all parameters in one matrix.</summary>
    private sealed class Whole(PackFit fit, int size) : IObjectiveModel
    {
        public Vector<double> ObservedY => Vector<double>.Build.Dense(1);

        public Matrix<double> Weights => null!;

        public Vector<double> ModelValues => Vector<double>.Build.Dense(1);

        public Vector<double> Point { get; private set; } = Vector<double>.Build.Dense(size);

        public double Value { get; private set; }

        public Vector<double> Gradient { get; private set; } = Vector<double>.Build.Dense(size);

        public Matrix<double> Hessian { get; private set; } = Matrix<double>.Build.Dense(size, size);

        public int FunctionEvaluations { get; set; }

        public int JacobianEvaluations { get; set; }

        public int DegreeOfFreedom => 1;

        public bool IsGradientSupported => true;

        public bool IsHessianSupported => true;

        public IObjectiveModel CreateNew() => new Whole(fit, size);

        public IObjectiveModel Fork() => new Whole(fit, size) { Point = Point, Value = Value, Gradient = Gradient, Hessian = Hessian };

        public IObjectiveFunction ToObjectiveFunction() => throw new NotSupportedException();

        public void SetParameters(Vector<double> initialGuess, List<bool>? isFixed = null) => Point = initialGuess;

        public void EvaluateAt(Vector<double> parameters)
        {
            FunctionEvaluations++;
            JacobianEvaluations++;
            Point = parameters.Clone();
            (Value, double[] pull, Matrix<double> curvature) = fit.Quadratic(Point.ToArray());
            (Gradient, Hessian) = (-Vector<double>.Build.Dense(pull), curvature);
        }
    }
}
