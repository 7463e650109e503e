using System.Globalization;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>From columns as written to the log of a pack in our own units: the same for every layout.</summary>
internal sealed class PackAssembly(SourceFile source, LogColumns columns, LogClock clock, int[] lines, RowCounter counter, ReadOptions options)
{
    private readonly List<string> _said = [.. clock.Understood];
    private int[] _lines = lines;

    /// <summary>Which direction was positive in the file, for the answer; null without current or where nothing tells.</summary>
    internal string? SignName { get; private set; }

    /// <summary>What was understood, one sentence each.</summary>
    internal IReadOnlyList<string> Understood => _said;

    /// <summary>Columns of groups that are used.</summary>
    internal LogColumn[] Groups { get; private set; } = [];

    /// <summary>Times without rows.</summary>
    internal IReadOnlyList<LogGap> Gaps { get; private set; } = [];

    internal Outcome<RideLog> Assemble()
    {
        PutInOrder();
        if (Volts() is { } noVolts)
            return noVolts;
        double[]? current = null;
        bool unsigned = false;
        if (columns[ColumnRole.Current] is { } column && column.Values.Length > 0)
        {
            if (CurrentColumn.UnitOf(column, options.RatedAh, out (string One, string Other) both) is not { } unit)
                return Refusal.Input("two-readings", $"{source.Name}, column {column.Name}",
                    $"the current has no unit and its largest figures can be {both.One} or {both.Other}",
                    "Write the unit into the heading, such as current (A), or give the rated capacity (--rated-ah).");
            if (column.Unit is null)
                _said.Add($"The current has no unit; from its size it is read in {unit.Name}.");
            column.Unit = unit;
            CurrentColumn.Clean(column, unit, _lines, counter);
            current = column.Values;
            unsigned = TurnRound(current);
        }
        else
        {
            _said.Add("The log has no current.");
        }

        FindGaps();
        return new RideLog
        {
            TimeS = clock.TimeS,
            CurrentA = current,
            GroupV = [.. Groups.Select(group => group.Values)],
            TemperatureDegC = Temperatures(),
            PackV = PackVolts(),
            ShownStateOfCharge = Shown(),
            CurrentIsUnsigned = unsigned,
            RowsAreAverages = current is not null && clock.UsualStepS >= 5 && AverageRows(current),
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

    private Refusal? Volts()
    {
        LogColumn[] family = [.. columns.Groups.Where(column => column.Values.Length > 0)];
        if (family.Length == 0 || CellVolts.UnitOf(family, _said) is not { } unit)
            return Refusal.Input("no-cell-volts", source.Name,
                "no columns are known as the volts of series groups",
                "Name them cell 1 (V), cell 2 (V) and so on; the log of a single cell goes to capacity.");
        (double, double) limits = CellVolts.Limits(options.Chemistry);
        LogColumn[] empty = [.. family.Where(column => CellVolts.IsEmpty(column, unit, limits))];
        Groups = [.. family.Except(empty)];
        foreach (LogColumn column in empty)
            (column.Role, column.SetBy) = (ColumnRole.Unknown, "values: never the volts of a cell");
        if (empty.Length > 0)
            _said.Add($"{family.Length} columns are named as cells; {string.Join(", ", empty.Select(column => column.Name).Take(12))} never hold the volts of a cell, so the pack has {Groups.Length} groups.");
        if (Groups.Length == 0)
            return Refusal.Input("no-cell-volts", source.Name, "no column ever holds the volts of a lithium cell",
                "Check that cell volts were recorded, and which chemistry was named.");
        RowCounter[] counters = [.. Groups.Select(_ => new RowCounter(source.Name))];
        SideBySide.ForEach(Groups.Length, i => CellVolts.Clean(Groups[i], unit, limits, _lines, counters[i]), options.Stopped);
        for (int i = 0; i < Groups.Length; i++)
        {
            Groups[i].Unit = unit;
            counter.Take(counters[i]);
        }

        Number();
        return options.Series is { } series && series != Groups.Length
            ? Refusal.Input("series-differs", source.Name,
                $"the log holds the volts of {Groups.Length} groups, but {series} in series were given",
                $"Check the number given; if the pack has {series}, the log lacks groups.")
            : null;
    }

    private void Number()
    {
        int first = Groups[0].Number ?? 1;
        bool plain = Groups.Select((column, i) => column.Number == first + i).All(right => right);
        if (plain && first == 0)
            _said.Add("The log numbers its cells from 0; group 1 here is its cell 0.");
        else if (!plain)
            _said.Add($"The cells are numbered {string.Join(", ", Groups.Select(column => column.Number?.ToString(CultureInfo.InvariantCulture) ?? "-").Take(40))}; they are groups 1 to {Groups.Length} in that order.");
    }

    private bool TurnRound(double[] current)
    {
        double[] mean = MeanVolts();
        (CurrentSign sign, string evidence) = CurrentColumn.SignOf(clock.TimeS, current, mean);
        if (options.CurrentSign != "auto")
        {
            CurrentSign said = options.CurrentSign == "discharge" ? CurrentSign.Discharge : CurrentSign.Charge;
            _said.Add(sign is CurrentSign.Unknown || sign == said
                ? $"Positive current is {Word(said)}, as --current-sign says."
                : $"Positive current is {Word(said)}, as --current-sign says; the volts say {Word(sign)} ({evidence}).");
            sign = said;
        }
        else
        {
            _said.Add(sign switch
            {
                CurrentSign.Unsigned => $"The current has no sign: {evidence}.",
                CurrentSign.Unknown => $"Which direction of the current is positive cannot be told, {evidence}; discharge is assumed. --current-sign settles it.",
                _ => $"Positive current is {Word(sign)}: {evidence}.",
            });
        }

        SignName = sign switch
        {
            CurrentSign.Discharge => "discharge-positive",
            CurrentSign.Charge => "charge-positive",
            CurrentSign.Unsigned => "unsigned",
            _ => null,
        };
        if (sign == CurrentSign.Charge)
            for (int i = 0; i < current.Length; i++)
                // Nought stays plus nought.
                current[i] = 0 - current[i];
        return sign == CurrentSign.Unsigned;
    }

    private static string Word(CurrentSign sign) => sign == CurrentSign.Charge ? "charge" : sign == CurrentSign.Discharge ? "discharge" : "either";

    // Some rows of all groups at a time, so that they stay near at hand.
    private double[] MeanVolts()
    {
        const int RowsAtATime = 4096;
        double[] mean = LargeArray.Of<double>(clock.TimeS.Length);
        SideBySide.ForEach((mean.Length + RowsAtATime - 1) / RowsAtATime, part =>
        {
            Span<double> rows = mean.AsSpan(part * RowsAtATime, Math.Min(RowsAtATime, mean.Length - (part * RowsAtATime)));
            rows.Clear();
            foreach (LogColumn column in Groups)
                AddTo(rows, column.Values.AsSpan(part * RowsAtATime, rows.Length));
            foreach (ref double row in rows)
                row /= Groups.Length;
        }, options.Stopped);
        return mean;
    }

    private static void AddTo(Span<double> sum, ReadOnlySpan<double> values)
    {
        for (int i = 0; i < sum.Length; i++)
            sum[i] += values[i];
    }

    private double[][] Temperatures()
    {
        LogColumn[] probes = [.. columns.Probes.Where(column => column.Values.Length > 0)];
        if (probes.Length == 0)
            return [];
        ProbeTemperatures.Convert(probes, columns[ColumnRole.MaxTemperature], _said, _lines, counter);
        return [.. probes.Where(column => column.Values.Any(double.IsFinite)).Select(column => column.Values)];
    }

    private double[]? PackVolts()
    {
        LogColumn? column = columns[ColumnRole.PackVoltage] ?? columns[ColumnRole.Voltage];
        if (column is null || column.Values.Length == 0 || column.Role == ColumnRole.CellVoltage)
            return null;
        double sum = Groups.Sum(group => group.Values.FirstOrDefault(double.IsFinite));
        double written = column.Values.FirstOrDefault(value => double.IsFinite(value) && value > 0);
        FileUnit? unit = new[] { column.Unit ?? FileUnit.Volt, FileUnit.Volt, FileUnit.Decivolt, FileUnit.Centivolt, FileUnit.Millivolt }
            .FirstOrDefault(each => Math.Abs((each.Convert(written) / sum) - 1) < 0.15);
        if (unit is null)
        {
            (column.Role, column.SetBy) = (ColumnRole.Unknown, "values: not the sum of the groups in any unit");
            return null;
        }

        column.Unit = unit;
        column.Role = ColumnRole.PackVoltage;
        double[] volts = column.Values;
        for (int i = 0; i < volts.Length; i++)
        {
            double value = unit.Convert(volts[i]);
            volts[i] = value > 0.3 * sum && value < 2 * sum ? value : double.NaN;
        }

        return volts;
    }

    private double[]? Shown()
    {
        if (columns[ColumnRole.StateOfCharge] is not { } column || column.Values.Length == 0 || !column.Values.Any(double.IsFinite))
            return null;
        double[] sorted = [.. column.Values.Where(double.IsFinite).Order()];
        double most = sorted[(int)((sorted.Length - 1) * 0.999)];
        FileUnit unit = column.Unit?.Of == Dimension.Share && most > 1.5 ? column.Unit : most <= 1.2 ? FileUnit.Fraction : most <= 120 ? FileUnit.Percent : FileUnit.Permille;
        if (column.Unit is null)
            column.SetBy = "heading and values";
        column.Unit = unit;
        for (int i = 0; i < column.Values.Length; i++)
        {
            double share = unit.Convert(column.Values[i]);
            column.Values[i] = share is >= -0.05 and <= 1.2 ? share : double.NaN;
        }

        return column.Values;
    }

    // Averages show one value between two steady levels where a momentary reading would jump.
    private bool AverageRows(double[] current)
    {
        double most = current.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max();
        int between = 0;
        int jumps = 0;
        for (int i = 2; i + 2 < current.Length; i++)
        {
            double step = Math.Abs(current[i + 1] - current[i - 1]);
            double calm = 0.1 * step;
            if (!(step > 0.15 * most) || !(Math.Abs(current[i - 1] - current[i - 2]) < calm) || !(Math.Abs(current[i + 2] - current[i + 1]) < calm))
                continue;
            double share = (current[i] - current[i - 1]) / (current[i + 1] - current[i - 1]);
            between += share is > 0.1 and < 0.9 ? 1 : 0;
            jumps += share is <= 0.1 or >= 0.9 ? 1 : 0;
        }

        // One jump in two falls so that its middle row looks like either level.
        bool averages = between * 4 >= jumps;
        _said.Add(averages
            ? string.Create(CultureInfo.InvariantCulture, $"A row each {clock.UsualStepS:0.##} s is taken as the average since the row before.")
            : string.Create(CultureInfo.InvariantCulture, $"A row each {clock.UsualStepS:0.##} s is taken as a momentary reading, because the current jumps without values between."));
        return averages;
    }

    private void FindGaps()
    {
        Gaps = LogGaps.Of(clock.TimeS, clock.UsualStepS);
        if (Gaps.Count > 0)
            _said.Add(string.Create(CultureInfo.InvariantCulture,
                $"{Gaps.Count} gaps without rows, the longest {Gaps.Max(gap => gap.Seconds):0.#} s; no charge is counted over a gap."));
    }
}
