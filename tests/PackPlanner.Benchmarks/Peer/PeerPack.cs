namespace PackPlanner.Benchmarks.Peer;

/// <summary>One group of an invented pack.</summary>
internal sealed class PeerGroup
{
    internal required Func<double, double> Curve;
    internal double CapacityAh, Charge, StartCharge, Ohm, JointOhm, LeakA, TapV, CoolerK, Lowest = 9, Highest = -9;
    internal double[] SlowV = new double[PeerPack.TauS.Length];
    internal double Hysteresis;

    /// <summary>Sets of names of which one must be said, and names that may be said.</summary>
    internal List<string[]> Required { get; } = [];

    internal List<string> Allowed { get; } = [];
}

/// <summary>Groups in series with diffusion-like relaxation over four decades, warming through two thermal masses.</summary>
internal sealed class PeerPack(Random random, string chemistry, double ratedAh, double aroundDegC)
{
    internal static readonly double[] TauS = [1.8, 14, 95, 700];

    // A square-root law of diffusion seen as a ladder: each decade about as much as the one before.
    private readonly double[] slowShare = [.. new[] { 0.16, 0.22, 0.3, 0.38 }.Select(s => s * (0.7 + (0.6 * random.NextDouble())))];
    private readonly double lowRise = 0.5 + (0.9 * random.NextDouble()), activationK = 2200 + (1600 * random.NextDouble());
    private readonly double hysteresisV = chemistry == "LFP" ? 0.006 + (0.009 * random.NextDouble()) : 0.002 * random.NextDouble();
    private readonly double ambientDegC = aroundDegC;
    private double coreDegC = aroundDegC;

    internal PeerGroup[] Groups { get; set; } = [];

    internal double ProbeDegC { get; private set; } = aroundDegC;

    internal double DrawnAh { get; private set; }

    internal void Start()
    {
        foreach (PeerGroup g in Groups)
        {
            (g.StartCharge, g.Lowest, g.Highest) = (g.Charge, g.Charge, g.Charge);
            g.Hysteresis = chemistry == "LFP" ? -0.3 : 0;
        }
    }

    internal void Step(double seconds, double amps, double[] volts, bool leaksOnly = false)
    {
        double heatW = 0;
        DrawnAh += amps * seconds / 3600;
        for (int k = 0; k < Groups.Length; k++)
        {
            PeerGroup g = Groups[k];
            double movedAh = (amps + g.LeakA) * seconds / 3600, step = amps * seconds / 3600 / g.CapacityAh;
            g.Charge -= movedAh / g.CapacityAh;
            (g.Lowest, g.Highest) = (Math.Min(g.Lowest, g.Charge), Math.Max(g.Highest, g.Charge));
            double ohm = g.Ohm * Factor(g.Charge, coreDegC - g.CoolerK), v = g.Curve(g.Charge) - (amps * (ohm + g.JointOhm));
            for (int j = 0; j < TauS.Length; j++)
            {
                g.SlowV[j] += ((amps * ohm * slowShare[j]) - g.SlowV[j]) * (1 - Math.Exp(-seconds / TauS[j]));
                v -= g.SlowV[j];
            }
            g.Hysteresis += Math.Abs(step) * 25 * (Math.Sign(amps) - g.Hysteresis);
            v -= hysteresisV * g.Hysteresis;
            volts[k] = v;
            heatW += amps * amps * ohm * 1.5;
        }
        if (leaksOnly)
        {
            (coreDegC, ProbeDegC) = (ambientDegC, ambientDegC);
            return;
        }
        coreDegC += seconds * ((heatW / (ratedAh * Groups.Length * 90)) - ((coreDegC - ambientDegC) / 5400));
        ProbeDegC += seconds * (coreDegC - ProbeDegC) / 240;
    }

    internal double OneSecondOhm(PeerGroup g, double degC)
    {
        double share = 1;
        for (int j = 0; j < TauS.Length; j++)
            share += slowShare[j] * (1 - Math.Exp(-1 / TauS[j]));
        return (g.Ohm * Factor(0.5, degC - g.CoolerK) * share) + g.JointOhm;
    }

    private double Factor(double z, double degC)
    {
        double charge = Math.Clamp(z, -0.03, 1);
        return (1 + (lowRise * 0.02 / (charge + 0.06)) + (0.08 * charge * charge)) / (1 + (lowRise * 0.02 / 0.56) + 0.02)
            * Math.Exp(activationK * ((1 / (degC + 273.15)) - (1 / 298.15)));
    }
}
