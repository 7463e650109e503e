using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>Lithium cobalt oxide against graphite.</summary>
internal static class Lco
{
    // The general shape of such a cell; nobody measured these points. Source: [FromMemory].
    private static readonly double[] Fraction = [0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
    private static readonly double[] Volts = [2.75, 3.35, 3.55, 3.66, 3.73, 3.77, 3.80, 3.84, 3.89, 3.95, 4.02, 4.10, 4.20];


    internal static Chemistry Figures { get; } = new()
    {
        Name = "LCO",
        Electrodes = "lithium cobalt oxide / graphite",
        Nominal = new(ElectricPotential.FromVolts(3.6), null, Standing.DataSheet, "Icr18650"),
        Full = new(ElectricPotential.FromVolts(4.2), null, Standing.DataSheet, "Icr18650"),
        Cutoff = new(ElectricPotential.FromVolts(2.75), null, Standing.DataSheet, "Icr18650"),
        DoNotRecharge = new(ElectricPotential.FromVolts(2.0), null, Standing.Assumed, "Guo2016"),
        LowestCharging = Temperature.FromDegreesCelsius(0),
        HasGraphiteAnode = true,
        HasFlatCurve = false,
        Physics = (1.0, 4.7),
        Curve = new OpenCircuitCurve(Fraction, Volts, Standing.Assumed, "FromMemory"),
    };
}
