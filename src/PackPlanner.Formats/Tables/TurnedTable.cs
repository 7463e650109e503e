namespace PackPlanner.Formats.Tables;

/// <summary>A table lying on its side: one column a cell, the names of the readings at the left.</summary>
internal static class TurnedTable
{
    private const int MostReadings = 20;

    internal static TableFormat Format { get; } = new("The table lies on its side, one column a cell; it is read turned. The line of a cell is that of the labels, and a reading that is left out is told with its own line.", OneRowACell);

    private static TextTable? OneRowACell(TextTable table)
    {
        if (table.Rows.Count is < 2 or > MostReadings || table.Rows.Any(row => row.Fields.Length < 4 || row.IsBlank))
            return null;
        bool named = Role(table.Rows[0][0]) is ColumnRole.Label;
        TextRow[] readings = [.. table.Rows.Skip(named ? 1 : 0)];
        if (!named || readings.Any(row => Role(row[0]) == ColumnRole.Unknown) || !readings.Any(row => IsReading(Role(row[0]))) || !readings.All(HoldsFigures))
            return null;
        // A heading over one cell that is called C1: the names of the readings stand in the first row already.
        if (table.Rows[0].Fields.Skip(1).Where(name => HeadingWords.Plain(name).Length > 2).Select(Role).Where(role => role is not (ColumnRole.Unknown or ColumnRole.Label)).Distinct().Count() > 1)
            return null;
        // C1, C2, C3 are labels, not three readings of one name.
        if (readings.Select(row => Role(row[0])).Distinct().Count() < readings.Length)
            return null;
        int width = table.Rows.Max(row => row.Fields.Length);
        // A row of the turned table stands in all lines: the cell's own is that of the labels, and each reading has its own.
        int[] lines = [.. table.Rows.Select(row => row.Line)];
        return table with
        {
            Rows = [.. Enumerable.Range(0, width).Select(at => new TextRow(table.Rows[0].Line, [.. table.Rows.Select(row => row[at])]) { Lines = lines }).Where(row => !row.IsBlank)],
        };
    }

    private static ColumnRole Role(string name)
    {
        HeadingWords words = new(name);
        return ColumnNames.RolesOf(words, words.Unit) is [var best, ..] ? best.Role : ColumnRole.Unknown;
    }

    private static bool IsReading(ColumnRole role) => ColumnNames.DimensionOf(role) is Dimension.Charge or Dimension.Resistance or Dimension.Voltage;

    private static bool HoldsFigures(TextRow row)
    {
        string[] filled = [.. row.Fields.Skip(1).Where(field => field.Length > 0)];
        return !IsReading(Role(row[0])) || filled.Count(field => Figures.Split(field).Figure.Length > 0) * 2 > filled.Length;
    }
}
