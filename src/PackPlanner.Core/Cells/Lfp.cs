using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>Lithium iron phosphate against graphite.</summary>
internal static class Lfp
{
    // Discharge at C/20 and 25 °C from the first loaded sample to 2.0 V. Source: [AboutEnergy2022].
    private static readonly double[] Volts =
    [
        1.9997, 2.6870, 2.8076, 2.8837, 2.9403, 3.0245, 3.0858, 3.1333, 3.1609, 3.1723, 3.1763, 3.1805,
        3.1989, 3.2135, 3.2278, 3.2362, 3.2450, 3.2527, 3.2578, 3.2617, 3.2642, 3.2662, 3.2676, 3.2688,
        3.2697, 3.2707, 3.2714, 3.2726, 3.2738, 3.2762, 3.2826, 3.2933, 3.3006, 3.3044, 3.3067, 3.3081,
        3.3092, 3.3102, 3.3110, 3.3119, 3.3126, 3.3133, 3.3138, 3.3142, 3.3142, 3.3136, 3.3131, 3.3195,
        3.3520, 3.4772,
    ];

    internal static Chemistry Figures { get; } = new()
    {
        Name = "LFP",
        Electrodes = "lithium iron phosphate / graphite",
        Nominal = new(ElectricPotential.FromVolts(3.2), null, Standing.DataSheet, "LP54173207"),
        Full = new(ElectricPotential.FromVolts(3.65), null, Standing.DataSheet, "LP54173207"),
        Cutoff = new(ElectricPotential.FromVolts(2.5), null, Standing.DataSheet, "LP54173207"),
        DoNotRecharge = new(ElectricPotential.FromVolts(2.0), null, Standing.Assumed, "Guo2016"),
        LowestCharging = Temperature.FromDegreesCelsius(0),
        HasGraphiteAnode = true,
        HasFlatCurve = true,
        Physics = (1.0, 4.3),
        Curve = new OpenCircuitCurve(CurveGrid.Fraction, Volts, Standing.Measured, "AboutEnergy2022").Between(3.65, 2.5),
    };
}
