using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Outside;

/// <summary>The damped steps and the elimination of the diagnosis on two published problems, from both starts that are published with each.</summary>
public class LeastSquaresTests
{
    private static readonly double[] MisraX = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];
    private static readonly double[] MisraY = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78];
    private static readonly double[] RatY = [16.08, 33.83, 65.80, 97.20, 191.55, 326.20, 386.87, 520.53, 590.03, 651.92, 724.93, 699.56, 689.96, 637.56, 717.41];

    // Source: [NistStrd] Misra1a, y = b1 (1 - exp(-b2 x)); certified to eleven digits, compared to seven.
    [Theory]
    [InlineData(500, 1e-4)]
    [InlineData(250, 5e-4)]
    public void Misra1a_is_solved_to_the_certified_digits(double first, double second)
    {
        (double[] b, double squares) = Fit(MisraX, MisraY, [first, second], 1, (b, x) => b[0] * (1 - Math.Exp(-b[1] * x)),
            (b, x) => [1 - Math.Exp(-b[1] * x), b[0] * x * Math.Exp(-b[1] * x)]);

        AssertDigits([238.94212918, 5.5015643181e-4], b);
        Assert.Equal(0.12455138894, squares, 1e-8);
    }

    // Source: [NistStrd] Rat43, y = b1 / (1 + exp(b2 - b3 x))^(1 / b4); data from memory, verified by solving them to fifty digits.
    [Theory]
    [InlineData(100, 10, 1, 1)]
    [InlineData(700, 5, 0.75, 1.3)]
    public void Rat43_is_solved_to_the_certified_digits(double first, double second, double third, double fourth)
    {
        double[] x = [.. Enumerable.Range(1, 15).Select(i => (double)i)];

        (double[] b, double squares) = Fit(x, RatY, [first, second, third, fourth], 2, Rat, (b, at) =>
        {
            double e = Math.Exp(b[1] - (b[2] * at)), y = Rat(b, at), share = e / (1 + e) / b[3];
            return [y / b[0], -y * share, y * share * at, y * Math.Log(1 + e) / (b[3] * b[3])];
        });

        AssertDigits([699.6415127, 5.2771253025, 0.75962938329, 1.2792483859], b);
        Assert.Equal(8786.4049080, squares, 1e-4);

        static double Rat(double[] b, double at) => b[0] / Math.Pow(1 + Math.Exp(b[1] - (b[2] * at)), 1 / b[3]);
    }

    private static void AssertDigits(double[] certified, double[] found)
    {
        for (int i = 0; i < certified.Length; i++)
            Assert.Equal(1, found[i] / certified[i], 1e-7);
    }

    /// <summary>The first parameters are eliminated last, as what is common to all groups is.</summary>
    private static (double[] B, double Squares) Fit(
        double[] x, double[] y, double[] start, int common, Func<double[], double, double> value, Func<double[], double, double[]> slopes)
    {
        NormalEquations normal = new(common, start.Length - common, 1);
        return DampedSteps.Run(start, 500, Assemble, normal.Solve, Squares, (_, gain) => gain is >= 0 and < 1e-13);

        double Squares(double[] b) => x.Select((at, i) => Math.Pow(y[i] - value(b, at), 2)).Sum();
        double Assemble(double[] b)
        {
            normal.Clear();
            for (int i = 0; i < x.Length; i++)
            {
                double miss = y[i] - value(b, x[i]);
                double[] row = slopes(b, x[i]);
                for (int p = 0; p < row.Length; p++)
                {
                    normal.Right[p] += row[p] * miss;
                    for (int q = 0; q <= p; q++)
                        normal.Add(p, q, row[p] * row[q]);
                }
            }
            return Squares(b);
        }
    }
}
