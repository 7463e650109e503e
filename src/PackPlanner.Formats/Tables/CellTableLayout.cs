namespace PackPlanner.Formats.Tables;

/// <summary>Where the heading of a table of cells stands, and what its columns are.</summary>
/// <param name="HeadingRow">Index of the heading among the rows; -1 where there is none.</param>
/// <param name="FirstRow">Index of the first row of data.</param>
/// <param name="Columns">All columns from the left.</param>
internal sealed record CellTableLayout(int HeadingRow, int FirstRow, IReadOnlyList<CellColumn> Columns)
{
    private const int RowsSearchedForHeading = 60;

    // Roles that a table of cells can have; the others belong to logs.
    private static readonly HashSet<ColumnRole> CellRoles =
    [
        ColumnRole.Label, ColumnRole.Slot, ColumnRole.Tray, ColumnRole.Model, ColumnRole.Batch, ColumnRole.Chemistry,
        ColumnRole.Condition, ColumnRole.Remark, ColumnRole.Group, ColumnRole.Date, ColumnRole.LaterDate, ColumnRole.Time, ColumnRole.Duration,
        ColumnRole.Capacity, ColumnRole.DischargeCapacity, ColumnRole.ChargeCapacity, ColumnRole.OtherCharge, ColumnRole.RatedCapacity,
        ColumnRole.Health, ColumnRole.Resistance, ColumnRole.DcResistance, ColumnRole.AcResistance, ColumnRole.ResistanceKind,
        ColumnRole.Voltage, ColumnRole.RestVoltage, ColumnRole.LaterRestVoltage, ColumnRole.StartVoltage, ColumnRole.EndVoltage,
        ColumnRole.CutoffVoltage, ColumnRole.SelfDischarge, ColumnRole.Current, ColumnRole.Mass, ColumnRole.Temperature,
        ColumnRole.StateOfCharge, ColumnRole.ChargeOffset, ColumnRole.Energy, ColumnRole.Mode, ColumnRole.Cycle, ColumnRole.Step, ColumnRole.MeanVoltage,
        ColumnRole.MaxVoltage, ColumnRole.MinVoltage, ColumnRole.VoltageSpread, ColumnRole.Power,
    ];

    /// <summary>Finds the heading and names the columns.</summary>
    /// <param name="table">All rows.</param>
    /// <param name="choices">What the user said of single columns.</param>
    internal static CellTableLayout Of(TextTable table, ColumnChoices choices)
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
            CellColumn[] headless = HeadlessCells.Columns(table, named);
            Obey(headless, choices);
            return new CellTableLayout(named ? 0 : -1, named ? 1 : 0, headless);
        }

        int second = SecondHeadingRow(table, heading);
        if (second < 0 && IsUnitsBelowNames(table, heading))
            (heading, second) = (heading - 1, heading);
        string[] names = Names(table, heading, second);
        int last = Math.Max(heading, second);
        if (second > heading && second + 1 < table.Rows.Count && IsUnits(table.Rows[second + 1]))
        {
            // Names over names over units.
            last = second + 1;
            names = [.. names.Select((name, i) => FileUnit.Find(table.Rows[last][i].Trim('(', ')', '[', ']')) is null ? name : $"{name} [{table.Rows[last][i].Trim('(', ')', '[', ']')}]")];
        }

        CellColumn[] columns = [.. names.Select((name, index) => Understand(index, new HeadingWords(name)))];
        Obey(columns, choices);
        GiveEachRoleOnce(columns);
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

            CellColumn column = Understand(0, new HeadingWords(field));
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

    private static CellColumn Understand(int index, HeadingWords heading)
    {
        CellColumn column = new(index, heading) { Unit = heading.Unit };
        if (heading.Raw is "#" or "№")
        {
            (column.Role, column.Fit) = (ColumnRole.Label, 1000);
            return column;
        }

        (ColumnRole role, int fit) = BestRole(heading, heading.Unit);
        if (role == ColumnRole.Unknown && heading.Unit is not null && !heading.UnitIsCertain)
        {
            // A last word that looks like a unit but names nothing of that quantity is a word: "group A".
            (role, fit) = BestRole(heading, null);
            column.Unit = null;
        }
        else if (role == ColumnRole.Unknown && heading.Unit is { } unit)
        {
            (role, fit) = (Refine(RoleOfUnit(unit.Of), heading), 20);
        }

        column.Role = role;
        column.Fit = fit;
        return column;
    }

    private static (ColumnRole Role, int Fit) BestRole(HeadingWords heading, FileUnit? unit)
    {
        foreach ((ColumnRole role, int fit) in ColumnNames.RolesOf(heading, unit))
            if (CellRoles.Contains(role))
                return (Refine(role, heading), fit);
        return (ColumnRole.Unknown, 0);
    }

    // "r5s_discharge_mohm" and "IR after 5 s" are pulse resistances; "capacity (discharge)" is the discharge one.
    private static ColumnRole Refine(ColumnRole role, HeadingWords heading) => role switch
    {
        ColumnRole.Resistance when ResistanceHeading.IsAc(heading.Raw) => ColumnRole.AcResistance,
        ColumnRole.Resistance when ResistanceHeading.IsDc(heading.Raw) => ColumnRole.DcResistance,
        ColumnRole.Capacity when IsDischarge(heading) => ColumnRole.DischargeCapacity,
        ColumnRole.Capacity when IsCharge(heading) => ColumnRole.ChargeCapacity,
        _ => role,
    };

    private static bool IsDischarge(HeadingWords heading) =>
        heading.Has("discharge") || heading.Has("dch") || heading.Has("dchg") || heading.Has("dis") || heading.Has("entlade") || heading.Has("entladen")
        || heading.Has("decharge") || heading.Has("descarga") || heading.Has("scarica") || heading.Has("ontlaad") || heading.Has("rozladowania") || heading.Raw.Contains("放电", StringComparison.Ordinal);

    private static bool IsCharge(HeadingWords heading) =>
        heading.Has("charge") || heading.Has("chg") || heading.Has("laden") || heading.Has("carga") || heading.Has("carica") || heading.Has("ladowania")
        || heading.Raw.Contains("充电", StringComparison.Ordinal);

    private static ColumnRole RoleOfUnit(Dimension of) => of switch
    {
        Dimension.Charge => ColumnRole.Capacity,
        Dimension.Voltage => ColumnRole.Voltage,
        Dimension.Current => ColumnRole.Current,
        Dimension.Resistance => ColumnRole.Resistance,
        Dimension.Temperature => ColumnRole.Temperature,
        Dimension.Energy => ColumnRole.Energy,
        Dimension.Power => ColumnRole.Power,
        Dimension.Time => ColumnRole.Duration,
        Dimension.Mass => ColumnRole.Mass,
        Dimension.VoltageRate => ColumnRole.SelfDischarge,
        _ => ColumnRole.Unknown,
    };

    // The row below the heading belongs to it when it holds units or further words and no figure.
    private static int SecondHeadingRow(TextTable table, int heading)
    {
        int next = heading + 1;
        if (next >= table.Rows.Count)
            return -1;
        string[] fields = [.. table.Rows[next].Fields.Where(field => field.Length > 0)];
        if (fields.Length == 0 || fields.Any(field => Figures.Split(field).Figure.Length > 0 && FileUnit.Find(field) is null))
            return -1;
        int known = fields.Count(field => FileUnit.Find(field.Trim('(', ')', '[', ']')) is not null || Understand(0, new HeadingWords(field)).Fit >= 1000);
        return known * 2 >= fields.Length && known > 0 ? next : -1;
    }

    private static bool IsUnits(TextRow row)
    {
        string[] filled = [.. row.Fields.Where(field => field.Length > 0)];
        return filled.Length > 1 && filled.All(field => FileUnit.Find(field.Trim('(', ')', '[', ']')) is not null);
    }

    // Names that are not known, such as short forms, above a row of units that are: the units alone looked like the heading.
    private static bool IsUnitsBelowNames(TextTable table, int heading)
    {
        if (heading == 0)
            return false;
        string[] units = [.. table.Rows[heading].Fields.Where(field => field.Length > 0)];
        string[] above = [.. table.Rows[heading - 1].Fields.Where(field => field.Length > 0)];
        return units.Length > 1 && above.Length >= units.Length
            && units.All(field => FileUnit.Find(field.Trim('(', ')', '[', ']')) is not null)
            && above.All(field => Figures.Split(field).Figure.Length == 0);
    }

    private static string[] Names(TextTable table, int heading, int second)
    {
        TextRow top = table.Rows[heading];
        if (second < 0)
            return top.Fields;
        TextRow below = table.Rows[second];
        string[] names = new string[Math.Max(top.Fields.Length, below.Fields.Length)];
        string over = "";
        for (int i = 0; i < names.Length; i++)
        {
            over = top[i].Length > 0 ? top[i] : over;
            string under = below[i];
            bool unit = FileUnit.Find(under.Trim('(', ')', '[', ']')) is not null;
            names[i] = under.Length == 0 ? top[i] : unit ? $"{over} [{under.Trim('(', ')', '[', ']')}]" : $"{over} {under}".Trim();
        }

        return names;
    }

    // Of two columns with the same role the better name wins; the other is not used, except a second resting voltage or date.
    private static void GiveEachRoleOnce(CellColumn[] columns)
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
}
