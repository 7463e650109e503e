using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>The current of a pack's log in amperes, discharge positive, and how that was found.</summary>
internal sealed class PackCurrent(SourceFile source, LogColumns columns, LogClock clock, ReadOptions options, List<string> said)
{
    /// <summary>Which direction was positive in the file, for the answer; null without current or where nothing tells.</summary>
    internal string? SignName { get; private set; }

    /// <summary>The current has no sign, and nothing else in the log gives it one.</summary>
    internal bool IsUnsigned { get; private set; }

    /// <summary>Amperes, in place; null where the log has no current.</summary>
    /// <param name="groups">Groups in volts.</param>
    /// <param name="lines">Line of each row.</param>
    /// <param name="counter">Gets what is set aside.</param>
    internal Outcome<double[]> Read(LogColumn[] groups, int[] lines, RowCounter counter)
    {
        if (columns[ColumnRole.Current] is not { } column || column.Values.Length == 0)
        {
            said.Add("The log has no current.");
            return Array.Empty<double>();
        }

        bool inTwo = LogCurrents.InTwoColumns(columns, column, said);
        if (CurrentColumn.UnitOf(column, options.RatedAh, PackUnit(), out (string One, string Other) both) is not { } unit)
            return Refusal.Input("two-readings", $"{source.Name}, column {column.Name}",
                $"the current has no unit and its largest figures can be {both.One} or {both.Other}",
                $"Say --column \"{column.Name}=current:A\" or mA, or give the rated capacity (--rated-ah).");
        if (column.Unit is null)
            said.Add($"The current has no unit; from its size it is read in {unit.Name}.");
        column.Unit = unit;
        CurrentColumn.Clean(column, unit, lines, counter);
        double[] volts = MeanVolts(groups);
        if (inTwo)
            SignName = "discharge-positive";
        else if (LogCurrents.SignByWords(columns, column, clock.TimeS, volts, options, said))
            SignName = "unsigned";
        else
            TurnRound(column.Values, volts);
        return column.Values;
    }

    // A pack's volts written in whole tenths go with a current in whole tenths.
    private FileUnit? PackUnit() => columns[ColumnRole.PackVoltage] is { Unit: { Of: Dimension.Voltage } unit, SetBy: "heading and values" } ? unit : null;

    private void TurnRound(double[] current, double[] volts)
    {
        (CurrentSign sign, string evidence) = CurrentSigns.Of(clock.TimeS, current, volts);
        if (options.CurrentSign != "auto")
        {
            CurrentSign given = options.CurrentSign == "discharge" ? CurrentSign.Discharge : CurrentSign.Charge;
            said.Add(sign is CurrentSign.Unknown || sign == given
                ? $"Positive current is {Word(given)}, as --current-sign says."
                : $"Positive current is {Word(given)}, as --current-sign says; the volts say {Word(sign)} ({evidence}).");
            sign = given;
        }
        else
        {
            said.Add(sign switch
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
        IsUnsigned = sign == CurrentSign.Unsigned;
    }

    private static string Word(CurrentSign sign) => sign == CurrentSign.Charge ? "charge" : sign == CurrentSign.Discharge ? "discharge" : "either";

    // Some rows of all groups at a time, so that they stay near at hand.
    private double[] MeanVolts(LogColumn[] groups)
    {
        const int RowsAtATime = 4096;
        double[] mean = LargeArray.Of<double>(clock.TimeS.Length);
        SideBySide.ForEach((mean.Length + RowsAtATime - 1) / RowsAtATime, part =>
        {
            Span<double> rows = mean.AsSpan(part * RowsAtATime, Math.Min(RowsAtATime, mean.Length - (part * RowsAtATime)));
            rows.Clear();
            foreach (LogColumn column in groups)
                AddTo(rows, column.Values.AsSpan(part * RowsAtATime, rows.Length));
            foreach (ref double row in rows)
                row /= groups.Length;
        }, options.Stopped);
        return mean;
    }

    private static void AddTo(Span<double> sum, ReadOnlySpan<double> values)
    {
        for (int i = 0; i < sum.Length; i++)
            sum[i] += values[i];
    }
}
