namespace PackPlanner.Formats.Tables;

/// <summary>A way of laying out a lot on a sheet other than one row a cell.</summary>
/// <param name="Says">A sentence for the answer when a table is of this kind.</param>
/// <param name="OneRowACell">The same table with one row a cell below one heading, lines kept; null where the table is not of this kind.</param>
internal sealed record TableFormat(string Says, Func<TextTable, TextTable?> OneRowACell)
{
    /// <summary>All of them, one line each; the first that knows the table takes it.</summary>
    internal static IReadOnlyList<TableFormat> All { get; } =
    [
        SideBySideTable.Format,
        TurnedTable.Format,
        TestsInColumnsTable.Format,
    ];
}
