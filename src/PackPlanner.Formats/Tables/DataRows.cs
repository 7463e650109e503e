namespace PackPlanner.Formats.Tables;

/// <summary>Which rows of a table are cells; the others are set aside with their reason.</summary>
internal static class DataRows
{
    private const double TwoKnownNames = 4;

    internal static List<TextRow> Of(TextTable table, CellTableLayout layout, RowWidths widths, RowCounter counter)
    {
        List<TextRow> rows = [];
        CellColumn? label = layout[ColumnRole.Label];
        foreach (TextRow lost in UnderEarlierHeading(table, layout.HeadingRow))
            counter.SetAside(lost.Line, "a row under an earlier heading with fewer known columns");
        for (int i = layout.FirstRow; i < table.Rows.Count; i++)
        {
            TextRow row = table.Rows[i];
            string? reason = WhyNot(row, table, layout, label);
            if (reason is null)
                row = widths.Fitted(row, out reason);
            if (reason is not null)
                counter.SetAside(row.Line, reason);
            else
                rows.Add(row);
        }

        return rows;
    }

    // Of two tables below one another the one with the better heading is read; the cells of the one above are not passed over in silence.
    private static IEnumerable<TextRow> UnderEarlierHeading(TextTable table, int heading)
    {
        int earlier = table.Rows.Take(Math.Max(0, heading)).TakeWhile(row => CellTableLayout.HeadingScore(row) < TwoKnownNames).Count();
        return table.Rows.Take(Math.Max(0, heading)).Skip(earlier + 1).Where(row => row.Fields.Count(field => field.Length > 0) > 1
            && row.Fields.Any(field => Figures.Split(field).Figure.Length > 0) && CellTableLayout.HeadingScore(row) == 0);
    }

    private static string? WhyNot(TextRow row, TextTable table, CellTableLayout layout, CellColumn? label)
    {
        if (row.IsBlank)
            return "a blank row";
        if (row.Fields.All(field => field.Length != 1 && field.All(letter => letter is '-' or '=' or ':' or '+' or '_')))
            return "a ruled line, not a cell";
        if (layout.HeadingRow >= 0 && IsHeadingAgain(row, table.Rows[layout.HeadingRow]))
            return "the heading again";
        string first = row.Fields.First(field => field.Length > 0);
        string name = label is null ? first : row[label.Index];
        if (RowWords.IsTotal(name) || (name.Length == 0 && RowWords.IsTotal(first)))
            return "a row of totals or statistics, not a cell";
        int filled = row.Fields.Count(field => field.Length > 0);
        if (label is not null && name.Length == 0)
            return filled == 1 ? "a note, not a cell" : "no label in the row";
        if (filled == 1 && layout.Columns.Count > 2 && name.Count(letter => letter == ' ') > 1)
            return "a note, not a cell";
        return null;
    }

    private static bool IsHeadingAgain(TextRow row, TextRow heading)
    {
        int same = 0;
        int filled = 0;
        for (int i = 0; i < heading.Fields.Length; i++)
        {
            if (heading[i].Length == 0)
                continue;
            filled++;
            same += heading[i] == row[i] ? 1 : 0;
        }

        return same * 2 > filled;
    }
}
