using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>What the columns of a log are, from their names and their first figures.</summary>
internal sealed class LogColumns
{
    private static readonly HashSet<ColumnRole> LogRoles =
    [
        ColumnRole.Time, ColumnRole.StepTime, ColumnRole.Duration, ColumnRole.Date, ColumnRole.Clock, ColumnRole.Current, ColumnRole.Voltage, ColumnRole.CellVoltage,
        ColumnRole.PackVoltage, ColumnRole.MaxVoltage, ColumnRole.MinVoltage, ColumnRole.MeanVoltage, ColumnRole.VoltageSpread,
        ColumnRole.Temperature, ColumnRole.MaxTemperature, ColumnRole.MinTemperature, ColumnRole.StateOfCharge, ColumnRole.Energy,
        ColumnRole.Power, ColumnRole.Capacity, ColumnRole.DischargeCapacity, ColumnRole.ChargeCapacity, ColumnRole.OtherCharge, ColumnRole.Step,
        ColumnRole.Cycle, ColumnRole.Mode, ColumnRole.Flag, ColumnRole.Speed, ColumnRole.Odometer, ColumnRole.Signal, ColumnRole.Value,
        ColumnRole.Unit, ColumnRole.Label, ColumnRole.Group, ColumnRole.Slot, ColumnRole.StartVoltage, ColumnRole.EndVoltage,
        ColumnRole.StartCurrent, ColumnRole.EndCurrent, ColumnRole.Resistance, ColumnRole.DcResistance, ColumnRole.AcResistance, ColumnRole.Health, ColumnRole.Remark,
    ];

    private LogColumns(LogColumn[] all) => All = all;

    internal LogColumn[] All { get; }

    /// <summary>Voltage columns of the series groups, in the order of their numbers; empty when there is no such family.</summary>
    internal LogColumn[] Groups { get; private set; } = [];

    /// <summary>Temperature columns, in order.</summary>
    internal LogColumn[] Probes { get; private set; } = [];

    /// <summary>The column that is read as this, best name first.</summary>
    internal LogColumn? this[ColumnRole role] => All.Where(column => column.Role == role).OrderByDescending(column => column.Fit).ThenBy(column => column.Index).FirstOrDefault();

    /// <summary>Names the columns of a log.</summary>
    internal static LogColumns Of(LogHead head)
    {
        LogColumn[] all = [.. head.Names.Select((name, index) => Understand(index, new HeadingWords(name)))];
        foreach (LogColumn column in all)
            column.Sample = [.. head.Rows.Select(row => FigureOf(row, column.Index, head.Mark))];
        LogColumns columns = new(all);
        if (head.HeadingLine is null)
            HeadlessLog.Name(columns);
        columns.FindFamilies();
        return columns;
    }

    /// <summary>Names the columns of a long log, one for each name that stands in its rows.</summary>
    internal static LogColumns OfNames(IReadOnlyList<string> names, IReadOnlyList<double[]> samples)
    {
        LogColumn[] all = [.. names.Select((name, index) => Understand(index, new HeadingWords(name.All(char.IsAsciiDigit) ? $"cell {name}" : name)))];
        for (int i = 0; i < all.Length; i++)
            all[i].Sample = samples[i];
        LogColumns columns = new(all);
        columns.FindFamilies();
        return columns;
    }

    /// <summary>The named columns of a long log and those that stand beside them, as one.</summary>
    internal static LogColumns Join(LogColumns named, LogColumn[] beside) => new([.. named.All, .. beside])
    {
        Groups = named.Groups,
        Probes = [.. named.Probes, .. beside.Where(column => column.Role == ColumnRole.Temperature)],
    };

    private static double FigureOf(List<string> row, int index, DecimalMark mark) =>
        index < row.Count && Figures.TryRead(row[index], mark, out double value, out string tail) && (tail.Length == 0 || FileUnit.Find(tail) is not null) ? value : double.NaN;

    private static LogColumn Understand(int index, HeadingWords heading)
    {
        LogColumn column = new(index, heading) { Number = heading.Number, Unit = heading.Unit };
        (ColumnRole role, int fit) = Best(heading, heading.Unit);
        if (role == ColumnRole.Unknown && heading.Unit is { } unit && !heading.UnitIsCertain)
        {
            (role, fit) = Best(heading, null);
            column.Unit = null;
        }
        else if (role == ColumnRole.Unknown && heading.Unit is { } sure)
        {
            role = sure.Of switch
            {
                Dimension.Voltage => ColumnRole.Voltage,
                Dimension.Current => ColumnRole.Current,
                Dimension.Temperature => ColumnRole.Temperature,
                Dimension.Time => ColumnRole.Time,
                Dimension.Charge => ColumnRole.Capacity,
                Dimension.Energy => ColumnRole.Energy,
                Dimension.Power => ColumnRole.Power,
                _ => ColumnRole.Unknown,
            };
            fit = 10;
        }

        column.Role = role;
        column.Fit = fit;
        return column;
    }

    private static (ColumnRole Role, int Fit) Best(HeadingWords heading, FileUnit? unit)
    {
        foreach ((ColumnRole role, int fit) in ColumnNames.RolesOf(heading, unit))
            if (LogRoles.Contains(role))
                return (role, fit);
        return (ColumnRole.Unknown, 0);
    }

    private void FindFamilies()
    {
        LogColumn[][] families = [.. All.Where(column => column.Number is not null).GroupBy(column => column.Heading.Family).Select(family => family.ToArray())];
        LogColumn[]? volts = families
            .Where(family => family.Length >= 2 && IsVoltage(family))
            .OrderByDescending(family => family.Length + (IsNamedVoltage(family) ? 1000 : 0))
            .FirstOrDefault();
        if (volts is not null)
        {
            Groups = [.. volts.OrderBy(column => column.Number)];
            foreach (LogColumn column in Groups)
                (column.Role, column.SetBy) = (ColumnRole.CellVoltage, IsNamedVoltage(volts) ? "heading" : "heading and values");
        }

        LogColumn[]? warm = families.Where(family => family != volts && IsTemperature(family)).OrderByDescending(family => family.Length).FirstOrDefault();
        if (warm is not null)
        {
            foreach (LogColumn column in warm)
                column.Role = ColumnRole.Temperature;
            Probes = [.. warm.OrderBy(column => column.Number)];
        }
        else
        {
            Probes = [.. All.Where(column => column.Role == ColumnRole.Temperature)];
        }
    }

    // Names of other quantities rule a family out; figures of another size do too, unless there is no figure yet.
    private static bool IsVoltage(LogColumn[] family)
    {
        LogColumn first = family[0];
        if (first.Unit is not null && first.Unit.Of != Dimension.Voltage)
            return false;
        if (IsTemperature(family) && first.Unit?.Of != Dimension.Voltage)
            return false;
        double middle = Middle(family);
        if (first.Unit?.Of == Dimension.Voltage || IsNamedVoltage(family))
            return double.IsNaN(middle) || IsCellSize(middle) || family.Length >= 4;
        return first.Role is ColumnRole.Unknown or ColumnRole.Label or ColumnRole.Group or ColumnRole.Slot or ColumnRole.Signal or ColumnRole.Value
            && IsCellSize(middle);
    }

    private static bool IsNamedVoltage(LogColumn[] family) =>
        family[0].Role is ColumnRole.CellVoltage or ColumnRole.Voltage or ColumnRole.PackVoltage
        || ColumnNames.RolesOf(family[0].Heading, family[0].Unit).Any(role => role.Role == ColumnRole.CellVoltage && role.Fit > 40);

    private static bool IsTemperature(LogColumn[] family) =>
        family[0].Unit?.Of == Dimension.Temperature
        || (family[0].Unit is null && (family[0].Role == ColumnRole.Temperature || family[0].Heading.Joined is "t" or "temp" or "tmp" or "ntc"));

    private static double Middle(LogColumn[] family)
    {
        double[] figures = [.. family.SelectMany(column => column.Sample.Take(200)).Where(figure => double.IsFinite(figure) && figure != 0).Order()];
        return figures.Length == 0 ? double.NaN : figures[figures.Length / 2];
    }

    private static bool IsCellSize(double middle) => middle is (> 0.9 and < 5) or (> 90 and < 500) or (> 900 and < 5000) or (> 9000 and < 50000);
}
