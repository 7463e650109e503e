namespace PackPlanner.Screens.Tables;

/// <summary>Which columns of a table the user wants to see, and which of those have room.</summary>
internal sealed class ColumnsShown
{
    private readonly HashSet<string> hidden;
    private readonly HashSet<string> asked = [];
    private readonly HashSet<string> roomless = [];
    private Func<IEnumerable<Column>>? lays;

    internal ColumnsShown(IEnumerable<Column> columns)
    {
        hidden = [.. columns.Where(column => column.StartsHidden).Select(column => column.Heading)];
    }

    internal bool IsHidden(Column column) => hidden.Contains(column.Heading);

    /// <summary>Wanted, and not in view because others took the room.</summary>
    internal bool LacksRoom(Column column) => !IsHidden(column) && roomless.Contains(column.Heading);

    /// <summary>The lowest ranks stay where there is not room for all; what was asked for by hand stays before what is there by itself.</summary>
    internal int RankOf(Column column) => asked.Contains(column.Heading) ? 0 : column.Rank;

    /// <summary>Shows a column, or hides it; the last one stays.</summary>
    internal void Toggle(Column column, IReadOnlyList<Column> all)
    {
        if (hidden.Remove(column.Heading))
        {
            asked.Add(column.Heading);
        }
        else if (all.Count(other => !IsHidden(other)) > 1)
        {
            hidden.Add(column.Heading);
            asked.Remove(column.Heading);
        }

        if (lays is not null)
            DrawnAre(lays(), all, lays);
    }

    /// <summary>Told at each drawing, which alone knows the width.</summary>
    /// <param name="drawn">The columns that have room.</param>
    /// <param name="all">The columns of the table.</param>
    /// <param name="again">Which have room after another choice: the table itself may not be drawn while the list of columns lies over it.</param>
    internal void DrawnAre(IEnumerable<Column> drawn, IEnumerable<Column> all, Func<IEnumerable<Column>> again)
    {
        lays = again;
        roomless.Clear();
        roomless.UnionWith(all.Select(column => column.Heading));
        roomless.ExceptWith(drawn.Select(column => column.Heading));
    }
}
