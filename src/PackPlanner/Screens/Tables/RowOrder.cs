namespace PackPlanner.Screens.Tables;

/// <summary>Stable orders of rows by a column; rows without a figure come last either way.</summary>
internal static class RowOrder
{
    internal static IEnumerable<int> By(IEnumerable<int> rows, Column column, bool descending)
    {
        if (column.Number is { } number)
        {
            IOrderedEnumerable<int> known = rows.OrderBy(row => number(row) is null);
            return descending ? known.ThenByDescending(number) : known.ThenBy(number);
        }

        return descending
            ? rows.OrderByDescending(column.Text, NaturalOrder.Instance)
            : rows.OrderBy(column.Text, NaturalOrder.Instance);
    }
}
