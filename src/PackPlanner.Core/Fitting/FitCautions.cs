using PackPlanner.Core.Cautions;
using PackPlanner.Core.Packs;
using static System.FormattableString;

namespace PackPlanner.Core.Fitting;

/// <summary>Where a layout can hurt someone.</summary>
internal static class FitCautions
{
    // Common practice, no source.
    private const double LeadRoomMm = 10;

    internal static IReadOnlyList<Caution> Of(FitAnswer answer, FitCase fitCase)
    {
        List<Caution> cautions = [];
        if (answer.Cells.Count == 0)
            return cautions;
        if (fitCase.Cell is CellBody.Cylinder)
            cautions.Add(new("caution-18", SignalWord.Warning, "placement", Invariant($"{Placed(answer)} round cells are placed")));
        if (answer.Parallel > 1)
            cautions.Add(new("caution-20a", SignalWord.Danger, "placement", Invariant($"{answer.Parallel} cells stand in parallel in each group")));
        if (answer.Parallel is not null && answer.Series > 1)
        {
            cautions.Add(new("caution-19", SignalWord.Warning, "sense taps", Invariant($"{answer.Taps.Count} taps are listed")));
            cautions.Add(new("caution-20b", SignalWord.Danger, "links", Invariant($"{answer.Series - 1} series links are to be made")));
        }

        if (answer.Parallel is not null && TouchVoltage.Of("pack", fitCase.FullV * answer.Series) is { } touch)
            cautions.Add(touch);
        Prismatic(answer, fitCase, cautions);
        Heavy(answer, cautions);
        foreach (WayIn way in answer.WaysIn.Where(w => w.TerminalRoomMm < LeadRoomMm))
            cautions.Add(new("caution-26", SignalWord.Warning, way.Opening, Invariant($"{way.TerminalRoomMm:0.#} mm stay free between the cells and the wall on that side: under {LeadRoomMm:0} mm there is no room for a lead's bend or for gas")));
        return cautions;
    }

    // A place that no group takes stays empty.
    private static int Placed(FitAnswer answer) => answer.Parallel is null ? answer.Cells.Count : answer.Cells.Count(cell => cell.Group is not null);

    private static void Prismatic(FitAnswer answer, FitCase fitCase, List<Caution> cautions)
    {
        if (fitCase.Cell is not CellBody.Box)
            return;
        Clearances c = fitCase.Clearances;
        if (fitCase.IsClamped == false)
            cautions.Add(new("caution-25", SignalWord.Caution, "clearance", "flat cells are neither clamped nor have room to swell, as was said"));
        else if (fitCase.IsClamped is null && (c.SpacerMm == 0 || Math.Max(c.PlateMm, c.WallMm) == 0))
            cautions.Add(new("caution-25", SignalWord.Caution, "clearance", Invariant($"large faces keep {c.SpacerMm:0.##} mm from each other and {Math.Max(c.PlateMm, c.WallMm):0.##} mm from the wall")));
        string[] sideways = [.. answer.Cells.Select(cell => cell.Terminals).OfType<string>().Where(t => t != "+z").Distinct().Order(StringComparer.Ordinal)];
        if (sideways.Length > 0)
            cautions.Add(new("caution-26", SignalWord.Warning, "placement", $"terminals and vents look to {string.Join(", ", sideways)}"));
        if (fitCase.HasVentPath != true)
            cautions.Add(new("caution-26", SignalWord.Warning, "cavity", "the case states no way out for gas and water"));
    }

    private static void Heavy(FitAnswer answer, List<Caution> cautions)
    {
        if (answer.Boxes.Count == 0)
        {
            if (HeavyBox.Of("pack", answer.PackMassKg, "with the parts that were weighed") is { } heavy)
                cautions.Add(heavy);
            return;
        }

        cautions.AddRange(answer.Boxes.Select(box => HeavyBox.Of(Invariant($"box {box.Box}"), box.CellMassKg, "of cells alone")).OfType<Caution>());
    }
}
