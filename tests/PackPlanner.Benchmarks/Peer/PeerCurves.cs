namespace PackPlanner.Benchmarks.Peer;

/// <summary>Resting curves that share no table with the program: typed by hand to the shape of ordinary data sheets, then bent at random.</summary>
internal static class PeerCurves
{
    private static readonly double[] Charge = [0, .01, .02, .035, .05, .075, .1, .15, .2, .25, .3, .35, .4, .45, .5, .55, .6, .65, .7, .75, .8, .85, .9, .95, .98, .99, 1];

    // Ordinary figures of the trade, from memory; no source. Between 3.0 and 4.2 V.
    private static readonly double[] Nmc622 =
        [3.0, 3.12, 3.2, 3.29, 3.35, 3.415, 3.455, 3.51, 3.548, 3.578, 3.602, 3.623, 3.643, 3.666, 3.694, 3.733, 3.785, 3.835, 3.882, 3.928, 3.975, 4.02, 4.062, 4.115, 4.158, 4.176, 4.2];

    private static readonly double[] Nmc532 =
        [3.0, 3.16, 3.26, 3.35, 3.41, 3.46, 3.49, 3.535, 3.567, 3.59, 3.61, 3.628, 3.646, 3.667, 3.697, 3.742, 3.8, 3.862, 3.915, 3.957, 3.996, 4.035, 4.078, 4.132, 4.17, 4.184, 4.2];

    private static readonly double[] Nca =
        [3.0, 3.1, 3.17, 3.25, 3.3, 3.35, 3.385, 3.44, 3.49, 3.53, 3.562, 3.59, 3.617, 3.648, 3.69, 3.742, 3.79, 3.836, 3.88, 3.92, 3.956, 4.0, 4.06, 4.112, 4.15, 4.17, 4.2];

    private static readonly double[] Lfp =
        [2.5, 2.74, 2.88, 3.0, 3.07, 3.145, 3.19, 3.218, 3.242, 3.262, 3.278, 3.287, 3.2915, 3.2935, 3.295, 3.2965, 3.3, 3.3175, 3.3305, 3.3325, 3.3335, 3.3345, 3.336, 3.339, 3.352, 3.4, 3.65];

    /// <summary>A rising curve, linear beyond its ends, with 1 at full and 0 at empty.</summary>
    internal static Func<double, double> Draw(Random random, string chemistry, double fullV, double emptyV)
    {
        double mix = random.NextDouble();
        double[] volts = chemistry switch
        {
            "LFP" => [.. Lfp],
            "NCA" => [.. Nca.Zip(Nmc622, (a, b) => a + (0.3 * mix * (b - a)))],
            _ => [.. Nmc622.Zip(Nmc532, (a, b) => a + (mix * (b - a)))],
        };
        bool flat = chemistry == "LFP";
        // The electrodes of another maker stand slipped: charge is stretched, more in the middle than at the ends.
        double slip = (flat ? 0.02 : 0.025) * Normal(random), second = 0.01 * Normal(random), lift = flat ? 0.004 * Normal(random) : 0.008 * Normal(random);
        double[] at = [.. Charge.Select(z => z + (slip * Math.Sin(Math.PI * z)) + (second * Math.Sin(2 * Math.PI * z)))];
        for (int i = 0; i < volts.Length; i++)
            volts[i] += lift * Math.Pow(Math.Sin(Math.PI * Charge[i]), 0.3);
        // A cell run lower than the table gives a little more from the same curve; between them its voltage does not change.
        double more = Math.Max(0, volts[0] - emptyV) / 15;
        if (more > 0)
            (volts, at) = ([emptyV, .. volts], [0, .. at.Select(z => (z + more) / (1 + more))]);
        volts[^1] = fullV;
        double[] slope = Slopes(at, volts);
        return z => At(at, volts, slope, z);
    }

    internal static double Normal(Random random)
    {
        // Twelve evens less six: another way to a bell than elsewhere in this house.
        double sum = -6;
        for (int i = 0; i < 12; i++)
            sum += random.NextDouble();
        return sum;
    }

    // Monotone cubic (harmonic means of the neighbouring slopes).
    private static double[] Slopes(double[] x, double[] y)
    {
        double[] slope = new double[x.Length];
        for (int i = 0; i < x.Length; i++)
        {
            double before = i == 0 ? 0 : (y[i] - y[i - 1]) / (x[i] - x[i - 1]), after = i == x.Length - 1 ? 0 : (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
            slope[i] = i == 0 ? after : i == x.Length - 1 ? before : before * after <= 0 ? 0 : 2 * before * after / (before + after);
        }
        return slope;
    }

    private static double At(double[] x, double[] y, double[] slope, double z)
    {
        if (z <= x[0])
            return y[0] + ((z - x[0]) * slope[0]);
        if (z >= x[^1])
            return y[^1] + ((z - x[^1]) * slope[^1]);
        int i = Array.BinarySearch(x, z);
        i = i < 0 ? ~i - 1 : Math.Min(i, x.Length - 2);
        double h = x[i + 1] - x[i], t = (z - x[i]) / h;
        return (y[i] * (1 + (2 * t)) * (1 - t) * (1 - t)) + (h * slope[i] * t * (1 - t) * (1 - t))
            + (y[i + 1] * t * t * (3 - (2 * t))) + (h * slope[i + 1] * t * t * (t - 1));
    }
}
