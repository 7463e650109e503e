using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;

namespace PackPlanner.Verbs;

/// <summary>Cells or groups as read from tables and judged for safety, for the verbs that join and balance.</summary>
internal sealed class BenchCells
{
    private readonly ScreenedLot lot;

    private BenchCells(GroupInput input, Chemistry? chemistry, ScreenedLot lot)
    {
        Name = input.Name;
        Account = input.Account ?? RowAccount.Nothing;
        Understood = input.Understood;
        Chemistry = chemistry;
        this.lot = lot;
        Cells = lot.Cells;
    }

    internal string Name { get; }

    internal RowAccount Account { get; }

    internal IReadOnlyList<string> Understood { get; private set; }

    internal Chemistry? Chemistry { get; }

    internal IReadOnlyList<ScreenedCell> Cells { get; private set; }

    /// <summary>Reads tables and judges their cells.</summary>
    internal static Outcome<BenchCells> Read(VerbCall call, IReadOnlyList<string> files, Chemistry? asked, double? ratedAh)
    {
        if (!GroupFiles.Open(call, files, asked, ratedAh).Is(out GroupInput? input, out Refusal? why))
            return why;
        return input.Case is null
            ? Judge(input, asked)
            : Refusal.Input("not-a-table", input.Name, "this is a JSON file, a table with resting volts was expected", "Give a table with a row for each cell.");
    }

    /// <summary>Judges the cells of tables that are open already.</summary>
    internal static Outcome<BenchCells> Judge(GroupInput input, Chemistry? asked)
    {
        if (!input.ChemistryOf(asked).Is(out ChemistryFound? found, out Refusal? why))
            return why;
        if (input.Rows.Count == 0)
            return Refusal.Input("no-rows", input.Name, "it holds no rows that could be used", "Give a table with a row for each cell or group.");
        return new BenchCells(input, found.Chemistry, LotScreening.Judge(input.Rows, new ScreeningRequest { Chemistry = found.Chemistry, OnlySafety = true }));
    }

    /// <summary>The cells in their parallel groups; one group 1 where the table numbers none.</summary>
    internal IReadOnlyList<(int Number, IReadOnlyList<ScreenedCell> Cells)> Groups()
    {
        ScreenedCell[] ungrouped = [.. Cells.Where(cell => Of(cell) is null)];
        // A table of groups has one row a number: there it is the groups that are joined.
        bool eachAlone = Cells.Where(cell => Of(cell) is not null).GroupBy(Of).All(group => group.Count() == 1);
        if (ungrouped.Length == Cells.Count || (ungrouped.Length == 0 && eachAlone))
            return [(1, Cells)];
        if (ungrouped.Length > 0)
            Understood = [.. Understood, LeftOut(ungrouped.Length)];
        return [.. Cells.Where(cell => Of(cell) is not null).GroupBy(cell => Of(cell)!.Value).OrderBy(group => group.Key).Select(group => (group.Key, (IReadOnlyList<ScreenedCell>)[.. group]))];
    }

    /// <summary>Leaves the cells without a group number out where others have one: a spare is no group, and of none.</summary>
    internal void LeaveUngroupedOut()
    {
        ScreenedCell[] grouped = [.. Cells.Where(cell => Of(cell) is not null)];
        if (grouped.Length == 0 || grouped.Length == Cells.Count)
            return;
        Understood = [.. Understood, LeftOut(Cells.Count - grouped.Length)];
        Cells = grouped;
    }

    /// <summary>The group that a cell's rows name; null where they name none.</summary>
    internal static int? Of(ScreenedCell cell) => cell.Rows.Select(row => row.Group).LastOrDefault(group => group is not null);

    private static string LeftOut(int cells) => cells == 1 ? "1 cell has no group number and is left out." : $"{cells} cells have no group number and are left out.";

    /// <summary>The cautions for which a cell may not be charged, and those of two chemistries.</summary>
    internal IEnumerable<Caution> SafetyCautions() =>
        lot.Cautions.Where(caution => SafetyHolds.Include(caution.Code) && caution.Signal != SignalWord.Notice || caution.Code == "caution-06");
}
