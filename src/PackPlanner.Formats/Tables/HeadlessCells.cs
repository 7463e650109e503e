namespace PackPlanner.Formats.Tables;

/// <summary>Names the columns of a table of cells that has no heading, from how they behave.</summary>
internal static class HeadlessCells
{
    /// <summary>Why a column has no meaning that can be mAh or resting mV.</summary>
    internal const string Unsettled = "values, which can be mAh or mV";

    private const int RowsForSpread = 3;

    /// <summary>Labels are the first column whose entries differ; figures are told by their size.</summary>
    /// <param name="table">All rows.</param>
    /// <param name="namesGroups">One column beside the labels is the group.</param>
    /// <param name="heading">Names that are not known stand in the first row; they are kept, and the row is no cell.</param>
    internal static CellColumn[] Columns(TextTable table, bool heading, bool namesGroups)
    {
        int width = table.Rows.Count == 0 ? 0 : table.Rows.GroupBy(row => row.Fields.Length).OrderByDescending(group => group.Count()).First().Key;
        CellColumn[] columns = [.. Enumerable.Range(0, width).Select(index => new CellColumn(index, new HeadingWords(heading ? table.Rows[0][index] : "")) { SetBy = "values" })];
        TextRow[] rows = [.. table.Rows.Skip(heading ? 1 : 0).Take(500)];
        CellColumn? label = Array.Find(columns, column => IsLabel(rows, column.Index));
        if (label is null)
            return columns;
        label.Role = ColumnRole.Label;
        if (namesGroups && columns.Length == 2)
        {
            columns.Single(column => column != label).Role = ColumnRole.Group;
            return columns;
        }

        TellMillivolts(rows, [.. columns.Where(column => column != label)]);
        foreach (CellColumn column in columns)
            if (column != label && column.Role == ColumnRole.Unknown && column.SetBy != Unsettled)
                column.Role = RoleOf(rows, column.Index, columns);
        if (HeadlessResistance.Find(columns, index => [.. rows.Select(row => Size(row[index]))]) is { } resistance)
            resistance.Role = ColumnRole.Resistance;
        return columns;
    }

    // Of several columns whose size is that of mAh, one can be resting mV: those of a lot lie much closer together than its capacities.
    private static void TellMillivolts(TextRow[] rows, CellColumn[] columns)
    {
        (CellColumn Column, double[] Figures)[] large = [.. columns.Select(column => (column, Sorted(rows, column.Index)))
            .Where(one => one.Item2.Length * 2 >= rows.Length && one.Item2.Length > 0 && one.Item2[one.Item2.Length / 2] is > 400 and < 20000)];
        (CellColumn Column, double[] Figures)[] volts = [.. large.Where(one => one.Figures[0] >= 2500 && one.Figures[^1] <= 4300).OrderBy(one => Spread(one.Figures))];
        if (large.Length < 2 || volts.Length == 0)
            return;
        if (volts[0].Figures.Length >= RowsForSpread && Spread(volts[0].Figures) < 0.03 && large.All(other => other.Column == volts[0].Column || Spread(other.Figures) > 3 * Spread(volts[0].Figures)))
            volts[0].Column.Role = ColumnRole.RestVoltage;
        else
            foreach ((CellColumn column, double[] _) in large)
                column.SetBy = Unsettled;
    }

    private static double Spread(double[] sorted) => (sorted[^1] - sorted[0]) / sorted[sorted.Length / 2];

    private static double[] Sorted(TextRow[] rows, int index) => [.. rows.Select(row => Size(row[index])).Where(size => !double.IsNaN(size)).Order()];

    /// <summary>The first row has words alone where the rows below it have figures.</summary>
    internal static bool BeginsWithNames(TextTable table)
    {
        if (table.Rows.Count < 3 || table.Rows[0].Fields.Any(field => field.Any(char.IsAsciiDigit)))
            return false;
        TextRow[] below = [.. table.Rows.Skip(1).Take(500)];
        return Enumerable.Range(0, table.Rows[0].Fields.Length).Any(index => table.Rows[0][index].Length > 0 && below.Count(row => !double.IsNaN(Size(row[index]))) * 2 > below.Length);
    }

    private static bool IsLabel(TextRow[] rows, int index)
    {
        string[] entries = [.. rows.Select(row => row[index]).Where(entry => entry.Length > 0)];
        return entries.Length > rows.Length / 2 && entries.Distinct().Count() > entries.Length * 0.6
            && entries.Count(entry => Figures.Split(entry) is { Figure.Length: > 0 } split && split.Figure.AsSpan().IndexOfAny(".,") >= 0 && split.Tail.Length == 0) < entries.Length / 2;
    }

    private static ColumnRole RoleOf(TextRow[] rows, int index, CellColumn[] columns)
    {
        string[] units = [.. rows.Select(row => Figures.Split(row[index])).Where(split => split.Figure.Length > 0 && split.Tail.Length > 0).Select(split => split.Tail).Distinct()];
        if (units.Length > 0 && FileUnit.Find(units[0]) is { } unit)
            return Free(unit.Of switch
            {
                Dimension.Charge => ColumnRole.Capacity,
                Dimension.Resistance => ColumnRole.Resistance,
                Dimension.Voltage => ColumnRole.RestVoltage,
                Dimension.Mass => ColumnRole.Mass,
                _ => ColumnRole.Unknown,
            }, columns);
        double[] figures = Sorted(rows, index);
        if (figures.Length * 2 < rows.Length)
            return ColumnRole.Unknown;
        double middle = figures[figures.Length / 2];
        // Whole thousands are mAh; 2.5 to 4.25 with a narrow spread are resting volts where a capacity stands already.
        bool volts = middle is > 2.4 and < 4.4 && figures[^1] < 4.6;
        if (middle is > 400 and < 20000)
            return Free(ColumnRole.Capacity, columns);
        if (volts && columns.Any(column => column.Role == ColumnRole.Capacity))
            return Free(ColumnRole.RestVoltage, columns);
        return ColumnRole.Unknown;
    }

    private static ColumnRole Free(ColumnRole role, CellColumn[] columns) => columns.Any(column => column.Role == role) ? ColumnRole.Unknown : role;

    // A rough size: a single mark counts as the decimal one.
    private static double Size(string entry)
    {
        (string figure, string rest) = Figures.Split(entry);
        return rest.Length == 0 && Figures.TryRead(figure.Replace(',', '.'), DecimalMark.Point, out double value, out _) ? value : double.NaN;
    }
}
