namespace PackPlanner.Core.Diagnosis;

/// <summary>Resting voltage of whole cells against the share of charge drawn, before any log has corrected it.</summary>
/// <remarks>
/// A diagnosis needs a curve only to start from; several quite different cells of one chemistry are kept so that
/// their distance tells how far a stranger's cell may lie from all of them.
/// </remarks>
internal static class ReferenceCurves
{
    // Share of charge drawn at which the measured tables below are given.
    private static readonly double[] DrawnFraction =
    [
        0, .005, .01, .02, .03, .04, .05, .075, .1, .125, .15, .175, .2, .225, .25, .275, .3, .325, .35, .375, .4, .425, .45,
        .475, .5, .525, .55, .575, .6, .625, .65, .675, .7, .725, .75, .775, .8, .85, .875, .9, .92, .94, .95, .96, .97, .98,
        .99, .995, 1,
    ];

    // Source: [AboutEnergy2022] C/20 discharge at 25 degC of an NMC111 pouch cell, counted and read off here.
    private static readonly double[] Nmc111V =
    [
        4.1937, 4.1796, 4.1723, 4.1585, 4.1452, 4.1322, 4.1197, 4.0891, 4.0597, 4.0309, 4.0024, 3.9742, 3.9461, 3.9181,
        3.8899, 3.8607, 3.8311, 3.8023, 3.7755, 3.7515, 3.7303, 3.7122, 3.6966, 3.6830, 3.6710, 3.6602, 3.6502, 3.6408,
        3.6318, 3.6230, 3.6138, 3.6040, 3.5933, 3.5814, 3.5683, 3.5534, 3.5357, 3.4984, 3.4863, 3.4730, 3.4556, 3.4080,
        3.3646, 3.3110, 3.2434, 3.1536, 3.0170, 2.8989, 2.6997,
    ];

    // Source: [Raj2020] mean of the C/24 discharge and charge branches of an NCA 18650 cell.
    private static readonly double[] NcaV =
    [
        4.1856, 4.1746, 4.1650, 4.1476, 4.1333, 4.1216, 4.1113, 4.0889, 4.0657, 4.0387, 4.0098, 3.9814, 3.9551, 3.9312,
        3.9096, 3.8897, 3.8695, 3.8493, 3.8280, 3.8055, 3.7828, 3.7580, 3.7281, 3.6958, 3.6739, 3.6555, 3.6392, 3.6242,
        3.6102, 3.5967, 3.5835, 3.5701, 3.5558, 3.5404, 3.5230, 3.5023, 3.4769, 3.4133, 3.3782, 3.3482, 3.3303, 3.3107,
        3.2976, 3.2750, 3.2214, 3.1386, 3.0144, 2.9196, 2.7051,
    ];

    // Source: [AboutEnergy2022] C/20 discharge at 25 degC of an LFP 18650 cell; its first 3.48 V is no rest at 3.65 V.
    private static readonly double[] LfpV =
    [
        3.4772, 3.3520, 3.3195, 3.3131, 3.3136, 3.3138, 3.3142, 3.3142, 3.3138, 3.3133, 3.3126, 3.3119, 3.3110, 3.3102,
        3.3092, 3.3081, 3.3067, 3.3044, 3.3006, 3.2933, 3.2826, 3.2762, 3.2738, 3.2726, 3.2714, 3.2707, 3.2697, 3.2688,
        3.2676, 3.2662, 3.2642, 3.2617, 3.2578, 3.2527, 3.2450, 3.2362, 3.2278, 3.1989, 3.1805, 3.1763, 3.1723, 3.1609,
        3.1333, 3.0858, 3.0245, 2.9403, 2.8076, 2.6870, 1.9997,
    ];

    /// <summary>NMC111 against graphite, volts at a share of charge drawn 0..1 (a straight line beyond).</summary>
    internal static double Nmc111(double drawnFraction) => Interpolate(Nmc111V, drawnFraction);

    /// <summary>NCA against graphite, volts at a share of charge drawn 0..1 (a straight line beyond).</summary>
    internal static double Nca(double drawnFraction) => Interpolate(NcaV, drawnFraction);

    /// <summary>LFP against graphite, discharge branch, volts at a share of charge drawn 0..1.</summary>
    internal static double Lfp(double drawnFraction) => Interpolate(LfpV, drawnFraction);

    /// <summary>NMC811 against graphite with silicon, from two fitted electrodes.</summary>
    /// <remarks>Source: [Chen2020] electrode fits and the stoichiometries of that cell; from memory.</remarks>
    internal static double Nmc811(double drawnFraction)
    {
        double y = 0.2661 + (drawnFraction * (0.9084 - 0.2661));
        double x = 0.9014 - (drawnFraction * (0.9014 - 0.0279));
        double positiveV = (-0.8090 * y) + 4.4875 - (0.0428 * Math.Tanh(18.5138 * (y - 0.5542)))
            - (17.7326 * Math.Tanh(15.7890 * (y - 0.3117))) + (17.5842 * Math.Tanh(15.9308 * (y - 0.3120)));
        double negativeV = (1.9793 * Math.Exp(-39.3631 * x)) + 0.2482 - (0.0909 * Math.Tanh(29.8538 * (x - 0.1234)))
            - (0.04478 * Math.Tanh(14.9159 * (x - 0.2769))) - (0.0205 * Math.Tanh(30.4444 * (x - 0.6103)));
        return positiveV - negativeV;
    }

    /// <summary>LFP against graphite from two fitted electrodes; the stoichiometries of the whole cell are assumed.</summary>
    /// <remarks>Source: [Afshar2017] for LFP, [Kim2011] for graphite; both from memory.</remarks>
    internal static double LfpElectrodes(double drawnFraction)
    {
        double y = 0.03 + (drawnFraction * 0.92);
        double x = 0.80 - (drawnFraction * 0.792);
        double positiveV = 3.4077 - (0.020269 * y) + (0.5 * Math.Exp(-150 * y)) - (0.9 * Math.Exp(-30 * (1 - y)));
        return positiveV - GraphiteKim(x);
    }

    private static double GraphiteKim(double x) =>
        0.124 + (1.5 * Math.Exp(-150 * x)) + (0.0351 * Math.Tanh((x - 0.286) / 0.083)) - (0.0045 * Math.Tanh((x - 0.849) / 0.119))
        - (0.035 * Math.Tanh((x - 0.9233) / 0.05)) - (0.0147 * Math.Tanh((x - 0.5) / 0.034))
        - (0.102 * Math.Tanh((x - 0.194) / 0.142)) - (0.022 * Math.Tanh((x - 0.9) / 0.0164))
        - (0.011 * Math.Tanh((x - 0.124) / 0.0226)) + (0.0155 * Math.Tanh((x - 0.105) / 0.029));

    private static double Interpolate(double[] tableV, double drawnFraction)
    {
        int i = Array.BinarySearch(DrawnFraction, drawnFraction);
        i = Math.Clamp(i < 0 ? ~i : i, 1, DrawnFraction.Length - 1);
        double share = (drawnFraction - DrawnFraction[i - 1]) / (DrawnFraction[i] - DrawnFraction[i - 1]);
        return tableV[i - 1] + (share * (tableV[i] - tableV[i - 1]));
    }
}
