using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>What the columns of a log are, from their names and their first figures.</summary>
internal sealed class LogColumns
{
    private static readonly HashSet<ColumnRole> LogRoles =
    [
        ColumnRole.Time, ColumnRole.StepTime, ColumnRole.Duration, ColumnRole.Date, ColumnRole.Clock, ColumnRole.Current, ColumnRole.ChargeCurrent, ColumnRole.Voltage, ColumnRole.CellVoltage,
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

    /// <summary>A column of states that says in words whether the pack is charged or discharged, where the current has no sign; else null.</summary>
    internal LogColumn? Direction { get; private set; }

    /// <summary>The column that is read as this, best name first.</summary>
    internal LogColumn? this[ColumnRole role] => All.Where(column => column.Role == role).OrderByDescending(column => column.Fit).ThenBy(column => column.Index).FirstOrDefault();

    /// <summary>Names the columns of a log.</summary>
    /// <param name="head">The front of the log.</param>
    /// <param name="choices">What the user said of single columns.</param>
    internal static LogColumns Of(LogHead head, ColumnChoices choices)
    {
        LogColumn[] all = [.. head.Names.Select((name, index) => Understand(index, new HeadingWords(name)))];
        foreach (LogColumn column in all)
            column.Sample = [.. head.Rows.Select(row => FigureOf(row, column.Index, head.Mark))];
        LogColumns columns = new(all);
        if (head.HeadingLine is null)
            HeadlessLog.Name(columns);
        columns.Settle(choices, inRows: false);
        columns.Direction = DirectionColumn.Find(head, columns);
        return columns;
    }

    /// <summary>Names the columns of a long log, one for each name that stands in its rows.</summary>
    internal static LogColumns OfNames(IReadOnlyList<string> names, IReadOnlyList<double[]> samples, ColumnChoices choices)
    {
        LogColumn[] all = [.. names.Select((name, index) => Understand(index, new HeadingWords(name.All(char.IsAsciiDigit) ? $"cell {name}" : name)))];
        for (int i = 0; i < all.Length; i++)
            all[i].Sample = samples[i];
        LogColumns columns = new(all);
        columns.Settle(choices, inRows: true);
        return columns;
    }

    /// <summary>The named columns of a long log and those that stand beside them, as one.</summary>
    internal static LogColumns Join(LogColumns named, LogColumn[] beside) => new([.. named.All, .. beside])
    {
        Groups = named.Groups,
        Probes = [.. named.Probes, .. beside.Where(column => column.Role == ColumnRole.Temperature)],
    };

    private static double FigureOf(List<string> row, int index, DecimalMark mark) =>
        index < row.Count && Figures.TryReadSigned(row[index], mark, out double value, out string tail) && (tail.Length == 0 || FileUnit.Find(tail) is not null) ? value : double.NaN;

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

    private void Settle(ColumnChoices choices, bool inRows)
    {
        LogCurrents.Choose(All);
        (Groups, Probes) = LogFamilies.Of(All);
        foreach (LogColumn column in All)
            if (choices.For(column.Name, inRows ? -1 : column.Index) is { } choice)
                Obey(column, choice, choices.SetBy);
    }

    // What the user said holds, whatever the names and the figures say.
    private void Obey(LogColumn column, ColumnChoice choice, string setBy)
    {
        (column.SetBy, column.IsChosen) = (setBy, true);
        if (choice.Role is { } role)
        {
            foreach (LogColumn rival in All.Where(rival => rival != column && rival.Role == role && role is ColumnRole.Current or ColumnRole.ChargeCurrent or ColumnRole.Time))
                (rival.Role, rival.SetBy) = (ColumnRole.Unknown, $"{setBy}; \"{column.Name}\" is used");
            if (column.Unit is { } unit && unit.Of != ColumnNames.DimensionOf(role))
                column.Unit = null;
            (column.Role, column.Fit) = (role, int.MaxValue / 2);
            Groups = [.. Groups.Where(group => group != column && (choice.Group is null || group.Number != choice.Group))];
            Probes = [.. Probes.Where(probe => probe != column)];
            if (role == ColumnRole.CellVoltage)
            {
                column.Number = choice.Group ?? column.Number ?? (Groups.Length == 0 ? 1 : Groups.Max(group => group.Number ?? 0) + 1);
                Groups = [.. Groups.Append(column).OrderBy(group => group.Number).ThenBy(group => group.Index)];
            }
            else if (role == ColumnRole.Temperature)
            {
                Probes = [.. Probes.Append(column).OrderBy(probe => probe.Index)];
            }
        }

        if (choice.InUnit is not { } inUnit)
            return;
        // Cells of one log are written alike, and so are its probes.
        foreach (LogColumn like in Groups.Contains(column) ? Groups : Probes.Contains(column) ? Probes : [column])
            (like.Unit, like.UnitIsChosen, like.SetBy) = (inUnit, true, setBy);
    }
}
