using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Tables;

/// <summary>Which columns fit, where they begin and how wide they are, from the rows in view.</summary>
internal static class ColumnLayout
{
    // Marks stand before the first column: cursor, mark, caution.
    private const int First = 5;
    private const int Gap = 2;
    private const int ShortLabel = 12;
    private const int LongLabel = 20;

    internal static IReadOnlyList<(int Index, int X, int Width)> Of(ListTable table, int width, ReadOnlySpan<int> rows, Look look)
    {
        int[] wants = new int[table.Columns.Count];
        List<int> shown = [];
        for (int i = 0; i < wants.Length; i++)
        {
            if (table.Seen.IsHidden(table.Columns[i]))
                continue;
            wants[i] = Wanted(table, i, rows, look);
            shown.Add(i);
        }

        // Long labels give way before a whole column does.
        if (First + shown.Sum(i => Least(table.Columns[i], wants[i]) + Gap) - Gap > width)
        {
            foreach (int i in shown.Where(i => table.Columns[i].CutsMiddle))
                wants[i] = Math.Min(wants[i], ShortLabel);
        }

        while (shown.Count > 1 && First + shown.Sum(i => Least(table.Columns[i], wants[i]) + Gap) - Gap > width)
            shown.Remove(shown.OrderByDescending(i => table.SortColumn == i ? 0 : table.Seen.RankOf(table.Columns[i])).ThenByDescending(i => i).First());
        int spare = width - First + Gap - shown.Sum(i => Least(table.Columns[i], wants[i]) + Gap);
        List<(int, int, int)> layout = [];
        int x = First;
        foreach (int i in shown)
        {
            int own = Least(table.Columns[i], wants[i]);
            if (table.Columns[i].Stretches)
                own += Math.Min(spare, Math.Max(0, wants[i] - own));
            layout.Add((i, x, Math.Min(own, Math.Max(1, width - x))));
            x += own + Gap;
        }

        return layout;
    }

    private static int Least(Column column, int wanted) => column.Stretches ? Math.Min(wanted, column.Least) : wanted;

    private static int Wanted(ListTable table, int index, ReadOnlySpan<int> rows, Look look)
    {
        Column column = table.Columns[index];
        // The arrow of the sorted column takes room; another column gives way for it, never that one.
        int widest = Math.Max(column.Least, TextWidth.Of(look.Of(column.Heading)) + (table.SortColumn == index ? 1 : 0));
        foreach (int row in rows)
            widest = Math.Max(widest, TextWidth.Of(look.Of((column.Drawn ?? column.Text)(row))));
        return column.CutsMiddle ? Math.Min(widest, LongLabel) : widest;
    }
}
