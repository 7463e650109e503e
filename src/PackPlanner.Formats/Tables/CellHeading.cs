namespace PackPlanner.Formats.Tables;

/// <summary>What the heading of a table of cells says: the meaning of one name, and names that stand in two rows.</summary>
internal static class CellHeading
{
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

    /// <summary>What a column is by its name alone.</summary>
    internal static CellColumn Understand(int index, HeadingWords heading)
    {
        CellColumn column = new(index, heading) { Unit = heading.Unit };
        if (heading.Raw is "#" or "№")
        {
            (column.Role, column.Fit) = (ColumnRole.Label, 1000);
            return column;
        }

        (ColumnRole role, int fit) = BestRole(heading, heading.Unit);
        if (SelfDischargeHeading.Of(index, heading, BestRole(heading, null), role) is { } loss)
            return loss;
        // "offset_percent" says in points of charge how far a group is from the others.
        if (role == ColumnRole.Unknown && heading.Unit is { Of: Dimension.Share } && BestRole(heading, null).Role == ColumnRole.ChargeOffset)
        {
            (column.Role, column.Fit) = (ColumnRole.StateOfCharge, 20);
            return column;
        }

        // A capacity in per cent is a share of the rated one, and no ampere-hours.
        if (role == ColumnRole.Unknown && heading.Unit is { Of: Dimension.Share } && BestRole(heading, null).Role is ColumnRole.Capacity or ColumnRole.DischargeCapacity)
        {
            (role, fit) = (ColumnRole.Health, 20);
        }
        else if (role == ColumnRole.Unknown && heading.Unit is not null && !heading.UnitIsCertain)
        {
            // A last word that looks like a unit but names nothing of that quantity is a word: "group A".
            (role, fit) = BestRole(heading, null);
            column.Unit = null;
        }
        else if (role == ColumnRole.Unknown && heading.Unit is { } unit)
        {
            (role, fit) = (Refine(RoleOfUnit(unit.Of), heading), 20);
        }

        if (!DerivedHeading.Is(heading, role))
            (column.Role, column.Fit) = (role, fit);
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
        ColumnRole.Capacity when CellRivals.IsDischarge(heading) => ColumnRole.DischargeCapacity,
        ColumnRole.Capacity when CellRivals.IsCharge(heading) => ColumnRole.ChargeCapacity,
        _ => role,
    };

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

    /// <summary>The row below the heading that belongs to it; -1 where there is none.</summary>
    // The row below the heading belongs to it when it holds units or further words and no figure.
    internal static int SecondRow(TextTable table, int heading)
    {
        int next = heading + 1;
        if (next >= table.Rows.Count)
            return -1;
        string[] fields = [.. table.Rows[next].Fields.Where(field => field.Length > 0)];
        if (fields.Length == 0 || fields.Any(field => Figures.Split(field).Figure.Length > 0 && FileUnit.Find(field) is null))
            return -1;
        int known = fields.Count(field => FileUnit.FindInBrackets(field) is not null || Understand(0, new HeadingWords(field)).Fit >= 1000);
        return known * 2 >= fields.Length && known > 0 ? next : -1;
    }

    /// <summary>The row holds units alone.</summary>
    internal static bool IsUnits(TextRow row)
    {
        string[] filled = [.. row.Fields.Where(field => field.Length > 0)];
        return filled.Length > 1 && filled.All(field => FileUnit.FindInBrackets(field) is not null);
    }

    /// <summary>What was taken for the heading is the row of units below it.</summary>
    // Names that are not known, such as short forms, above a row of units that are: the units alone looked like the heading.
    internal static bool IsUnitsBelowNames(TextTable table, int heading)
    {
        if (heading == 0)
            return false;
        string[] units = [.. table.Rows[heading].Fields.Where(field => field.Length > 0)];
        string[] above = [.. table.Rows[heading - 1].Fields.Where(field => field.Length > 0)];
        return units.Length > 1 && above.Length >= units.Length
            && units.All(field => FileUnit.FindInBrackets(field) is not null)
            && above.All(field => Figures.Split(field).Figure.Length == 0);
    }

    /// <summary>The names of the columns out of one row or two.</summary>
    internal static string[] Names(TextTable table, int heading, int second)
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
            bool unit = FileUnit.FindInBrackets(under) is not null;
            names[i] = under.Length == 0 ? top[i] : unit ? $"{over} [{FileUnit.WithoutBrackets(under)}]" : $"{over} {under}".Trim();
        }

        return names;
    }
}
