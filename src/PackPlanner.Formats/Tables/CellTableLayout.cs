namespace PackPlanner.Formats.Tables;

/// <summary>Where the heading of a table of cells stands, and what its columns are.</summary>
/// <param name="HeadingRow">Index of the heading among the rows; -1 where there is none.</param>
/// <param name="FirstRow">Index of the first row of data.</param>
/// <param name="Columns">All columns from the left.</param>
internal sealed record CellTableLayout(int HeadingRow, int FirstRow, IReadOnlyList<CellColumn> Columns)
{
    private const int RowsSearchedForHeading = 60;

    /// <summary>Finds the heading and names the columns.</summary>
    /// <param name="table">All rows.</param>
    /// <param name="choices">What the user said of single columns.</param>
    /// <param name="namesGroups">Without a heading, one column beside the labels is the group.</param>
    internal static CellTableLayout Of(TextTable table, ColumnChoices choices, bool namesGroups = false)
    {
        int heading = -1;
        double best = 0;
        for (int row = 0; row < Math.Min(table.Rows.Count, RowsSearchedForHeading); row++)
        {
            double score = HeadingScore(table.Rows[row]) + (3 * table.Rows[row].Fields.Count(field => choices.All.Any(choice => choice.Name.Equals(field, StringComparison.OrdinalIgnoreCase))));
            if (score > best)
                (heading, best) = (row, score);
        }

        if (heading < 0)
        {
            bool named = HeadlessCells.BeginsWithNames(table);
            CellColumn[] headless = HeadlessCells.Columns(table, named, namesGroups);
            Obey(headless, choices);
            return new CellTableLayout(named ? 0 : -1, named ? 1 : 0, headless);
        }

        int second = CellHeading.SecondRow(table, heading);
        if (second < 0 && CellHeading.IsUnitsBelowNames(table, heading))
            (heading, second) = (heading - 1, heading);
        string[] names = CellHeading.Names(table, heading, second);
        int last = Math.Max(heading, second);
        if (second > heading && second + 1 < table.Rows.Count && CellHeading.IsUnits(table.Rows[second + 1]))
        {
            // Names over names over units.
            last = second + 1;
            names = [.. names.Select((name, i) => FileUnit.FindInBrackets(table.Rows[last][i]) is null ? name : $"{name} [{FileUnit.WithoutBrackets(table.Rows[last][i])}]")];
        }

        CellColumn[] columns = [.. names.Select((name, index) => CellHeading.Understand(index, new HeadingWords(name)))];
        Obey(columns, choices);
        CellRivals.GiveEachRoleOnce(columns);
        NameLabels(table, last + 1, columns);
        return new CellTableLayout(heading, last + 1, columns);
    }

    /// <summary>The column read as this, null when there is none.</summary>
    internal CellColumn? this[ColumnRole role] => Columns.FirstOrDefault(column => column.Role == role);

    /// <summary>How many fields of a row are known names, less the figures among them.</summary>
    internal static double HeadingScore(TextRow row)
    {
        double score = 0;
        foreach (string field in row.Fields)
        {
            if (field.Length is 0 or > 80)
                continue;
            if (Figures.Split(field) is { Figure.Length: > 0 } split && (split.Tail.Length == 0 || FileUnit.Find(split.Tail) is not null))
            {
                score -= 2;
                continue;
            }

            CellColumn column = CellHeading.Understand(0, new HeadingWords(field));
            score += column.Role == ColumnRole.Unknown ? 0.1 : column.Fit >= 1000 ? 3 : 2;
        }

        return score < 2 ? 0 : score;
    }

    // What the user said holds, whatever the names and the figures say.
    private static void Obey(CellColumn[] columns, ColumnChoices choices)
    {
        foreach (CellColumn column in columns)
        {
            if (choices.For(column.Name, column.Index) is not { } choice)
                continue;
            column.SetBy = choices.SetBy;
            if (choice.Role is { } role)
            {
                foreach (CellColumn rival in columns.Where(rival => rival != column && rival.Role == role && role != ColumnRole.Unknown))
                    (rival.Role, rival.SetBy) = (ColumnRole.Unknown, $"{choices.SetBy}; \"{column.Name}\" is used");
                if (column.Unit is { } unit && unit.Of != ColumnNames.DimensionOf(role))
                    column.Unit = null;
                column.Role = role;
            }

            column.Unit = choice.InUnit ?? column.Unit;
        }
    }

    // No heading that is known names the cells: the first column does, when every row has another entry of letters in it.
    private static void NameLabels(TextTable table, int first, CellColumn[] columns)
    {
        if (columns.Length < 2 || columns[0].Role != ColumnRole.Unknown || columns[0].SetBy != "heading" || columns.Any(column => column.Role == ColumnRole.Label || (column.Role == ColumnRole.Slot && columns[0].Name.Length > 0)))
            return;
        string[] entries = [.. table.Rows.Skip(first).Where(row => !row.IsBlank).Take(500).Select(row => row[0])];
        if (entries.Length > 1 && entries.Distinct().Count() == entries.Length && entries.All(entry => entry.Length is > 0 and <= 24 && entry.Any(char.IsLetter)))
            (columns[0].Role, columns[0].SetBy) = (ColumnRole.Label, "values");
    }
}
