using System.Globalization;
using PackPlanner.Core.Sizing;

namespace PackPlanner.Formats.Words;

/// <summary>Choices of S, P and cell, for people.</summary>
public static class SizeWords
{
    /// <summary>The answer, the list of choices, and what to do next.</summary>
    /// <param name="options">Choices, the proposed one first.</param>
    /// <param name="reasons">Why there is none.</param>
    /// <returns>Lines.</returns>
    public static IReadOnlyList<string> Lines(IReadOnlyList<PackChoice> options, IReadOnlyList<SizingReason> reasons)
    {
        if (options.Count == 0)
            return ["No number of cells in series serves.", .. reasons.Select(reason => "  " + reason.Text)];
        PackChoice best = options[0];
        List<string> lines =
        [
            $"{Notation(best)}{Name(best)}: {Text(best.EnergyUsableWh, "0")} Wh usable, {Text(best.RangeKm, "0.#")} km, {Mass(best)}.",
            $"  volts     {Text(best.VoltageCutoffV, "0.0")} empty, {Text(best.VoltageNominalV, "0.0")} nominal, {Text(best.VoltageFullV, "0.0")} full",
            $"  amperes   {Text(best.PeakCurrentA, "0.#")} peak, {Text(best.ContinuousCurrentA, "0.#")} continuous, {Text(best.ContinuousCurrentLowA, "0.#")} when nearly empty; a cell {Text(best.CellPeakA, "0.#")} and at most {Text(best.CellContinuousA, "0.#")}",
            $"  binds     {best.Binding?.Text ?? "nothing that is known"}",
            $"  breaks    {List(best.LimitsBroken, "no limit that was checked")}",
            $"  not checked  {List(best.NotChecked, "nothing")}",
            $"  charge    {Text(best.ChargeCurrentA, "0.#")} A for {Text(best.ChargeHours, "0.#")} h",
            $"  fuse      a starting point, never final: {Text(best.FuseMinA, "0.#")} A or more{(best.PeakCurrentA > best.FuseMinA ? ", its time-current curve above the peak" : "")}; short circuit {Text(best.ShortCircuitA, "0")} A (low), {Text(best.ProspectiveShortCircuitA, "0")} A (first instant)",
        ];
        if (best.StrandedWh is { } stranded)
            lines.Add($"  stranded  about {stranded:0} Wh stay in the cells: the controller stops first");
        if (options.Count > 1)
            lines.Add("choices that no other beats:");
        foreach (PackChoice choice in options.Count > 1 ? options : [])
            lines.Add($"  {Notation(choice),-9}{Name(choice)} {Text(choice.EnergyUsableWh, "0"),6} Wh {Text(choice.RangeKm, "0.#"),6} km {Text(choice.PackMassKg, "0.0"),6} kg  {choice.Binding?.Text}{(choice.LimitsBroken.Count > 0 ? $"; breaks {string.Join(", ", choice.LimitsBroken)}" : "")}");
        lines.Add("Next: packplanner fit CASE.json shows whether they go into the space.");
        return lines;
    }

    /// <summary>One row a choice.</summary>
    /// <param name="options">Choices.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(IReadOnlyList<PackChoice> options) => new(
        ["cell", "series", "parallel", "cells", "voltageCutoffV", "voltageNominalV", "voltageFullV", "energyUsableWh", "rangeKm", "packMassKg", "cellPeakA", "limitsBroken"],
        [.. options.Select(c => new object?[]
        {
            c.Cell.Name, c.Series, c.Parallel, c.Cells, c.VoltageCutoffV, c.VoltageNominalV, c.VoltageFullV, c.EnergyUsableWh,
            c.RangeKm, c.PackMassKg, c.CellPeakA, string.Join(' ', c.LimitsBroken),
        })]);

    private static string Mass(PackChoice choice) => choice.PackMassKg is null && choice.CellMassKg is { } cells
        ? $"cells {Text(cells, "0.0")} kg"
        : $"{Text(choice.PackMassKg, "0.0")} kg";

    private static string Notation(PackChoice choice) => choice.Parallel is { } p ? $"{choice.Series}s{p}p" : $"{choice.Series}s, P unknown";

    private static string Name(PackChoice choice) => choice.Cell.Name is { } name ? $" of {name}" : "";

    private static string List(IReadOnlyList<string> codes, string none) => codes.Count > 0 ? string.Join(", ", codes) : none;

    private static string Text(double? figure, string format) => figure?.ToString(format, CultureInfo.InvariantCulture) ?? "-";
}
