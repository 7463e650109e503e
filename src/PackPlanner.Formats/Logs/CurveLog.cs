using System.Globalization;
using PackPlanner.Core.Bench;
using PackPlanner.Core.Cells;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Tester logs with one row a moment: time, current, volts, with or without a heading.</summary>
internal static class CurveLog
{
    internal static LogFormat<TesterLogReading> Format { get; } = new(NeedsTime: true, Suits, Read);

    private static bool Suits(LogHead head, LogColumns columns) =>
        (columns[ColumnRole.Voltage] ?? columns[ColumnRole.PackVoltage] ?? columns[ColumnRole.CellVoltage]) is not null && columns[ColumnRole.Current] is not null;

    private static Outcome<TesterLogReading> Read(SourceFile source, LogHead head, LogColumns columns, ReadOptions options)
    {
        if (TimeColumn.Find(columns, head) is not { } time)
            return PackLogs.NoTime(source, head);
        if (time.InTwoWays(source) is { } twoWays)
            return twoWays;
        time.Mark();
        LogColumn? current = columns[ColumnRole.Current];
        LogColumn? volts = VoltsOf(columns);
        if (volts is null && columns.Groups.Length == 0)
            return Refusal.Input("no-volts", source.Name, $"no column is known as volts; the headings are: {PackLogs.Headings(head)}", "Name the column voltage (V).");
        if (current is null)
            return Refusal.Input("no-current", source.Name, $"no column is known as a current; the headings are: {PackLogs.Headings(head)}", "Name the column current (A).");
        LogColumn? temperature = columns.Probes.FirstOrDefault();
        LogColumn[] wanted = [.. new[] { current, columns[ColumnRole.ChargeCurrent], columns.Direction, volts, temperature, columns[ColumnRole.Capacity], columns[ColumnRole.Energy], columns[ColumnRole.Step] }.OfType<LogColumn>().Concat(volts is null ? columns.Groups : []).Distinct()];
        RowCounter counter = new(source.Name);
        if (!LogRows.Read(source, head, time, wanted, counter, options).Is(out LogRows? rows, out Refusal? why))
            return why;
        if (rows.Moments.Length < 2)
            return PackLogs.NoRows(source);
        LogClock clock = LogClock.Of(rows.Moments, time, charge: new ChargeAgainstClock(current, columns[ColumnRole.ChargeCurrent], columns[ColumnRole.Capacity], volts is null ? columns.Groups : [volts], options.RatedAh));
        List<string> said = [.. clock.Understood];
        int[] lines = InOrder(clock, wanted, rows.Lines);
        double[] curveV = Volts(volts, columns, options, lines, counter, said);
        if (!Array.Exists(curveV, double.IsFinite))
            return Refusal.Input("no-volts", source.Name, $"the columns of volts hold no figure that a cell or a string can have; the headings are: {PackLogs.Headings(head)}",
                "Write one figure in each field; the volts of several cells need a column each.");
        bool inTwo = LogCurrents.InTwoColumns(columns, current, said);
        if (SetUnit(source, current, options, said) is { } noUnit)
            return noUnit;
        CurrentColumn.Clean(current, current.Unit!, lines, counter);
        string? sign = inTwo ? "discharge-positive"
            : LogCurrents.SignByWords(columns, current, clock.TimeS, curveV, options, said) ? "unsigned"
            : TurnRound(clock.TimeS, current.Values, curveV, options, said);
        if (temperature is not null)
            ProbeTemperatures.Convert([temperature], null, said, lines, counter);
        TestCurve curve = Curve(columns, clock, current, temperature, curveV, source.Name, said);
        IReadOnlyList<LogGap> gaps = LogGaps.Of(clock.TimeS, clock.UsualStepS);
        return new TesterLogReading(curve, false, Math.Max(1, columns.Groups.Length), counter.Account(),
            TesterLogs.Shape(source, head, columns, "wide", sign, clock.TimeS.Length, gaps), said);
    }

    /// <summary>Puts the values of the columns, and the lines that they stand on, into the order of time.</summary>
    private static int[] InOrder(LogClock clock, LogColumn[] columns, int[] lines)
    {
        if (clock.Order is not { } order)
            return lines;
        foreach (LogColumn column in columns)
            column.Values = Array.ConvertAll(order, at => column.Values[at]);
        return Array.ConvertAll(order, at => lines[at]);
    }

    private static Refusal? SetUnit(SourceFile source, LogColumn current, ReadOptions options, List<string> said)
    {
        if (CurrentColumn.UnitOf(current, options.RatedAh, null, out (string One, string Other) both) is not { } unit)
        {
            return Refusal.Input("two-readings", $"{source.Name}, column {current.Name}",
                $"the current has no unit and its largest figures can be {both.One} or {both.Other}", $"Say --column \"{current.Name}=current:A\" or mA, or give --rated-ah.");
        }

        if (current.Unit is null)
            said.Add($"The current has no unit; from its size it is read in {unit.Name}.");
        current.Unit = unit;
        return null;
    }

    private static TestCurve Curve(
        LogColumns columns, LogClock clock, LogColumn current, LogColumn? temperature, double[] curveV, string source, List<string> said)
    {
        LogColumn? ah = columns[ColumnRole.Capacity];
        LogColumn? step = columns[ColumnRole.Step];
        return new TestCurve
        {
            TimeS = clock.TimeS,
            CurrentA = current.Values,
            Volts = curveV,
            TemperatureDegC = temperature is not null && temperature.Values.Any(double.IsFinite) ? temperature.Values : null,
            CounterAh = Counter(ah, UnitOfCounter(ah, clock.TimeS, current.Values, said)),
            CounterWh = Counter(columns[ColumnRole.Energy], FileUnit.WattHour),
            Step = step is null || step.Values.Any(value => !double.IsFinite(value)) ? null : Array.ConvertAll(step.Values, value => (int)Math.Clamp(value, int.MinValue, int.MaxValue)),
            Source = source,
        };
    }

    /// <summary>Turns the current of a tester round so that discharge is positive.</summary>
    internal static string? TurnRound(double[] timeS, double[] currentA, double[] volts, ReadOptions options, List<string> said)
    {
        (CurrentSign sign, string evidence) = CurrentSigns.Of(timeS, currentA, volts);
        if (options.CurrentSign != "auto")
        {
            sign = options.CurrentSign == "discharge" ? CurrentSign.Discharge : CurrentSign.Charge;
            evidence = "as --current-sign says";
        }

        if (sign == CurrentSign.Unsigned)
            MarkCharging(currentA, volts);
        said.Add(sign switch
        {
            CurrentSign.Unknown => $"Which direction of the current is positive cannot be told, {evidence}; discharge is assumed. --current-sign settles it.",
            CurrentSign.Unsigned => $"The current has no sign ({evidence}); where the volts rise over a step it is taken as charge.",
            _ => $"Positive current is {(sign == CurrentSign.Charge ? "charge" : "discharge")}: {evidence}.",
        });
        if (sign == CurrentSign.Charge)
            for (int i = 0; i < currentA.Length; i++)
                currentA[i] = 0 - currentA[i];
        return sign switch
        {
            CurrentSign.Charge => "charge-positive",
            CurrentSign.Discharge => "discharge-positive",
            CurrentSign.Unsigned => "unsigned",
            _ => null,
        };
    }

    private static LogColumn? VoltsOf(LogColumns columns)
    {
        LogColumn? named = columns[ColumnRole.Voltage] ?? columns[ColumnRole.PackVoltage];
        if (named is not null)
            return named;
        return columns.Groups.Length == 0 ? columns[ColumnRole.CellVoltage] : null;
    }

    // The string's own volts, else the sum of its groups.
    private static double[] Volts(LogColumn? column, LogColumns columns, ReadOptions options, int[] lines, RowCounter counter, List<string> said)
    {
        if (column is null)
        {
            said.Add($"The log has no volts of the whole string; the sum of its {columns.Groups.Length} groups stands for them.");
            double[] sum = new double[columns.Groups[0].Values.Length];
            FileUnit unit = CellVolts.UnitOf(columns.Groups, said) ?? FileUnit.Volt;
            foreach (LogColumn group in columns.Groups)
            {
                group.Unit = unit;
                CellVolts.Clean(group, unit, CellVolts.Limits(options.Chemistry), lines, counter);
                for (int i = 0; i < sum.Length; i++)
                    sum[i] += group.Values[i];
            }

            return sum;
        }

        double[] known = [.. column.Values.Where(value => double.IsFinite(value) && value > 0)];
        double middle = known.Length == 0 ? 0 : Robust.UpperMedian(known);
        if (column.Unit is not { Of: Dimension.Voltage })
        {
            column.Unit = middle > 600 ? FileUnit.Millivolt : FileUnit.Volt;
            column.SetBy = "heading and values";
            said.Add($"The volts have no unit; figures about {middle.ToString("0.###", CultureInfo.InvariantCulture)} are read as {column.Unit.Name}.");
        }

        double volts = column.Unit.Convert(middle);
        (double low, double high) = CellVolts.Limits(options.Chemistry);
        // A string has as many times the volts of a cell as it has cells; how many is not known here.
        (double, double) limits = volts < high ? (low, high) : (0.3 * volts, 2 * volts);
        CellVolts.Clean(column, column.Unit, limits, lines, counter);
        return column.Values;
    }

    // A counter without a unit is told by the charge that the current carried meanwhile.
    private static FileUnit UnitOfCounter(LogColumn? column, double[] timeS, double[] currentA, List<string> said)
    {
        if (column is null || column.Unit is not null || column.Values.Length != timeS.Length)
            return FileUnit.AmpereHour;
        double counted = 0;
        for (int i = 1; i < timeS.Length; i++)
            counted += double.IsFinite(currentA[i]) ? Math.Abs(currentA[i]) * (timeS[i] - timeS[i - 1]) / 3600 : 0;
        // A counter starts anew at each step, so its rises count and not its largest figure.
        double[] known = [.. column.Values.Where(double.IsFinite).Select(Math.Abs)];
        double shown = known.Zip(known.Skip(1), (one, next) => Math.Max(0, next - one)).Sum() + (known.Length > 0 ? known[0] : 0);
        FileUnit unit = counted > 0 && shown / counted > 30 ? FileUnit.MilliampereHour : FileUnit.AmpereHour;
        said.Add($"The counter {column.Name} has no unit; beside the charge that the current carried it is read in {unit.Name}.");
        return unit;
    }

    private static double[]? Counter(LogColumn? column, FileUnit usual)
    {
        if (column is null || column.Values.Length == 0 || !column.Values.Any(double.IsFinite))
            return null;
        column.Unit ??= usual;
        return column.Unit.Scale == 1 ? column.Values : Array.ConvertAll(column.Values, column.Unit.Convert);
    }

    // One stretch of like current is charge when its volts end higher than they began.
    private static void MarkCharging(double[] currentA, double[] volts)
    {
        double most = currentA.Where(double.IsFinite).DefaultIfEmpty(0).Max();
        for (int from = 0; from < currentA.Length;)
        {
            int to = from + 1;
            bool flows = currentA[from] > 0.02 * most;
            while (to < currentA.Length && currentA[to] > 0.02 * most == flows)
                to++;
            int first = Math.Min(from + 1, to - 1);
            if (flows && volts[to - 1] > volts[first])
                for (int i = from; i < to; i++)
                    currentA[i] = -currentA[i];
            from = to;
        }
    }
}
