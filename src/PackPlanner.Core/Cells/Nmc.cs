using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>Lithium nickel manganese cobalt oxide against graphite.</summary>
internal static class Nmc
{
    // Discharge of an NMC111 cell at C/20 and 25 °C down to 2.7 V. Source: [AboutEnergy2022].
    private static readonly double[] Volts =
    [
        2.6997, 2.8989, 3.0170, 3.0939, 3.1536, 3.2434, 3.3110, 3.3646, 3.4080, 3.4556, 3.4730, 3.4863,
        3.4984, 3.5155, 3.5357, 3.5534, 3.5683, 3.5814, 3.5933, 3.6040, 3.6138, 3.6230, 3.6318, 3.6408,
        3.6502, 3.6602, 3.6710, 3.6830, 3.6966, 3.7122, 3.7303, 3.7515, 3.7755, 3.8023, 3.8311, 3.8607,
        3.8899, 3.9181, 3.9461, 3.9742, 4.0024, 4.0309, 4.0597, 4.0891, 4.1197, 4.1452, 4.1585, 4.1723,
        4.1796, 4.1937,
    ];

    internal static Chemistry Figures { get; } = new()
    {
        Name = "NMC",
        Electrodes = "lithium nickel manganese cobalt oxide / graphite",
        Nominal = new(ElectricPotential.FromVolts(3.6), null, Standing.DataSheet, "Inr18650-26"),
        Full = new(ElectricPotential.FromVolts(4.2), null, Standing.DataSheet, "Inr18650-26"),
        Cutoff = new(ElectricPotential.FromVolts(2.75), null, Standing.DataSheet, "Inr18650-26"),
        DoNotRecharge = new(ElectricPotential.FromVolts(2.0), null, Standing.Assumed, "Guo2016"),
        LowestCharging = Temperature.FromDegreesCelsius(0),
        HasGraphiteAnode = true,
        HasFlatCurve = false,
        Physics = (1.0, 4.6),
        Curve = new OpenCircuitCurve(CurveGrid.Fraction, Volts, Standing.Measured, "AboutEnergy2022").Between(4.2, 2.75),
    };
}
