using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis.Simulator;

/// <summary>Open-circuit curves of invented cells: drawn for each pack, bent away from every table that the program holds.</summary>
internal static class SimulatedCurves
{
    /// <summary>A curve for one pack, 1 at the full and 0 at the empty resting voltage.</summary>
    internal static Func<double, double> Draw(Random random, CurveFamily family, double fullV, double emptyV, double bendV)
    {
        double a = random.NextDouble(), b = random.NextDouble();
        Func<double, double> raw = family switch
        {
            CurveFamily.Lfp => Lfp(random),
            CurveFamily.Nca => s => Mix(a, Nickel(b)(s), ReferenceCurves.Nca(s)) + (0.04 * Bump(s, 0.55, 0.18) * b),
            _ => s => Mix(0.55 + (0.45 * a), Nickel(b)(s), ReferenceCurves.Nmc111(s) + 0.008),
        };
        Func<double, double> bend = Smooth(random, bendV, family == CurveFamily.Lfp ? 0.15 : 0.12);
        return Between(s => raw(s), bend, fullV, emptyV);
    }

    /// <summary>A small smooth function of charge with the given root mean square, vanishing at both ends.</summary>
    internal static Func<double, double> Smooth(Random random, double rmsV, double length)
    {
        int terms = (int)Math.Round(1 / length);
        double[] height = [.. Enumerable.Range(0, terms).Select(_ => Normal(random))];
        double scale = rmsV * Math.Sqrt(2) / Math.Sqrt(Math.Max(1e-9, height.Sum(h => h * h)));
        return z => z is <= 0 or >= 1 ? 0 : scale * Enumerable.Range(0, terms).Sum(j => height[j] * Math.Sin(Math.PI * (j + 1) * z));
    }

    internal static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static double Mix(double share, double a, double b) => (share * a) + ((1 - share) * b);

    private static double Bump(double s, double at, double width) => Math.Exp(-(s - at) * (s - at) / (2 * width * width));

    // Electrodes slipped against each other by a few percent: what ageing and another maker's balance do.
    private static Func<double, double> Nickel(double slip) => s => ReferenceCurves.Nmc811(s) + ((slip - 0.5) * 0.06 * Math.Sin(2 * Math.PI * s));

    private static Func<double, double> Lfp(Random random)
    {
        double top = 0.76 + (0.08 * random.NextDouble()), bottom = 0.004 + (0.012 * random.NextDouble());
        double full = 0.02 + (0.03 * random.NextDouble()), tilt = 0.01 * (random.NextDouble() - 0.5);
        double lift = 0.02 * (random.NextDouble() - 0.3);
        return s =>
        {
            double x = top - (s * (top - bottom)), y = full + (s * 0.93);
            double graphite = 0.124 + (1.5 * Math.Exp(-150 * x)) + (0.0351 * Math.Tanh((x - 0.286) / 0.083)) - (0.0045 * Math.Tanh((x - 0.849) / 0.119))
                - (0.035 * Math.Tanh((x - 0.9233) / 0.05)) - (0.0147 * Math.Tanh((x - 0.5) / 0.034)) - (0.102 * Math.Tanh((x - 0.194) / 0.142))
                - (0.022 * Math.Tanh((x - 0.9) / 0.0164)) - (0.011 * Math.Tanh((x - 0.124) / 0.0226)) + (0.0155 * Math.Tanh((x - 0.105) / 0.029));
            return 3.4077 - (0.020269 * y) + (0.5 * Math.Exp(-150 * y)) - (0.9 * Math.Exp(-30 * (1 - y))) - graphite + lift + (tilt * (s - 0.5));
        };
    }

    private static Func<double, double> Between(Func<double, double> raw, Func<double, double> bend, double fullV, double emptyV)
    {
        double Cross(double v, double low, double high)
        {
            for (int i = 0; i < 60; i++)
            {
                double m = (low + high) / 2;
                (low, high) = raw(m) > v ? (m, high) : (low, m);
            }
            return low;
        }
        double full = Cross(fullV, -0.3, 0.5), empty = Cross(emptyV, 0.5, 1.3);
        const int n = 1000;
        double[] table = new double[n + 1];
        for (int i = 0; i <= n; i++)
            table[i] = raw(empty + ((full - empty) * i / n)) + bend(i / (double)n);
        return z =>
        {
            int i = (int)Math.Clamp(Math.Floor(z * n), 0, n - 1);
            return table[i] + (((z * n) - i) * (table[i + 1] - table[i]));
        };
    }
}
