using System.Globalization;
using PackPlanner.Core.Fitting;

namespace PackPlanner.Formats.Words;

/// <summary>A fit answer for people, and its main table.</summary>
public static class FitWords
{
    /// <summary>The answer first, then what it rests on.</summary>
    /// <param name="answer">From Core.</param>
    /// <param name="fitCase">The case it answers.</param>
    /// <returns>Lines.</returns>
    public static IReadOnlyList<string> Of(FitAnswer answer, FitCase fitCase)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(fitCase);
        List<string> lines = [Headline(answer, fitCase)];
        foreach (FitReason reason in answer.Reasons)
        {
            lines.Add($"  why     {reason.Text}");
            if (reason.Change is not null)
                lines.Add($"  try     {reason.Change}");
        }

        string limit = answer.Bound is int bound ? $"proven limit {bound} ({answer.BoundMethod})" : answer.BoundMethod;
        lines.Add($"  places  {answer.Cells.Count}; {limit}{(answer.Proven ? ": no layout holds more" : "")}");
        if (answer.RegularCount is int regular)
            lines.Add($"  nests   {regular} in a regular nest, as moulded holders need; {(answer.FreeCount is int free ? $"{free} when cells may lie freely" : "free packing not looked for")}; shown: {answer.NestKind}");
        if (Other(answer) is { } other)
            lines.Add($"  also    {other}");
        if (answer.Parallel is not null && answer.Series > 1)
            lines.Add(F($"  links   narrowest {answer.NarrowestLink} pairs side by side; plates {answer.BusbarRatio:0.00} times the shortest possible{(answer.Jumpers.Count > 0 ? $"; by cable after group {string.Join(", ", answer.Jumpers)}" : "")}"));
        Masses(answer, fitCase, lines);
        if (answer.MarginMm is [var a, var b, var c, var d, var e, var f])
            lines.Add(F($"  left    beyond the clearances: -x {a:0.0} mm +x {b:0.0} mm -y {c:0.0} mm +y {d:0.0} mm -z {e:0.0} mm +z {f:0.0} mm"));
        foreach (PackBox box in answer.Boxes)
            lines.Add(F($"  box {box.Box}   groups {box.FromGroup} to {box.ToGroup}, {box.Cells} cells{(box.CellMassKg is double kg ? $", {kg:0.00} kg" : "")}{(box.FullV is double v ? $", {v:0.0} V full" : "")}"));
        lines.AddRange(KeepOutsOutside.Of(fitCase).Select(i => $"  outside {fitCase.KeepOuts[i].Name} lies wholly outside the space and changes nothing: check the tape measure"));
        foreach (WayIn way in answer.WaysIn)
            lines.Add($"  way in  {way.Text}");
        if (answer.Taps.Count > 0 && answer.Taps[0].NominalV is not null)
            lines.Add("  taps    " + string.Join(", ", answer.Taps.Select(t => F($"{t.Tap}: {t.NominalV:0.0} V"))));
        return lines;
    }

    /// <summary>What the layout that was passed over would gain and cost.</summary>
    /// <param name="answer">From Core.</param>
    /// <returns>A sentence; null when no layout was passed over.</returns>
    public static string? Other(FitAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return answer.Other switch
        {
            null => null,
            { IsFuller: true, Parallel: null } fuller => $"{fuller.Count} places would fit, but their groups cannot be linked: linking costs {fuller.Count - answer.Cells.Count} places",
            { IsFuller: true } fuller => $"{fuller.Count} places would fit, but in groups of {fuller.Parallel} only: larger groups cost {fuller.Count - answer.Cells.Count} places",
            var larger => $"groups of {larger.Parallel} can be linked among {larger.Count} places: {answer.Cells.Count - larger.Count} places fewer (--prefer groups shows them)",
        };
    }

    /// <summary>One row for each place.</summary>
    /// <param name="answer">From Core.</param>
    /// <param name="labels">The measured cell that goes to each place, by the place's number; null when none were named.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(FitAnswer answer, IReadOnlyDictionary<int, string>? labels = null)
    {
        ArgumentNullException.ThrowIfNull(answer);
        string[] last = labels is null ? [] : ["label"];
        return new(
            ["cell", "xMm", "yMm", "zMm", "sizeXMm", "sizeYMm", "sizeZMm", "axis", "terminals", "plus", "group", .. last],
            [.. answer.Cells.Select(c => (object?[])
            [
                c.Cell, c.Centre.X, c.Centre.Y, c.Centre.Z, c.SizeMm.X, c.SizeMm.Y, c.SizeMm.Z,
                c.RoundAlong?.ToString().ToLowerInvariant(), Direction(c.Terminals), Direction(c.Plus), c.Group,
                .. last.Select(_ => labels!.GetValueOrDefault(c.Cell)),
            ])]);
    }

    /// <summary>In the table "z-" for "-z": a spreadsheet would take a leading sign for a formula.</summary>
    private static string? Direction(string? sided) => sided is null ? null : sided[1..] + sided[0];

    private static string Headline(FitAnswer answer, FitCase fitCase)
    {
        if (answer.Parallel is int p)
            return $"{answer.Series}s{p}p fits: {answer.Used} of {answer.Cells.Count} places of {fitCase.CellName} are used";
        if (answer.Fits)
            return $"{answer.Cells.Count} places for {fitCase.CellName}";
        return $"{(fitCase.Series is int s ? $"{s} in series does" : "It does")} not fit: {answer.Cells.Count} places for {fitCase.CellName}";
    }

    private static void Masses(FitAnswer answer, FitCase fitCase, List<string> lines)
    {
        if (answer.CellMassKg is not double cells)
            return;
        string[] unplaced = [.. (fitCase.Parts ?? []).Where(part => part.Kg > 0 && part.At is null).Select(part => part.Name)];
        string centre = answer.CentreOfMass is PointMm m ? F($"; centre of mass x {m.X:0} y {m.Y:0} z {m.Z:0} mm")
            : unplaced.Length > 0 ? $"; centre of mass not known: it is not said where {string.Join(", ", unplaced)} {(unplaced.Length == 1 ? "sits" : "sit")}" : "";
        lines.Add(F($"  mass    {cells:0.00} kg of cells, {answer.PackMassKg:0.00} kg with the weighed parts{centre}"));
    }

    private static string F(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
