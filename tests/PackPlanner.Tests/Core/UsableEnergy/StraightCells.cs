using PackPlanner.Core.Cells;
using PackPlanner.Core.UsableEnergy;
using UnitsNet;

namespace PackPlanner.Tests.Core.UsableEnergy;

/// <summary>Cells whose volts fall in a straight line from 4.2 V full to 3.0 V empty, so that sums fit on paper.</summary>
internal static class StraightCells
{
    internal static readonly Chemistry Chemistry = Chemistries.NickelManganeseCobalt with
    {
        Full = new(ElectricPotential.FromVolts(4.2), null, Standing.Assumed, "by hand"),
        Cutoff = new(ElectricPotential.FromVolts(3.0), null, Standing.Assumed, "by hand"),
        Nominal = new(ElectricPotential.FromVolts(3.6), null, Standing.Assumed, "by hand"),
        Curve = new OpenCircuitCurve([0, 0.25, 0.5, 0.75, 1], [3.0, 3.3, 3.6, 3.9, 4.2], Standing.Assumed, "by hand"),
    };

    internal static EnergyRequest Request(double[] capacityAh) => new()
    {
        Groups = [.. capacityAh.Select((ah, g) => new SeriesGroup(g + 1, ah, 10))],
        Chemistry = Chemistry,
    };
}
