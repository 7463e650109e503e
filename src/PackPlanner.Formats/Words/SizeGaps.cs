using System.Globalization;
using PackPlanner.Core.Sizing;

namespace PackPlanner.Formats.Words;

/// <summary>Which fields of a need are missing for its main figures, and what is known without them.</summary>
public static class SizeGaps
{
    /// <summary>One sentence for each figure that is not known.</summary>
    /// <param name="request">The need.</param>
    /// <param name="choice">The choice that is proposed for it.</param>
    /// <returns>The sentences; none where energy, range and mass are known.</returns>
    public static IEnumerable<string> Of(SizingRequest request, PackChoice choice)
    {
        if (choice.EnergyUsableWh is null && Missing(ForEnergy(request, choice)) is { Length: > 0 } energy)
            yield return $"Usable energy is not known without {energy}{Unheld(request, choice)}.";
        else if (choice.RangeKm is null && choice.Need.WhPerKm is null)
            yield return "The range is not known without need.whPerKm (--use), or mass, speed, crr and cdA.";
        if (choice.PackMassKg is null && Missing(ForMass(request, choice.Cell)) is { Length: > 0 } mass)
            yield return $"The pack's mass is not known without {mass}{(choice.CellMassKg is { } cells ? $"; the cells alone weigh {Text(cells, "0.0")} kg" : "")}.";
    }

    // What the label holds is more than arrives, so it tells how many cells are too few.
    private static string Unheld(SizingRequest request, PackChoice choice)
    {
        if (request.Need.RangeKm is not { } km)
            return "";
        string unheld = $", so that nothing is held to {Text(km, "0.#")} km";
        return choice.Need.EnergyNominalNeededWh / (choice.VoltageNominalV * choice.Cell.CapacityAh) is { } least && double.IsFinite(least)
            ? $"{unheld}; by the label alone {Text(Math.Ceiling(least - 1e-9), "0")} in parallel are the least that it takes"
            : unheld;
    }

    private static IEnumerable<(bool Known, string Field)> ForEnergy(SizingRequest request, PackChoice choice) =>
    [
        (choice.Cell.NominalV is not null, "cell.nominalV (--nominal-v)"),
        (choice.Cell.CapacityAh is not null, "cell.capacityAh (--rated-ah)"),
        (choice.Cell.ResistanceMilliohm is not null, "cell.resistanceMilliohm (--cell-resistance)"),
        (request.Electrics.LinkResistanceMilliohm is not null, "electrics.linkResistanceMilliohm (--leads)"),
        (choice.ContinuousCurrentA is not null || choice.VoltageNominalV is null, "need.continuousPowerW (--continuous), or whPerKm and speedKmh (--use, --speed)"),
    ];

    private static IEnumerable<(bool Known, string Field)> ForMass(SizingRequest request, SizingCell cell) =>
    [
        (cell.MassG is not null, "cell.massG (--cell-mass)"),
        (request.OverheadFraction is not null, "pack.overheadFraction (--overhead)"),
    ];

    private static string Missing(IEnumerable<(bool Known, string Field)> wanted) => string.Join(" and ", wanted.Where(one => !one.Known).Select(one => one.Field));

    private static string Text(double figure, string format) => figure.ToString(format, CultureInfo.InvariantCulture);
}
