namespace PackPlanner.Formats.Tables;

/// <summary>A heading in several rows, as a spreadsheet writes merged cells: a name stands in the first of the columns that it stands over.</summary>
internal static class MergedHeading
{
    /// <summary>Said where rows were joined.</summary>
    internal const string Says = "The heading stands in several rows; they are read as one.";

    /// <summary>The same table with one row of names.</summary>
    /// <param name="table">All rows.</param>
    /// <returns>Null where the row above the heading does not name columns that the heading leaves empty.</returns>
    internal static TextTable? Joined(TextTable table)
    {
        int lower = CellTableLayout.Of(table, ColumnChoices.None).HeadingRow;
        if (lower < 1 || !Completes(table.Rows[lower - 1], table.Rows[lower]))
            return null;
        string[] names = Names(table.Rows[lower - 1], table.Rows[lower]);
        bool units = lower + 1 < table.Rows.Count && CellHeading.IsUnits(table.Rows[lower + 1]);
        if (units)
            names = [.. names.Select((name, i) => table.Rows[lower + 1][i] is { Length: > 0 } unit ? $"{name} [{FileUnit.WithoutBrackets(unit)}]" : name)];
        return table with
        {
            Rows = [.. table.Rows.Take(lower - 1), table.Rows[lower] with { Fields = names }, .. table.Rows.Skip(units ? lower + 2 : lower + 1)],
        };
    }

    // What stands above a whole heading, such as who tested what, names no column.
    private static bool Completes(TextRow upper, TextRow lower) =>
        upper.Fields.Count(field => field.Length > 0) > 1
        && upper.Fields.All(field => Figures.Split(field).Figure.Length == 0)
        && Enumerable.Range(0, upper.Fields.Length).Any(i => lower[i].Length == 0 && RoleOf(upper[i]) != ColumnRole.Unknown);

    private static string[] Names(TextRow upper, TextRow lower)
    {
        string[] names = new string[Math.Max(upper.Fields.Length, lower.Fields.Length)];
        string over = "";
        for (int i = 0; i < names.Length; i++)
        {
            over = upper[i].Length > 0 ? upper[i] : over;
            string under = lower[i];
            names[i] = under.Length == 0 ? upper[i]
                : FileUnit.FindInBrackets(under) is not null ? $"{over} [{FileUnit.WithoutBrackets(under)}]"
                : upper[i].Length == 0 && AreApart(over, under) ? under
                : $"{over} {under}".Trim();
        }

        return names;
    }

    // Two things that are known by themselves: the name above ended before this column.
    private static bool AreApart(string over, string under) =>
        RoleOf(over) is var above && RoleOf(under) is var below && above != ColumnRole.Unknown && below != ColumnRole.Unknown
        && ColumnNames.DimensionOf(above) != ColumnNames.DimensionOf(below);

    private static ColumnRole RoleOf(string name) => name.Length == 0 ? ColumnRole.Unknown : CellHeading.Understand(0, new HeadingWords(name)).Role;
}
