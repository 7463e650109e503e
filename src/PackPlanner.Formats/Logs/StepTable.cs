using System.Text;
using PackPlanner.Core.Bench;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Tester exports with one row a step: volts and current at its start and end, charge and duration between.</summary>
internal static class StepTable
{
    internal static LogFormat<TesterLogReading> Format { get; } = new(NeedsTime: false, Suits, Read);

    private static bool Suits(LogHead head, LogColumns columns) =>
        columns[ColumnRole.StartVoltage] is not null && columns[ColumnRole.EndVoltage] is not null
        && (columns[ColumnRole.StartCurrent] is not null || columns[ColumnRole.Current] is not null)
        && (columns[ColumnRole.Duration] is not null || columns[ColumnRole.StepTime] is not null)
        && columns[ColumnRole.Step] is not null;

    private static Outcome<TesterLogReading> Read(SourceFile source, LogHead head, LogColumns columns, ReadOptions options)
    {
        if (!TextTable.Read(source, options.Stopped).Is(out TextTable? table, out Refusal? why))
            return why;
        RowCounter counter = new(source.Name);
        List<Step> steps = [];
        foreach (TextRow row in table.Rows.Where(row => row.Line >= head.FirstDataLine))
        {
            if (row.IsBlank)
                counter.SetAside(row.Line, "a blank row");
            else if (StepOf(row, columns, head) is { } step)
                steps.Add(step);
            else
                counter.SetAside(row.Line, "no step: volts, current or duration is missing");
        }

        if (steps.Count == 0)
            return PackLogs.NoRows(source);
        counter.Used = steps.Count;
        Mark(columns);
        List<string> said = ["One row a step: the curve has the first and last moment of each step, and the tester's own charge counter for it."];
        TestCurve curve = Curve(source, steps);
        string? sign = SignOf(steps, curve, options, said);
        return new TesterLogReading(curve, true, 1, counter.Account(), TesterLogs.Shape(source, head, columns, "steps", sign, steps.Count, []), said);
    }

    private sealed record Step(double? StartS, double DurationS, double StartV, double EndV, double StartA, double EndA, double? ChargeAh, double? DischargeAh, double? CapacityAh, double? Wh, double? TemperatureDegC, int Number);

    private static Step? StepOf(TextRow row, LogColumns columns, LogHead head)
    {
        LogColumn? duration = FirstOf(columns, ColumnRole.Duration) ?? FirstOf(columns, ColumnRole.StepTime);
        double? Figure(ColumnRole role) =>
            FirstOf(columns, role) is { } column && Figures.TryRead(row[column.Index], head.Mark, out double value, out string tail)
                ? (UnitBeside(tail, ColumnNames.DimensionOf(role)) ?? column.Unit ?? FileUnit.Usual(ColumnNames.DimensionOf(role))).Convert(value)
                : null;
        if (duration is null || Seconds(row[duration.Index], duration, head.Mark) is not { } seconds)
            return null;
        double? startA = Figure(ColumnRole.StartCurrent) ?? Figure(ColumnRole.Current);
        if (Figure(ColumnRole.StartVoltage) is not { } startV || Figure(ColumnRole.EndVoltage) is not { } endV || startA is null)
            return null;
        double[] wh = [.. columns.All.Where(column => column.Role == ColumnRole.Energy && column.Fit >= 1000)
            .Where(column => Figures.TryRead(row[column.Index], head.Mark, out _, out _))
            .Select(column => Figures.TryRead(row[column.Index], head.Mark, out double value, out string tail) ? Math.Abs((UnitBeside(tail, Dimension.Energy) ?? column.Unit ?? FileUnit.WattHour).Convert(value)) : 0)];
        double? stamp = FirstOf(columns, ColumnRole.Time) is { } time && StampText.TryRead(Encoding.UTF8.GetBytes(row[time.Index]), StampKind.YearFirst, out double moment) ? moment : null;
        return new Step(stamp, seconds, startV, endV, startA.Value, Figure(ColumnRole.EndCurrent) ?? startA.Value,
            Size(Figure(ColumnRole.ChargeCapacity)), Size(Figure(ColumnRole.DischargeCapacity)), Size(Figure(ColumnRole.Capacity)),
            wh.Length == 0 ? null : wh.Max(), Figure(ColumnRole.Temperature), (int)(Figure(ColumnRole.Step) ?? 0));
    }

    private static LogColumn? FirstOf(LogColumns columns, ColumnRole role) =>
        columns.All.Where(column => column.Role == role).OrderByDescending(column => column.Fit >= 1000 ? 1 : 0).ThenBy(column => column.Index).FirstOrDefault();

    private static double? Size(double? figure) => figure is { } known ? Math.Abs(known) : null;

    private static FileUnit? UnitBeside(string tail, Dimension of) => FileUnit.Find(tail) is { } unit && unit.Of == of ? unit : null;

    // A bare figure is one, also of six digits; only with a colon, or with hours and minutes named, it is a clock.
    private static double? Seconds(string text, LogColumn column, DecimalMark mark)
    {
        bool clock = text.Contains(':', StringComparison.Ordinal);
        if (!clock && Figures.TryRead(text, mark, out double value, out string tail) && (tail.Length == 0 || UnitBeside(tail, Dimension.Time) is not null))
            return (UnitBeside(tail, Dimension.Time) ?? column.Unit ?? FileUnit.Second).Convert(value);
        return StampText.TryRead(Encoding.UTF8.GetBytes(text), StampKind.Clock, out double seconds) ? seconds : null;
    }

    private static TestCurve Curve(SourceFile source, List<Step> steps)
    {
        int n = 2 * steps.Count;
        double[] timeS = new double[n];
        double[] ah = new double[n];
        double[] wh = new double[n];
        double zero = steps[0].StartS ?? 0;
        double end = 0;
        for (int i = 0; i < steps.Count; i++)
        {
            Step step = steps[i];
            double start = Math.Max(end, step.StartS - zero ?? end);
            end = start + step.DurationS;
            (timeS[2 * i], timeS[(2 * i) + 1]) = (start, end);
            // What the tester did not count is counted from its current, not taken as nought.
            ah[(2 * i) + 1] = step.ChargeAh is null && step.DischargeAh is null ? step.CapacityAh ?? double.NaN : Math.Max(step.ChargeAh ?? 0, step.DischargeAh ?? 0);
            wh[(2 * i) + 1] = step.Wh ?? double.NaN;
        }

        return new TestCurve
        {
            TimeS = timeS,
            CurrentA = [.. steps.SelectMany(step => new[] { step.StartA, step.EndA })],
            Volts = [.. steps.SelectMany(step => new[] { step.StartV, step.EndV })],
            TemperatureDegC = steps.Any(step => step.TemperatureDegC is not null and not 0) ? [.. steps.SelectMany(step => Twice(step.TemperatureDegC ?? double.NaN))] : null,
            CounterAh = ah,
            CounterWh = steps.All(step => step.Wh is null) ? null : wh,
            Step = [.. steps.SelectMany(step => new[] { step.Number, step.Number })],
            Source = source.Name,
        };
    }

    private static double[] Twice(double value) => [value, value];

    // The tester itself names each step's charge as charged or discharged, which settles the sign.
    private static string? SignOf(List<Step> steps, TestCurve curve, ReadOptions options, List<string> said)
    {
        double along = steps.Sum(step => ((step.DischargeAh ?? 0) - (step.ChargeAh ?? 0)) * (step.StartA + step.EndA));
        if (options.CurrentSign != "auto" || along == 0)
            return CurveLog.TurnRound(curve.TimeS, curve.CurrentA, curve.Volts, options, said);
        bool unsigned = steps.All(step => step.StartA >= 0 && step.EndA >= 0) && steps.Any(step => step.DischargeAh > 0) && steps.Any(step => step.ChargeAh > 0);
        for (int i = 0; i < steps.Count; i++)
        {
            bool turn = unsigned ? (steps[i].ChargeAh ?? 0) > (steps[i].DischargeAh ?? 0) : along < 0;
            if (!turn)
                continue;
            curve.CurrentA[2 * i] = 0 - curve.CurrentA[2 * i];
            curve.CurrentA[(2 * i) + 1] = 0 - curve.CurrentA[(2 * i) + 1];
        }

        said.Add(unsigned ? "The current has no sign; the charge counters tell which steps charge."
            : $"Positive current is {(along < 0 ? "charge" : "discharge")}, by the charge and discharge counters of the steps.");
        return unsigned ? "unsigned" : along < 0 ? "charge-positive" : "discharge-positive";
    }

    // For the answer: which columns were used.
    private static void Mark(LogColumns columns)
    {
        ColumnRole[] used =
        [
            ColumnRole.StartVoltage, ColumnRole.EndVoltage, ColumnRole.StartCurrent, ColumnRole.EndCurrent, ColumnRole.Duration, ColumnRole.Step,
            ColumnRole.ChargeCapacity, ColumnRole.DischargeCapacity, ColumnRole.Capacity, ColumnRole.Time, ColumnRole.Temperature, ColumnRole.Energy,
        ];
        foreach (ColumnRole role in used)
            if (FirstOf(columns, role) is { } column)
                column.Values = column.Sample;
    }
}
