using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens;

/// <summary>The keys that every table has: find, filter, sort, marks, columns.</summary>
internal static class TableKeys
{
    internal static IReadOnlyList<KeyAction> Of(Desk desk, ListTable table) =>
    [
        new(KeyBook.Find, "find", "finds the next row with the words you type", () => WhyEmpty(table), () => AskFind(desk, table)),
        new(KeyBook.Filter, "filter", $"shows only rows that meet a condition, such as {Example(table)}", () => AskFilter(desk, table)),
        new(KeyBook.Sort, "sort", $"sorts by {Active(table)}, the column chosen with left and right", () => Sort(desk, table, descending: false)),
        new(KeyBook.SortBack, "", $"sorts by {Active(table)}, the largest first", () => Sort(desk, table, descending: true)),
        new(KeyBook.FindNext, "", "goes to the next row found", () => WhyNotNext(table), () => Next(desk, table, 1)),
        new(KeyBook.FindBefore, "", "goes to the row found before", () => WhyNotNext(table), () => Next(desk, table, -1)),
        new(KeyBook.Mark, "", "marks the row, or takes the mark away", () => WhyEmpty(table), table.Mark),
        new(KeyBook.MarkAll, "", "marks all rows shown, or none", () => WhyEmpty(table), table.MarkShown),
        new(KeyBook.Columns, "", "chooses the columns", () => AskColumns(desk, table)),
    ];

    // Of columns that this table has.
    private static string Example(ListTable table) => table.Columns.Any(column => column.Heading == "verdict") ? "Ah<4.1 verdict=hold"
        : table.Columns.FirstOrDefault(column => column.Number is not null && !column.Heading.Contains(' ', StringComparison.Ordinal)) is { } figures ? $"{figures.Heading}>2" : "a word of its rows";

    private static string Active(ListTable table) => table.Columns[table.ActiveColumn].Heading;

    private static string? WhyEmpty(ListTable table) => table.Shown == 0 ? "no row is shown" : null;

    private static string? WhyNotNext(ListTable table) => table.Sought.Length == 0 ? "nothing was looked for yet; / looks" : WhyEmpty(table);

    private static void AskFind(Desk desk, ListTable table) => desk.Show(new FieldOverlay(
        desk, "find", "A part of any column; n goes to the next, N to the one before.", "", _ => null,
        words =>
        {
            if (!table.Find(words.Trim(), fromHere: true))
                desk.Says = $"No row has \"{words.Trim()}\" in any column.";
        }));

    private static void AskFilter(Desk desk, ListTable table) => desk.Show(new FieldOverlay(
        desk, "show only", $"Such as {Example(table)}; empty shows all. Columns: {string.Join(", ", table.Columns.Select(c => c.Heading))}",
        table.Condition,
        text => RowCondition.Read(text, table.Columns, out _, table.Count),
        text =>
        {
            table.Filter(text);
            desk.Says = $"{table.Shown} of {table.Count} shown";
        }));

    private static void Sort(Desk desk, ListTable table, bool descending)
    {
        table.Sort(table.ActiveColumn, descending);
        desk.Says = $"sorted by {Active(table)}, {(descending ? "largest" : "smallest")} first; equal rows keep their order";
    }

    private static void Next(Desk desk, ListTable table, int direction)
    {
        if (!table.Find(table.Sought, direction))
            desk.Says = $"No row has \"{table.Sought}\" in any column.";
    }

    private static void AskColumns(Desk desk, ListTable table) => desk.Show(new ListOverlay(
        desk, "columns shown", () => [.. table.Columns.Select(column => new ListItem(
            $"[{(table.Seen.IsHidden(column) ? " " : "x")}] {column.Heading}", table.Seen.LacksRoom(column) ? "no room" : "", () => table.Seen.Toggle(column, table.Columns)))], staysOpen: true));
}
