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
            if (!(IsJson(file) || JsonLook.IsJson(file) ? OfDocument(added, file) : OfFile(added, file, options)).Is(out AddedFiles? more, out Refusal? why))
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
    public static Outcome<AddedFiles> Add(JobHistory history, string name, byte[] bytes)
    {
        AddedFiles none = new(history, RowAccount.Nothing, [], []);
        return IsJson(name) || JsonLook.BeginsAsObject(bytes)
            ? Document(none, name, bytes)
            : Read(none, name, "-", new ReadOptions { StandardInput = () => new MemoryStream(bytes), StandardInputName = name }, JobFile.FingerprintOf(bytes));
    }

    private static Outcome<AddedFiles> OfDocument(AddedFiles added, string file) =>
        InputBytes.Read(file).Is(out byte[]? bytes, out Refusal? why) ? Document(added, file, bytes) : why;

    private static Outcome<AddedFiles> Document(AddedFiles added, string file, byte[] bytes) =>
        JobDocuments.Change(file, bytes, added.History.Now).Is(out JobChange? change, out Refusal? unfit)
            ? added with { History = added.History.Do(change), Did = [.. added.Did, change.Name] }
            : unfit;

    // Tables and logs are never in memory as a whole: a long ride is some hundred megabytes of text.
    private static Outcome<AddedFiles> OfFile(AddedFiles added, string file, ReadOptions options) =>
        InputBytes.FingerprintOf(file).Is(out string? sum, out Refusal? why) ? Read(added, file, file, options with { StandardInput = null }, sum) : why;

    private static Outcome<AddedFiles> Read(AddedFiles added, string file, string read, ReadOptions options, string sum)
    {
        Job job = added.History.Now;
        ReadOptions asCells = options with { Chemistry = options.Chemistry ?? job.Givens.Chemistry, RatedAh = options.RatedAh ?? job.Givens.RatedAh };
        ReadOptions asLog = asCells with
        {
            RatedAh = options.RatedAh ?? job.Givens.RatedAh * (job.Givens.Parallel ?? 1),
            Series = options.Series ?? job.Givens.Series,
        };
        if (!FileLooks.KindOf(read, asLog).Is(out string? kind, out Refusal? why))
            return why;
        JobSource Source(SourceKind of, IReadOnlyList<string> understood) => new(job.NextSourceId, Path.GetFileName(file), sum, of, understood);
        if (kind == "pack-log")
        {
            if (!PackLogs.Read(read, asLog).Is(out PackLogReading? log, out why))
                return why;
            JobLog taken = new(Source(SourceKind.PackLog, log.Understood), log.Log, log.Account.RowsRead - log.Account.RowsUsed);
            return Added(added, JobChanges.AddLog(taken), log.Account, log.Understood, $"add {taken.Source.File}: a log of {log.Log.Rows} rows and {log.Log.Groups} groups");
        }

        if (!CellSources.Read([read], asCells, job.Givens.NumberOf("emptyV")).Is(out CellTableReading? reading, out why))
            return why;
        JobSource source = Source(SourceKind.Cells, reading.Understood);
        JobTable table = new(
            source, [.. reading.Rows.Select(row => row with { File = source.File })], reading.Account.RowsRead - reading.Account.RowsUsed);
        string what = kind == "tester-log" ? $"the log of cell {table.Rows[0].Label}" : $"{table.Rows.Count} rows of cells";
        return Added(added, JobChanges.AddTable(table), reading.Account, reading.Understood, $"add {source.File}: {what}");
    }

    private static AddedFiles Added(AddedFiles before, JobChange change, RowAccount account, IReadOnlyList<string> understood, string did) => new(
        before.History.Do(change), RowAccount.Together([before.Account, account]), [.. before.Did, did], [.. before.Understood, .. understood]);

    // A file named so is told what is wrong with its JSON, whatever it begins with.
    private static bool IsJson(string name) => name.EndsWith(".json", StringComparison.OrdinalIgnoreCase);
}
