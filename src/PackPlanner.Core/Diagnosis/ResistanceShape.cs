using MathNet.Numerics.LinearAlgebra;

namespace PackPlanner.Core.Diagnosis;

/// <summary>How the resistance of every group depends on charge and temperature, as a factor that is 1 at half charge.</summary>
/// <remarks>
/// Resistance rises steeply towards empty and falls as the pack warms. Both are read from the log itself; where it says
/// nothing, the belief stays: 1.7 times as much when empty, 1.8 % less for each kelvin (common practice, no source).
/// </remarks>
internal sealed class ResistanceShape
{
    private static readonly double[] Nodes = [0, .03, .06, .1, .15, .2, .3, .4, .5, .65, .8, .9, 1];
    private const double PerKelvin = 0.018, PerKelvinSd = 0.008;

    private const int Steps = 1000;

    private readonly double[] factors;
    private readonly double meanDegC;

    private ResistanceShape(double[] logFactor, double perKelvin, double meanDegC)
    {
        factors = new double[Steps + 1];
        for (int s = 0; s <= Steps; s++)
        {
            Place(s / (double)Steps, out int i, out double share);
            factors[s] = Math.Exp(((1 - share) * logFactor[i]) + (share * logFactor[i + 1]));
        }
        this.meanDegC = meanDegC;
        FallPerKelvin = perKelvin;
    }

    /// <summary>Share of resistance lost for each kelvin of warming.</summary>
    internal double FallPerKelvin { get; }

    /// <summary>The belief before any log.</summary>
    internal static ResistanceShape Prior(double meanDegC) => new([.. Nodes.Select(Expected)], PerKelvin, meanDegC);

    /// <summary>No dependence at all: used until charges are known.</summary>
    internal static ResistanceShape Flat() => new(new double[Nodes.Length], 0, double.NaN);

    /// <summary>One reading of the factor: at a charge and temperature, with its variance.</summary>
    internal readonly record struct Reading(double Charge, double TemperatureDegC, double Factor, double Variance);

    /// <summary>Corrects the belief by readings.</summary>
    internal static ResistanceShape Fit(IReadOnlyList<Reading> readings, double meanDegC)
    {
        int n = Nodes.Length;
        Matrix<double> priorWeight = PriorCovariance().Inverse();
        Vector<double> expected = Vector<double>.Build.Dense(n + 1, i => i < n ? Expected(Nodes[i]) : PerKelvin);
        Vector<double> x = expected.Clone();
        for (int round = 0; round < 5; round++)
        {
            Matrix<double> normal = priorWeight.Clone();
            Vector<double> right = priorWeight * (expected - x);
            foreach (Reading reading in readings)
            {
                Place(reading.Charge, out int i, out double share);
                double warm = double.IsNaN(reading.TemperatureDegC) || double.IsNaN(meanDegC) ? 0 : reading.TemperatureDegC - meanDegC;
                double factor = Math.Exp(Math.Clamp(((1 - share) * x[i]) + (share * x[i + 1]) - (x[n] * warm), -2, 3));
                double miss = reading.Factor - factor, weight = 1 / reading.Variance;
                weight *= Math.Min(1, 2.5 * Math.Sqrt(reading.Variance) / Math.Max(1e-12, Math.Abs(miss)));
                ReadOnlySpan<(int At, double D)> row = [(i, factor * (1 - share)), (i + 1, factor * share), (n, -factor * warm)];
                foreach ((int a, double da) in row)
                {
                    right[a] += weight * da * miss;
                    foreach ((int b, double db) in row)
                        normal[a, b] += weight * da * db;
                }
            }
            x += PositiveDefinite.Factor(normal).Solve(right);
        }
        double half = x[Array.IndexOf(Nodes, 0.5)];
        return new ResistanceShape([.. Enumerable.Range(0, n).Select(i => x[i] - half)], x[n], meanDegC);
    }

    /// <summary>The factor at a charge and temperature, and its slope against charge.</summary>
    internal double At(double charge, double temperatureDegC, out double slope)
    {
        double warm = Warm(temperatureDegC), factor = AtCharge(charge, out slope);
        slope *= warm;
        return factor * warm;
    }

    /// <summary>The part of the factor that depends on charge, and its slope.</summary>
    internal double AtCharge(double charge, out double slope)
    {
        double z = Math.Clamp(charge, 0, 1);
        int i = (int)Math.Min(z * Steps, Steps - 1);
        double rise = factors[i + 1] - factors[i];
        slope = charge is > 0 and < 1 ? rise * Steps : 0;
        return factors[i] + (((z * Steps) - i) * rise);
    }

    /// <summary>The part of the factor that depends on temperature; 1 where that is not known.</summary>
    internal double Warm(double temperatureDegC) =>
        double.IsNaN(temperatureDegC) || double.IsNaN(meanDegC) ? 1 : Math.Exp(-FallPerKelvin * (temperatureDegC - meanDegC));

    private static double Expected(double charge) =>
        Math.Log((1 + (0.7 * Math.Exp(-charge / 0.1))) / (1 + (0.7 * Math.Exp(-5))));

    private static Matrix<double> PriorCovariance()
    {
        int n = Nodes.Length, half = Array.IndexOf(Nodes, 0.5);
        double Sd(double z) => 0.15 + (0.35 * Math.Exp(-z / 0.1));
        Matrix<double> covariance = Matrix<double>.Build.Dense(n + 1, n + 1, (i, j) =>
        {
            if (i == n || j == n)
                return i == j ? PerKelvinSd * PerKelvinSd : 0;
            double d = (Nodes[i] - Nodes[j]) / 0.2;
            return (Sd(Nodes[i]) * Sd(Nodes[j]) * Math.Exp(-d * d / 2)) + (i == j ? 1e-4 : 0);
        });
        Vector<double> column = covariance.Column(half);
        covariance -= column.OuterProduct(column) / (column[half] + 1e-5);
        for (int i = 0; i < n; i++)
            covariance[i, i] += 1e-5;
        return covariance;
    }

    private static void Place(double charge, out int i, out double share)
    {
        double z = Math.Clamp(charge, 0, 1);
        i = Array.BinarySearch(Nodes, z);
        i = Math.Clamp(i < 0 ? ~i - 1 : i, 0, Nodes.Length - 2);
        share = (z - Nodes[i]) / (Nodes[i + 1] - Nodes[i]);
    }
}
