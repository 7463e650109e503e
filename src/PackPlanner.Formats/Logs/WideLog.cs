using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Logs with one row a moment and one column a series group.</summary>
internal static class WideLog
{
    internal static LogFormat<PackLogReading> Format { get; } = new(NeedsTime: true, Suits, Read);

    private static bool Suits(LogHead head, LogColumns columns) => columns.Groups.Length >= 2;

    private static Outcome<PackLogReading> Read(SourceFile source, LogHead head, LogColumns columns, ReadOptions options)
    {
        if (TimeColumn.Find(columns, head) is not { } time)
            return PackLogs.NoTime(source, head);
        if (time.InTwoWays(source) is { } twoWays)
            return twoWays;
        time.Mark();
        // A counter tells the unit of the time where the heading does not.
        LogColumn? counts = time.IsStamp || time.Column.Unit is not null ? null : columns[ColumnRole.Capacity];
        LogColumn[] wanted = counts is null ? Wanted(columns) : [.. Wanted(columns), counts];
        RowCounter counter = new(source.Name);
        if (!LogRows.Read(source, head, time, wanted, counter, options).Is(out LogRows? rows, out Refusal? why))
            return why;
        if (rows.Moments.Length < 2)
            return PackLogs.NoRows(source);
        LogClock clock = LogClock.Of(rows.Moments, time, charge: new ChargeAgainstClock(columns[ColumnRole.Current], columns[ColumnRole.ChargeCurrent], counts, columns.Groups, options.RatedAh));
        PackAssembly assembly = new(source, columns, clock, rows.Lines, counter, options);
        return assembly.Assemble().Is(out Core.Diagnosis.RideLog? log, out why)
            ? new PackLogReading(log, counter.Account(), PackLogs.Shape(source, head, columns, assembly, "wide", log), assembly.Understood)
            : why;
    }

    // Each role is looked up once: a log may have thousands of columns.
    private static LogColumn[] Wanted(LogColumns columns)
    {
        HashSet<LogColumn> wanted = [.. columns.Groups, .. columns.Probes];
        LogColumn?[] others = [columns[ColumnRole.Current], columns[ColumnRole.ChargeCurrent], columns.Direction, columns[ColumnRole.StateOfCharge], columns[ColumnRole.PackVoltage] ?? columns[ColumnRole.Voltage]];
        wanted.UnionWith(others.OfType<LogColumn>());
        return [.. columns.All.Where(wanted.Contains)];
    }
}
