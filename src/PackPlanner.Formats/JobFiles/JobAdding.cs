using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Files;
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

        ReadOptions told = options with
        {
            Chemistry = options.Chemistry ?? job.Givens.Chemistry,
            RatedAh = options.RatedAh ?? job.Givens.RatedAh,
            StandardInput = inMemory ? () => new MemoryStream(bytes) : null,
        };
        if (!CellTables.Read([inMemory ? "-" : file], told).Is(out CellTableReading? reading, out Refusal? why))
            return why;
        JobSource source = new(job.NextSourceId, Path.GetFileName(file), JobFile.FingerprintOf(bytes), SourceKind.Cells, reading.Understood);
        JobTable table = new(
            source, [.. reading.Rows.Select(row => row with { File = source.File })], reading.Account.RowsRead - reading.Account.RowsUsed);
        return new AddedFiles(
            added.History.Do(JobChanges.AddTable(table)),
            RowAccount.Together([added.Account, reading.Account]),
            [.. added.Did, $"add {source.File}: {table.Rows.Count} rows of cells"],
            [.. added.Understood, .. reading.Understood]);
    }

    private static bool IsJson(string file, byte[] bytes) =>
        file.EndsWith(".json", StringComparison.OrdinalIgnoreCase) || bytes.AsSpan().TrimStart("\uFEFF\t\r\n "u8).StartsWith("{"u8);
}
