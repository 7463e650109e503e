using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>A metal oxide against lithium titanate.</summary>
internal static class Lto
{
    // The general shape of such a cell; nobody measured these points. Source: [FromMemory].
    private static readonly double[] Fraction = [0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
    private static readonly double[] Volts = [1.50, 1.90, 2.03, 2.10, 2.17, 2.21, 2.24, 2.28, 2.33, 2.39, 2.46, 2.55, 2.80];


    internal static Chemistry Figures { get; } = new()
    {
        Name = "LTO",
        Electrodes = "lithium metal oxide / lithium titanate",
        Nominal = new(ElectricPotential.FromVolts(2.3), null, Standing.DataSheet, "Lto40"),
        Full = new(ElectricPotential.FromVolts(2.8), null, Standing.Assumed, "FromMemory"),
        Cutoff = new(ElectricPotential.FromVolts(1.5), null, Standing.Assumed, "FromMemory"),
        DoNotRecharge = new(ElectricPotential.FromVolts(1.5), null, Standing.Assumed, "FromMemory"),
        LowestCharging = null,
        HasGraphiteAnode = false,
        HasFlatCurve = false,
        Physics = (0.7, 3.2),
        Curve = new OpenCircuitCurve(Fraction, Volts, Standing.Assumed, "FromMemory"),
    };
}
