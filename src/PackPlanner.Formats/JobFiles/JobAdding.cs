using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Files;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Takes files into a job: whatever they are, by the same readers as the verbs.</summary>
public static class JobAdding
{
    /// <summary>Adds files, each as a change of its own; when one cannot be added, none is.</summary>
    /// <param name="history">The job.</param>
    /// <param name="files">Paths; tables, logs, and JSON documents of ours.</param>
    /// <param name="options">How tables and logs are to be read.</param>
    /// <returns>The job with the files and what was taken in, or the first refusal.</returns>
    public static Outcome<AddedFiles> Add(JobHistory history, IReadOnlyList<string> files, ReadOptions options)
    {
        AddedFiles added = new(history, RowAccount.Nothing, [], []);
        foreach (string file in files)
        {
            if (!InputBytes.Read(file).Is(out byte[]? bytes, out Refusal? why) || !AddOne(added, file, bytes, options, inMemory: false).Is(out AddedFiles? more, out why))
                return why;
            added = more;
        }

        return added;
    }

    /// <summary>Adds a file that is in memory.</summary>
    /// <param name="history">The job.</param>
    /// <param name="name">What the file is called.</param>
    /// <param name="bytes">Its content.</param>
    /// <returns>The job with it, or why not.</returns>
    public static Outcome<AddedFiles> Add(JobHistory history, string name, byte[] bytes) =>
        AddOne(new AddedFiles(history, RowAccount.Nothing, [], []), name, bytes, new ReadOptions(), inMemory: true);

    private static Outcome<AddedFiles> AddOne(AddedFiles added, string file, byte[] bytes, ReadOptions options, bool inMemory)
    {
        Job job = added.History.Now;
        if (IsJson(file, bytes))
        {
            return JobDocuments.Change(file, bytes, job).Is(out JobChange? change, out Refusal? unfit)
                ? added with { History = added.History.Do(change), Did = [.. added.Did, change.Name] }
                : unfit;
        }

        string read = inMemory ? "-" : file;
        Func<Stream>? memory = inMemory ? () => new MemoryStream(bytes) : null;
        ReadOptions asLog = options with
        {
            Chemistry = options.Chemistry ?? job.Givens.Chemistry,
            RatedAh = options.RatedAh ?? job.Givens.RatedAh * (job.Givens.Parallel ?? 1),
            Series = options.Series ?? job.Givens.Series,
            StandardInput = memory,
            StandardInputName = inMemory ? file : options.StandardInputName,
        };
        if (!FileLooks.KindOf(read, asLog).Is(out string? kind, out Refusal? why))
            return why;
        JobSource Source(SourceKind of, IReadOnlyList<string> understood) =>
            new(job.NextSourceId, Path.GetFileName(file), JobFile.FingerprintOf(bytes), of, understood);
        if (kind == "pack-log")
        {
            if (!PackLogs.Read(read, asLog).Is(out PackLogReading? log, out why))
                return why;
            JobLog taken = new(Source(SourceKind.PackLog, log.Understood), log.Log, log.Account.RowsRead - log.Account.RowsUsed);
            return Added(added, JobChanges.AddLog(taken), log.Account, log.Understood, $"add {taken.Source.File}: a log of {log.Log.Rows} rows and {log.Log.Groups} groups");
        }

        ReadOptions asCells = options with { Chemistry = asLog.Chemistry, RatedAh = options.RatedAh ?? job.Givens.RatedAh, StandardInput = memory, StandardInputName = asLog.StandardInputName };
        if (!CellTables.Read([read], asCells).Is(out CellTableReading? reading, out why))
            return why;
        JobSource source = Source(SourceKind.Cells, reading.Understood);
        JobTable table = new(
            source, [.. reading.Rows.Select(row => row with { File = source.File })], reading.Account.RowsRead - reading.Account.RowsUsed);
        return Added(added, JobChanges.AddTable(table), reading.Account, reading.Understood, $"add {source.File}: {table.Rows.Count} rows of cells");
    }

    private static AddedFiles Added(AddedFiles before, JobChange change, RowAccount account, IReadOnlyList<string> understood, string did) => new(
        before.History.Do(change), RowAccount.Together([before.Account, account]), [.. before.Did, did], [.. before.Understood, .. understood]);

    private static bool IsJson(string file, byte[] bytes) =>
        file.EndsWith(".json", StringComparison.OrdinalIgnoreCase) || bytes.AsSpan().TrimStart("\uFEFF\t\r\n "u8).StartsWith("{"u8);
}
