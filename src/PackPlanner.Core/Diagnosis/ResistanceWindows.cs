using MathNet.Numerics.LinearAlgebra;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Short stretches of a log, each reduced to how its voltages answer its currents.</summary>
/// <remarks>
/// Within a few minutes the open-circuit voltage is a smooth function of charge and time: four terms (1, t, Q, Q squared) are
/// projected out, and what is left of the voltages can only be resistance. So neither the curve nor the capacity matters here.
/// </remarks>
internal sealed class ResistanceWindows
{
    /// <summary>Regressors kept: the current itself and all but the slowest low-pass.</summary>
    internal static readonly int Terms = SlowCurrents.TauS.Length;

    private const int Nuisance = 4;
    private const double LongestS = 300;

    private readonly List<Window> windows = [];
    private readonly double leastA;

    private ResistanceWindows(double leastA) => this.leastA = leastA;

    /// <summary>One window after projection.</summary>
    /// <param name="XX">Sum of products of the regressors, shape [Terms, Terms], ampere squared.</param>
    /// <param name="XV">Sum of products with each group's volts, shape [Terms, groups].</param>
    /// <param name="VV">Sum of squares of each group's volts, shape [groups].</param>
    /// <param name="Freedom">Rows less terms projected out.</param>
    /// <param name="DrawnAh">Mean charge drawn.</param>
    /// <param name="TimeS">Mean time.</param>
    /// <param name="TemperatureDegC">Mean temperature; NaN when unknown.</param>
    internal sealed record Window(double[,] XX, double[,] XV, double[] VV, int Freedom, double DrawnAh, double TimeS, double TemperatureDegC);

    /// <summary>Usual seconds between rows.</summary>
    internal double StepS { get; private init; }

    /// <summary>The windows, in order of time.</summary>
    internal IReadOnlyList<Window> All => windows;

    /// <summary>Reduces a log, or the stretch of it from one row up to another.</summary>
    internal static ResistanceWindows Of(DiagnosisColumns log, ChargeCount count, double ratedAh)
    {
        ResistanceWindows result = new(0.02 * ratedAh) { StepS = log.UsualStepS };
        Accumulator sums = new(log.Groups);
        SlowCurrents slow = new();
        double longestS = Math.Max(LongestS, 30 * log.UsualStepS);
        double gapS = Math.Max(60, 5 * log.UsualStepS);
        double[] volts = new double[log.Groups];
        for (int i = 0; i < log.Rows; i++)
        {
            double meanA = i == 0 || log.RowsAreAverages ? count.CurrentA[i] : (count.CurrentA[i] + count.CurrentA[i - 1]) / 2;
            bool gap = count.StepS[i] > gapS;
            if (i > 0)
                slow.Advance(count.StepS[i], gap ? 0 : meanA, log.RowsAreAverages && !gap);
            if (sums.Rows > 0 && (gap || log.TimeS[i] - sums.FromS > longestS))
                result.Close(sums);
            if (log.CopyVolts(i, volts))
                sums.Add(log.TimeS[i], count.DrawnAh[i], count.CurrentA[i], slow.NowA, log.Temperature(i), volts);
        }
        result.Close(sums);
        return result;
    }

    private void Close(Accumulator sums)
    {
        // Where the current hardly moves, its own noise is what moves, and resistance reads far too low.
        if (sums.Rows > Nuisance + Terms + 6 && sums.Project() is { } window && window.XX[0, 0] > leastA * leastA * window.Freedom)
            windows.Add(window);
        sums.Clear();
    }

    private sealed class Accumulator(int groups)
    {
        private const int Size = Nuisance + SlowTerms;
        private const int SlowTerms = 5;
        private readonly double[,] gram = new double[Size, Size];
        private readonly double[,] cross = new double[Size, groups];
        private readonly double[] squares = new double[groups];
        private readonly double[] first = new double[groups];
        private readonly double[] x = new double[Size];
        private double fromAh, sumAh, sumS, sumT;

        internal int Rows { get; private set; }

        internal double FromS { get; private set; }

        internal void Add(double timeS, double drawnAh, double currentA, double[] slowA, double temperature, double[] volts)
        {
            if (Rows == 0)
            {
                (FromS, fromAh) = (timeS, drawnAh);
                volts.CopyTo(first, 0);
            }
            x[0] = 1;
            x[1] = (timeS - FromS) / LongestS;
            x[2] = drawnAh - fromAh;
            x[3] = x[2] * x[2];
            x[4] = currentA;
            for (int j = 1; j < SlowTerms; j++)
                x[Nuisance + j] = slowA[j - 1];
            for (int a = 0; a < Size; a++)
            {
                for (int b = 0; b <= a; b++)
                    gram[a, b] += x[a] * x[b];
                for (int k = 0; k < groups; k++)
                    cross[a, k] += x[a] * (volts[k] - first[k]);
            }
            for (int k = 0; k < groups; k++)
                squares[k] += (volts[k] - first[k]) * (volts[k] - first[k]);
            Rows++;
            sumAh += drawnAh;
            sumS += timeS;
            sumT += temperature;
        }

        internal void Clear()
        {
            Array.Clear(gram);
            Array.Clear(cross);
            Array.Clear(squares);
            (Rows, sumAh, sumS, sumT) = (0, 0, 0, 0);
        }

        internal Window? Project()
        {
            Matrix<double> nuisance = Matrix<double>.Build.Dense(Nuisance, Nuisance, (a, b) => gram[Math.Max(a, b), Math.Min(a, b)]);
            for (int a = 0; a < Nuisance; a++)
                nuisance[a, a] += (1e-9 * nuisance[a, a]) + 1e-12;
            Matrix<double> rest = Matrix<double>.Build.Dense(Nuisance, SlowTerms + groups, (a, b) =>
                b < SlowTerms ? gram[Nuisance + b, a] : cross[a, b - SlowTerms]);
            Matrix<double> solved = PositiveDefinite.Factor(nuisance).Solve(rest);
            double[,] xx = new double[SlowTerms, SlowTerms], xv = new double[SlowTerms, groups];
            double[] vv = new double[groups];
            for (int a = 0; a < SlowTerms; a++)
            {
                for (int b = 0; b < SlowTerms; b++)
                    xx[a, b] = gram[Nuisance + Math.Max(a, b), Nuisance + Math.Min(a, b)] - Dot(rest, a, solved, b);
                for (int k = 0; k < groups; k++)
                    xv[a, k] = cross[Nuisance + a, k] - Dot(rest, a, solved, SlowTerms + k);
            }
            for (int k = 0; k < groups; k++)
                vv[k] = squares[k] - Dot(rest, SlowTerms + k, solved, SlowTerms + k);
            // Without steps of current there is nothing to learn, and rounding would be taken for an answer.
            return xx[0, 0] < 1e-6 * gram[Nuisance, Nuisance] + 1e-6 ? null
                : new Window(xx, xv, vv, Rows - Nuisance, sumAh / Rows, sumS / Rows, sumT / Rows);
        }

        private static double Dot(Matrix<double> left, int column, Matrix<double> right, int other)
        {
            double sum = 0;
            for (int a = 0; a < Nuisance; a++)
                sum += left[a, column] * right[a, other];
            return sum;
        }
    }
}
