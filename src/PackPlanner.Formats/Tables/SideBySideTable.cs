namespace PackPlanner.Formats.Tables;

/// <summary>Several tables beside one another, to save paper: cell, mAh, cell, mAh.</summary>
internal static class SideBySideTable
{
    private const int RowsSearchedForHeading = 60;

    internal static TableFormat Format { get; } = new(
        "Several tables stand beside one another under the same headings; they are read one row a cell, from left to right.", OneRowACell);

    private static TextTable? OneRowACell(TextTable table)
    {
        for (int row = 0; row < Math.Min(table.Rows.Count, RowsSearchedForHeading); row++)
        {
            if (BlocksOf(table.Rows[row]) is not { } starts)
                continue;
            int width = starts[1] - starts[0];
            List<TextRow> rows = [.. table.Rows.Take(row), Block(table.Rows[row], starts[0], width)];
            foreach (TextRow below in table.Rows.Skip(row + 1))
            {
                TextRow[] blocks = [.. starts.Select(start => Block(below, start, width))];
                // A row that is blank altogether stays one row, for the account.
                rows.AddRange(below.IsBlank ? blocks.Take(1) : blocks.Where(block => !block.IsBlank));
            }

            return table with { Rows = rows };
        }

        return null;
    }

    // The names come again and again in the same order, and one of them names the cell.
    private static int[]? BlocksOf(TextRow heading)
    {
        string first = heading[0];
        if (first.Length == 0 || ColumnNames.RolesOf(new HeadingWords(first), null) is not [{ Role: ColumnRole.Label }, ..])
            return null;
        int[] starts = [.. Enumerable.Range(0, heading.Fields.Length).Where(at => heading[at].Equals(first, StringComparison.OrdinalIgnoreCase))];
        if (starts.Length < 2)
            return null;
        string[] names = Names(heading, starts[0], starts[1]);
        bool alike = starts.Select((start, i) => Names(heading, start, i + 1 < starts.Length ? starts[i + 1] : heading.Fields.Length))
            .All(block => block.SequenceEqual(names, StringComparer.OrdinalIgnoreCase));
        return alike && names.Length > 1 && starts.Skip(1).Select((start, i) => start - starts[i]).Distinct().Count() == 1 ? starts : null;
    }

    private static string[] Names(TextRow row, int from, int to) => [.. row.Fields[from..to].Reverse().SkipWhile(name => name.Length == 0).Reverse()];

    private static TextRow Block(TextRow row, int start, int width) => new(row.Line, [.. Enumerable.Range(start, width).Select(at => row[at])]);
}
