using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>The columns of the cell table.</summary>
internal static class CellColumns
{
    /// <summary>Which value of a cell a column changes; none for what is computed.</summary>
    internal static readonly IReadOnlyDictionary<string, CellField> Fields = new Dictionary<string, CellField>
    {
        ["Ah"] = CellField.CapacityAh,
        ["mΩ"] = CellField.ResistanceMilliohm,
        ["resting V"] = CellField.RestV,
        ["fresh V"] = CellField.LaterRestV,
        ["slot"] = CellField.Slot,
        ["tray"] = CellField.Tray,
        ["model"] = CellField.Model,
        ["batch"] = CellField.Batch,
        ["looks"] = CellField.Condition,
    };

    internal static IReadOnlyList<Column> Of(IReadOnlyList<ScreenedCell> cells, Look look)
    {
        int ahDecimals = cells.Any(cell => cell.CapacityAh >= 100) ? 1 : cells.Any(cell => cell.CapacityAh >= 20) ? 2 : 3;
        return
        [
            new("label", row => cells[row].Label, Rank: 0) { CutsMiddle = true },
            new("verdict", row => Word(cells[row].Verdict), Least: 7, Rank: 0) { InkOf = row => InkOf(cells[row].Verdict) },
            Figure("Ah", cells, cell => cell.CapacityAh, ahDecimals, look, rank: 0),
            new("% of rated", row => look.Percent(cells[row].HealthFraction, 1), row => cells[row].HealthFraction * 100, Rank: 3),
            Figure("mΩ", cells, cell => cell.ResistanceMilliohm, cells.Any(cell => cell.ResistanceMilliohm < 5) ? 2 : 1, look, rank: 1),
            Figure("resting V", cells, cell => cell.RestV, 3, look, rank: 2),
            new("mV/day", row => look.Figure(cells[row].SelfDischarge?.MillivoltPerDay, 1), row => cells[row].SelfDischarge?.MillivoltPerDay, Rank: 4),
            new("why", row => ReasonWords.Short(cells[row], look), Least: 16, Rank: 1) { Stretches = true },
            Figure("± Ah", cells, cell => cell.CapacitySpreadAh * NormalRange.NinetyPercent, 3, look, rank: 5) with { StartsHidden = true },
            new("tests", row => cells[row].CapacityTests.ToString(System.Globalization.CultureInfo.InvariantCulture), row => cells[row].CapacityTests, Rank: 6) { StartsHidden = true },
            Figure("fresh V", cells, FreshV, 3, look, rank: 5) with { StartsHidden = true },
            Words("slot", cells, cell => cell.Slot),
            Words("tray", cells, cell => cell.Tray),
            Words("model", cells, cell => cell.Model),
            Words("batch", cells, cell => cell.Batch),
            Words("looks", cells, cell => cell.Conditions.Count == 0 ? null : string.Join(", ", cell.Conditions)),
        ];
    }

    internal static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Use => "use",
        Verdict.Hold => "hold",
        _ => "reject",
    };

    internal static double? FreshV(ScreenedCell cell) => cell.Rows.Select(row => row.LaterRestV).LastOrDefault(volts => volts is not null);

    private static Ink InkOf(Verdict verdict) => verdict switch
    {
        Verdict.Use => Ink.Plain,
        Verdict.Hold => Ink.Bold,
        _ => Ink.Reverse,
    };

    private static Column Figure(string heading, IReadOnlyList<ScreenedCell> cells, Func<ScreenedCell, double?> of, int decimals, Look look, int rank) =>
        new(heading, row => look.Figure(of(cells[row]), decimals), row => of(cells[row]), Rank: rank);

    private static Column Words(string heading, IReadOnlyList<ScreenedCell> cells, Func<ScreenedCell, string?> of) =>
        new(heading, row => of(cells[row]) ?? "-", Rank: 7) { StartsHidden = true };
}
