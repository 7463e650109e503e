namespace PackPlanner.Core.Diagnosis;

/// <summary>What is known of the curves of each family of cells before a log is read: measured members, and how far a strange one may lie from them.</summary>
internal static class CurveMembers
{
    /// <summary>The middle of the known curves of a family, and the ways to each of them with how far one may go, one standard deviation.</summary>
    internal static (Func<double, double> Mean, (Func<double, double> To, double Sd)[] Modes) Of(
        CurveFamily family, double fullV, double emptyV)
    {
        if (family == CurveFamily.Lfp)
        {
            // The measured discharge branch lies below the resting curve by about 10 mV, and its top is not a rest.
            Func<double, double> fit = Between(ReferenceCurves.LfpElectrodes, fullV, emptyV);
            double Measured(double z) => fit(z) + (Middle(z) * (ReferenceCurves.Lfp(1 - z) + 0.008 - fit(z)));
            return (z => (0.65 * fit(z)) + (0.35 * Measured(z)), [(fit, 0.6)]);
        }
        Func<double, double> nmc811 = Between(ReferenceCurves.Nmc811, fullV, emptyV);
        // The C/20 branch is about 8 mV below rest; the mean of two branches needs nothing.
        Func<double, double> nmc111 = Between(s => ReferenceCurves.Nmc111(s) + 0.008, fullV, emptyV);
        Func<double, double> nca = Between(ReferenceCurves.Nca, fullV, emptyV);
        return family switch
        {
            CurveFamily.Nca => (z => (0.5 * nca(z)) + (0.5 * nmc811(z)), [(nmc811, 1.0), (nmc111, 0.2)]),
            _ => (z => (0.75 * nmc811(z)) + (0.15 * nmc111(z)) + (0.1 * nca(z)), [(nmc811, 0.8), (nmc111, 0.35), (nca, 0.2)]),
        };
    }

    /// <summary>Smooth corrections that stay possible: volts, volts per slope, and the stretch of charge that moves together.</summary>
    internal static (double SdV, double PerSlope, double Length)[] Smoothness(CurveFamily family) => family switch
    {
        // Measured against a whole strange cell: 20-40 mV in the middle; steps of LFP sit elsewhere by a point or two.
        CurveFamily.Lfp => [(0.006, 0.004, 0.25), (0.002, 0.012, 0.04)],
        CurveFamily.Other or CurveFamily.Nca => [(0.030, 0.010, 0.20), (0.005, 0.004, 0.06)],
        _ => [(0.020, 0.010, 0.20), (0.004, 0.004, 0.06)],
    };

    /// <summary>The electrodes of another maker, or of an aged cell, stand slipped against each other: charge is stretched, its ends held.</summary>
    internal static (Func<double, double> To, double Sd)[] Slips(CurveFamily family, Func<double, double> mean)
    {
        // On LFP the knees tie charge down, and between them a slip would only trade against capacity.
        const double once = 0.025, twice = 0.012;
        return family == CurveFamily.Lfp ? [] : [(z => mean(z + (once * Math.Sin(Math.PI * z))), 1), (z => mean(z + (twice * Math.Sin(2 * Math.PI * z))), 1)];
    }

    private static double Middle(double z) => Ramp((z - 0.06) / 0.06) * Ramp((0.96 - z) / 0.04);

    private static double Ramp(double x) => x <= 0 ? 0 : x >= 1 ? 1 : x * x * (3 - (2 * x));

    /// <summary>Cuts a falling curve at the two resting voltages and counts charge between them, 1 = full.</summary>
    internal static Func<double, double> Between(Func<double, double> volts, double fullV, double emptyV)
    {
        double full = Crossing(volts, fullV, -0.3, 0.5), empty = Crossing(volts, emptyV, 0.5, 1.3);
        return z => volts(empty + ((full - empty) * z));
    }

    private static double Crossing(Func<double, double> volts, double wantedV, double low, double high)
    {
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = volts(middle) > wantedV ? (middle, high) : (low, middle);
        }
        return low;
    }
}
