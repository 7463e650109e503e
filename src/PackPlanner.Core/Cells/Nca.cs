using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>Lithium nickel cobalt aluminium oxide against graphite.</summary>
internal static class Nca
{
    // Mean of a charge and a discharge at C/24 and 24 °C. Source: [Raj2020].
    private static readonly double[] Volts =
    [
        2.7051, 2.9196, 3.0144, 3.0838, 3.1386, 3.2214, 3.2750, 3.2976, 3.3107, 3.3303, 3.3482, 3.3782,
        3.4133, 3.4463, 3.4769, 3.5023, 3.5230, 3.5404, 3.5558, 3.5701, 3.5835, 3.5967, 3.6102, 3.6242,
        3.6392, 3.6555, 3.6739, 3.6958, 3.7281, 3.7580, 3.7828, 3.8055, 3.8280, 3.8493, 3.8695, 3.8897,
        3.9096, 3.9312, 3.9551, 3.9814, 4.0098, 4.0387, 4.0657, 4.0889, 4.1113, 4.1333, 4.1476, 4.1650,
        4.1746, 4.1856,
    ];

    internal static Chemistry Figures { get; } = new()
    {
        Name = "NCA",
        Electrodes = "lithium nickel cobalt aluminium oxide / graphite",
        Nominal = new(ElectricPotential.FromVolts(3.6), null, Standing.DataSheet, "CathodeTable"),
        Full = new(ElectricPotential.FromVolts(4.2), null, Standing.Assumed, "FromMemory"),
        Cutoff = new(ElectricPotential.FromVolts(2.5), null, Standing.Assumed, "FromMemory"),
        DoNotRecharge = new(ElectricPotential.FromVolts(2.0), null, Standing.Assumed, "Guo2016"),
        LowestCharging = Temperature.FromDegreesCelsius(0),
        HasGraphiteAnode = true,
        HasFlatCurve = false,
        Physics = (1.0, 4.6),
        Curve = new OpenCircuitCurve(CurveGrid.Fraction, Volts, Standing.Measured, "Raj2020").Between(4.2, 2.5),
    };
}
