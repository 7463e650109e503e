using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Logs with one row a value: time, which cell or signal, value.</summary>
internal static class LongLog
{
    internal static LogFormat<PackLogReading> Format { get; } = new(NeedsTime: true, Suits, Read);

    private static bool Suits(LogHead head, LogColumns columns) => NameColumn(head, columns) is { } name && ValueColumn(columns, name) is not null;

    private static Outcome<PackLogReading> Read(SourceFile source, LogHead head, LogColumns columns, ReadOptions options)
    {
        if (TimeColumn.Find(columns, head) is not { } time)
            return PackLogs.NoTime(source, head);
        if (time.InTwoWays(source) is { } twoWays)
            return twoWays;
        LogColumn name = NameColumn(head, columns)!;
        LogColumn value = ValueColumn(columns, name)!;
        time.Mark();
        (name.Role, value.Role) = (ColumnRole.Signal, ColumnRole.Value);
        LogColumn[] beside = [.. columns.All.Where(column => column != name && column != value && column != time.Column
            && (column == columns[ColumnRole.Current] || column == columns[ColumnRole.ChargeCurrent] || column == columns[ColumnRole.StateOfCharge] || column == columns[ColumnRole.PackVoltage] || columns.Probes.Contains(column)))];
        RowCounter counter = new(source.Name);
        if (!LongRows.Read(source, head, time, name, value, beside, counter, options).Is(out LongRows? rows, out Refusal? why))
            return why;
        if (rows.Moments.Length < 2)
            return PackLogs.NoRows(source);
        LogClock clock = LogClock.Of(rows.Moments, time, manyAMoment: true, alwaysSort: rows.NameByName());
        if (LongTable.Of(rows, clock, options.Stopped) is not { } table)
            return LogReading.TooManyFigures(source, (long)rows.Names.Count * rows.Moments.Length);
        LogColumns named = LogColumns.OfNames([.. rows.Names], [.. table.Named.Select(values => values.Take(2000).ToArray())], options.Columns);
        if (value.Unit is { Of: Dimension.Voltage } unit)
            foreach (LogColumn group in named.Groups)
                group.Unit ??= unit;
        LogColumns all = LogColumns.Join(named, beside);
        for (int i = 0; i < named.All.Length; i++)
            named.All[i].Values = table.Named[i];
        for (int i = 0; i < beside.Length; i++)
            beside[i].Values = table.Beside[i];
        LogClock moments = clock with { TimeS = table.TimeS, Order = null, UsualStepS = table.UsualStepS };
        PackAssembly assembly = new(source, all, moments, table.Lines, counter, options);
        if (!assembly.Assemble().Is(out RideLog? log, out why))
            return why;
        FileShape shape = PackLogs.Shape(source, head, columns, assembly, "long", log) with { Columns = ColumnsRead(columns, name, value, named) };
        string[] said =
        [
            .. assembly.Understood,
            .. table.OnlyChanges ? ["The log holds changes only; a value that is not there is unchanged."] : Array.Empty<string>(),
            .. NotUsed(rows, named),
        ];
        return new PackLogReading(log, counter.Account(), shape, said);
    }

    private static IEnumerable<string> NotUsed(LongRows rows, LogColumns named)
    {
        int[] unknown = [.. Enumerable.Range(0, named.All.Length).Where(i => named.All[i].Role == ColumnRole.Unknown)];
        if (unknown.Length > 0)
            yield return $"{unknown.Sum(i => rows.RowsOfName[i])} of {rows.Count} rows name something that is not used: {string.Join(", ", unknown.Take(8).Select(i => rows.Names[i]))}{(unknown.Length > 8 ? $" and {unknown.Length - 8} more" : "")}.";
    }

    // Few different entries, each coming again and again, with figures beside them.
    private static LogColumn? NameColumn(LogHead head, LogColumns columns)
    {
        foreach (LogColumn column in columns.All)
        {
            if (column.Role is not (ColumnRole.Signal or ColumnRole.Label or ColumnRole.Group or ColumnRole.Slot or ColumnRole.CellVoltage or ColumnRole.Unknown or ColumnRole.Remark))
                continue;
            string[] entries = [.. head.Rows.Select(row => column.Index < row.Count ? row[column.Index] : "").Where(entry => entry.Length > 0)];
            int different = entries.Distinct().Count();
            if (entries.Length * 2 < head.Rows.Count || different < 2 || (different * 2 > entries.Length + 1 && column is not { Role: ColumnRole.Signal, Fit: >= 1000 }))
                continue;
            if (column.Sample.Count(double.IsFinite) * 2 > column.Sample.Length && (column.Sample.Any(figure => double.IsFinite(figure) && figure != Math.Floor(figure)) || column.Role == ColumnRole.Unknown))
                continue;
            return column;
        }

        return null;
    }

    private static LogColumn? ValueColumn(LogColumns columns, LogColumn name) =>
        columns.All.Where(column => column != name && column.Role is ColumnRole.Value or ColumnRole.Voltage or ColumnRole.CellVoltage
                && column != name && column.Sample.Any(double.IsFinite))
            .OrderByDescending(column => column.Role == ColumnRole.Value ? 1 : 0).FirstOrDefault();

    private static IReadOnlyList<ColumnReading> ColumnsRead(LogColumns columns, LogColumn name, LogColumn value, LogColumns named) =>
    [
        .. columns.All.Select(column => column == name ? new ColumnReading(column.Name, "cell or signal", null, "heading and values")
            : column == value ? new ColumnReading(column.Name, "value", named.Groups.FirstOrDefault()?.Unit?.Name ?? column.Unit?.Name, named.Groups.FirstOrDefault()?.SetBy ?? column.SetBy)
            : new ColumnReading(column.Name, column.Values.Length > 0 || column.TellsTime ? RoleNames.Of(column.Role) : "not used", column.Unit?.Name, column.SetBy)),
    ];
}
