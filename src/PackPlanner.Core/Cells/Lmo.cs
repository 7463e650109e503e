using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>Lithium manganese oxide spinel against graphite.</summary>
internal static class Lmo
{
    // The general shape of such a cell; nobody measured these points. Source: [FromMemory].
    private static readonly double[] Fraction = [0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
    private static readonly double[] Volts = [3.00, 3.40, 3.58, 3.68, 3.78, 3.85, 3.90, 3.94, 3.98, 4.02, 4.06, 4.11, 4.20];


    internal static Chemistry Figures { get; } = new()
    {
        Name = "LMO",
        Electrodes = "lithium manganese oxide / graphite",
        Nominal = new(ElectricPotential.FromVolts(3.7), null, Standing.Assumed, "FromMemory"),
        Full = new(ElectricPotential.FromVolts(4.2), null, Standing.Assumed, "FromMemory"),
        Cutoff = new(ElectricPotential.FromVolts(3.0), null, Standing.Assumed, "FromMemory"),
        DoNotRecharge = new(ElectricPotential.FromVolts(2.0), null, Standing.Assumed, "Guo2016"),
        LowestCharging = Temperature.FromDegreesCelsius(0),
        HasGraphiteAnode = true,
        HasFlatCurve = false,
        Physics = (1.0, 4.6),
        Curve = new OpenCircuitCurve(Fraction, Volts, Standing.Assumed, "FromMemory"),
    };
}
