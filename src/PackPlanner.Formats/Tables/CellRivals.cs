namespace PackPlanner.Formats.Tables;

/// <summary>Settles which of several columns of one meaning is used.</summary>
internal static class CellRivals
{
    /// <summary>Leaves each meaning to one column.</summary>
    // Of two columns with the same role the better name wins; the other is not used, except a second resting voltage or date.
    internal static void GiveEachRoleOnce(CellColumn[] columns)
    {
        int dates = columns.Count(column => column.Role == ColumnRole.Date);
        foreach (IGrouping<ColumnRole, CellColumn> same in columns.Where(column => column.Role != ColumnRole.Unknown).GroupBy(column => column.Role).ToArray())
        {
            CellColumn[] rivals = [.. same.OrderByDescending(column => Preference(column)).ThenByDescending(column => column.Fit).ThenBy(column => column.Index)];
            if (rivals.Length < 2)
                continue;
            foreach (CellColumn loser in rivals.Skip(1))
            {
                loser.SetBy = $"heading; \"{rivals[0].Name}\" is used";
                loser.Role = ColumnRole.Unknown;
            }

            // Two columns of bare volts with two dates are two dated resting readings.
            if (same.Key is ColumnRole.RestVoltage or ColumnRole.Date || (same.Key == ColumnRole.Voltage && dates > 1))
            {
                CellColumn[] inOrder = [.. rivals.Take(2).OrderBy(column => column.Index)];
                (inOrder[0].Role, inOrder[1].Role) = same.Key == ColumnRole.Date ? (ColumnRole.Date, ColumnRole.LaterDate) : (ColumnRole.RestVoltage, ColumnRole.LaterRestVoltage);
                inOrder[0].SetBy = inOrder[1].SetBy = "heading";
            }
        }
    }

    // Of a pulse resistance on charge and one on discharge the second is the one that a load meets.
    private static int Preference(CellColumn column) =>
        column.Role is ColumnRole.DcResistance or ColumnRole.Resistance && column.Heading.Raw.Contains("charge", StringComparison.OrdinalIgnoreCase)
            ? IsDischarge(column.Heading) ? 1 : -1
            // A running number beside an identity is the list's, not the cell's.
            : column.Role == ColumnRole.Label && column.Heading.Joined is "no" or "nr" or "number" or "nummer" or "numero" or "numer" or "序号" ? -1
            : 0;

    /// <summary>The name speaks of discharge.</summary>
    internal static bool IsDischarge(HeadingWords heading) =>
        heading.Has("discharge") || heading.Has("dch") || heading.Has("dchg") || heading.Has("dis") || heading.Has("entlade") || heading.Has("entladen")
        || heading.Has("decharge") || heading.Has("descarga") || heading.Has("scarica") || heading.Has("ontlaad") || heading.Has("rozladowania") || heading.Raw.Contains("放电", StringComparison.Ordinal);

    /// <summary>The name speaks of charge.</summary>
    internal static bool IsCharge(HeadingWords heading) =>
        heading.Has("charge") || heading.Has("chg") || heading.Has("laden") || heading.Has("carga") || heading.Has("carica") || heading.Has("ladowania")
        || heading.Raw.Contains("充电", StringComparison.Ordinal);
}
