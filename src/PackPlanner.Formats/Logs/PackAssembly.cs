using System.Globalization;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>From columns as written to the log of a pack in our own units: the same for every layout.</summary>
internal sealed class PackAssembly(SourceFile source, LogColumns columns, LogClock clock, int[] lines, RowCounter counter, ReadOptions options)
{
    private const int GroupsAtATime = 64;
    private readonly List<string> _said = [.. clock.Understood];
    private int[] _lines = lines;

    /// <summary>Which direction was positive in the file, for the answer; null without current or where nothing tells.</summary>
    internal string? SignName { get; private set; }

    /// <summary>What was understood, one sentence each.</summary>
    internal IReadOnlyList<string> Understood => _said;

    /// <summary>Columns of groups that are used.</summary>
    internal LogColumn[] Groups { get; private set; } = [];

    /// <summary>Which group each of them is.</summary>
    internal GroupSeats Seats { get; private set; } = new([], 0);

    /// <summary>Times without rows.</summary>
    internal IReadOnlyList<LogGap> Gaps { get; private set; } = [];

    internal Outcome<RideLog> Assemble()
    {
        PutInOrder();
        if (!Volts().Is(out double[]? packV, out Refusal? noVolts) && noVolts is not null)
            return noVolts;
        PackCurrent reading = new(source, columns, clock, options, _said);
        if (!reading.Read(Groups, _lines, counter).Is(out double[]? current, out Refusal? why))
            return why;
        SignName = reading.SignName;
        if (current.Length == 0)
            current = null;
        FindGaps();
        return new RideLog
        {
            TimeS = clock.TimeS,
            CurrentA = current,
            GroupV = Seats.Volts(Groups, clock.TimeS.Length),
            TemperatureDegC = Temperatures(),
            PackV = packV,
            ShownStateOfCharge = PackTotals.Shown(columns),
            CurrentIsUnsigned = reading.IsUnsigned,
            RowsAreAverages = current is not null && clock.UsualStepS >= 5 && RowAverages.Are(current, clock.UsualStepS, _said),
            UsualStepS = clock.UsualStepS,
            Start = clock.Start,
            Source = source.Name,
            Line = _lines.Length == clock.TimeS.Length ? _lines : null,
        };
    }

    private void PutInOrder()
    {
        if (clock.Order is not { } order)
            return;
        foreach (LogColumn column in columns.All.Where(column => column.Values.Length == order.Length))
            column.Values = Array.ConvertAll(order, at => column.Values[at]);
        if (_lines.Length == order.Length)
            _lines = Array.ConvertAll(order, at => _lines[at]);
    }

    // Puts the groups in place; gives the pack's own volts, where the log has them.
    private Outcome<double[]?> Volts()
    {
        LogColumn[] family = [.. columns.Groups.Where(column => column.Values.Length > 0)];
        StackedVolts.TakeApart(family, _said);
        if (family.Length == 0 || CellVolts.UnitOf(family, _said) is not { } unit)
            return Refusal.Input("no-cell-volts", source.Name,
                "no columns are known as the volts of series groups",
                "Name them cell 1 (V), cell 2 (V) and so on; the log of a single cell goes to capacity.");
        (double, double) limits = CellVolts.Limits(options.Chemistry);
        if (options.Chemistry is { } chemistry && CellVolts.Contradicts(family, unit, chemistry) is { } contradiction)
            return Refusal.Input("volts-contradict-chemistry", source.Name, contradiction, "Correct --chemistry, or the unit of the volts; packplanner look shows how the columns were read.");
        LogColumn[] empty = [.. family.Where(column => CellVolts.IsEmpty(column, unit, limits))];
        Groups = [.. family.Except(empty)];
        foreach (LogColumn column in empty)
            (column.Role, column.SetBy) = (ColumnRole.Unknown, "values: never the volts of a cell");
        if (empty.Length > 0)
            _said.Add($"{family.Length} columns are named as cells; {string.Join(", ", empty.Select(column => column.Name).Take(12))} never {(empty.Length == 1 ? "holds" : "hold")} the volts of a cell, so {Groups.Length} groups are read.");
        if (Groups.Length == 0)
            return Refusal.Input("no-cell-volts", source.Name, "no column ever holds the volts of a lithium cell",
                "Check that cell volts were recorded, and which chemistry was named.");
        Clean(unit, limits);
        double[]? packV = PackTotals.Volts(columns, Groups);
        Seats = GroupSeats.Find(Groups, empty, options.Series, PackTotals.OverSum(packV, Groups));
        if (options.Series is { } series && series != Seats.Series)
            return SeriesDiffers(series, empty);
        if (!Seats.AllRead)
            _said.Add(Seats.Said);
        else
            Number();
        return packV;
    }

    private Refusal SeriesDiffers(int series, LogColumn[] dead) => Refusal.Input("series-differs", source.Name,
        $"the log holds the volts of {Groups.Length} groups, but {series} in series were given"
            + (dead.Length == 0 ? "" : $"; {string.Join(", ", dead.Take(6).Select(column => column.Name))}{(dead.Length > 6 ? $" and {dead.Length - 6} more" : "")} never {(dead.Length == 1 ? "holds" : "hold")} the volts of a cell"),
        $"Check the number given; if the pack has {series}, the log lacks groups{(dead.Length == 0 ? "" : ": look at the sense wires and channels of the monitor")}.");

    // Some groups at a time, each with a count of its own, put together in their order.
    private void Clean(FileUnit unit, (double, double) limits)
    {
        int together = (Groups.Length + GroupsAtATime - 1) / GroupsAtATime;
        RowCounter[] counters = [.. Enumerable.Range(0, (Groups.Length + together - 1) / together).Select(_ => new RowCounter(source.Name))];
        SideBySide.ForEach(counters.Length, part =>
        {
            for (int i = part * together; i < Math.Min(Groups.Length, (part + 1) * together); i++)
                CellVolts.Clean(Groups[i], unit, limits, _lines, counters[part]);
        }, options.Stopped);
        foreach (LogColumn group in Groups)
            group.Unit = unit;
        foreach (RowCounter own in counters)
            counter.Take(own);
    }

    private void Number()
    {
        int first = Groups[0].Number ?? 1;
        bool plain = Groups.Select((column, i) => column.Number == first + i).All(right => right);
        if (plain && first == 0)
            _said.Add("The log numbers its cells from 0; group 1 here is its cell 0.");
        else if (!plain && Groups.Select(column => column.Number).Distinct().Count() < Groups.Length)
            _said.Add($"The cells are counted in modules: {string.Join(", ", Groups.Select(column => column.Name).Take(40))} are groups 1 to {Groups.Length} in that order, all in series.");
        else if (!plain)
            _said.Add($"The cells are numbered {string.Join(", ", Groups.Select(column => column.Number?.ToString(CultureInfo.InvariantCulture) ?? "-").Take(40))}; they are groups 1 to {Groups.Length} in that order.");
    }

    private double[][] Temperatures()
    {
        LogColumn[] probes = [.. columns.Probes.Where(column => column.Values.Length > 0)];
        if (probes.Length == 0)
            return [];
        ProbeTemperatures.Convert(probes, columns[ColumnRole.MaxTemperature], _said, _lines, counter);
        return [.. probes.Where(column => column.Values.Any(double.IsFinite)).Select(column => column.Values)];
    }

    private void FindGaps()
    {
        Gaps = LogGaps.Of(clock.TimeS, clock.UsualStepS);
        if (Gaps.Count > 0)
            _said.Add(string.Create(CultureInfo.InvariantCulture,
                $"{Gaps.Count} gaps without rows, the longest {Gaps.Max(gap => gap.Seconds):0.#} s; no charge is counted over a gap."));
    }
}
