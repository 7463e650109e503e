namespace PackPlanner.Formats.Tables;

/// <summary>Several tests of a cell in numbered columns of one row: test 1 (mAh), test 2 (mAh).</summary>
internal static class TestsInColumnsTable
{
    private static readonly string[] Words =
        ["test", "run", "cycle", "try", "measurement", "capacity", "cap", "messung", "lauf", "zyklus", "kapazitat", "kap", "essai", "mesure", "cycle", "capacite", "prueba", "ciclo", "capacidad", "prova", "capacita", "meting", "capaciteit", "pomiar", "cykl", "pojemnosc", "容量", "测试", "循环"];

    internal static TableFormat Format { get; } = new("The tests of a cell stand in columns beside one another; each is kept as a repeat of that cell.", OneRowACell);

    private static TextTable? OneRowACell(TextTable table)
    {
        CellTableLayout layout = CellTableLayout.Of(table, ColumnChoices.None);
        if (layout.HeadingRow < 0 || layout.FirstRow != layout.HeadingRow + 1 || layout[ColumnRole.Label] is null)
            return null;
        CellColumn[]? tests = layout.Columns.Where(IsTest).GroupBy(column => (column.Heading.Family, column.Unit))
            .Select(family => family.OrderBy(column => column.Heading.Number).ToArray())
            .FirstOrDefault(family => family.Length > 1 && family.Select((column, i) => column.Heading.Number == i + 1).All(next => next));
        if (tests is null)
            return null;
        int[] others = [.. tests.Skip(1).Select(column => column.Index)];
        List<TextRow> rows = [];
        for (int i = 0; i < table.Rows.Count; i++)
        {
            TextRow row = table.Rows[i];
            rows.Add(Without(row, others));
            if (i >= layout.FirstRow)
                rows.AddRange(others.Where(other => row[other].Length > 0).Select(other => Without(Put(row, tests[0].Index, row[other]), others)));
        }

        // "Test 1 (mAh)" alone would be a test, not a capacity; its unit is what is read.
        return table with { Rows = rows };
    }

    private static bool IsTest(CellColumn column) =>
        column.Heading is { Numbers: [_], Unit: null or { Of: Dimension.Charge } } && Words.Any(column.Heading.Has)
        && (column.Heading.Unit is not null || column.Role is ColumnRole.Capacity or ColumnRole.DischargeCapacity || column.SetBy.Contains("is used", StringComparison.Ordinal));

    private static TextRow Put(TextRow row, int at, string field) => row with { Fields = [.. row.Fields.Select((own, i) => i == at ? field : own)] };

    private static TextRow Without(TextRow row, int[] columns) => row with { Fields = [.. row.Fields.Where((_, i) => !columns.Contains(i))] };
}
