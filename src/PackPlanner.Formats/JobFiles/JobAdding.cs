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
        List<RowAccount> accounts = [];
        List<string> did = [];
        List<string> understood = [];
        foreach (string file in files)
        {
            if (!InputBytes.Read(file).Is(out byte[]? bytes, out Refusal? why))
                return why;
            if (IsJson(file, bytes))
            {
                if (!JobDocuments.Change(file, bytes, history.Now).Is(out JobChange? change, out why))
                    return why;
                history = history.Do(change);
                did.Add(change.Name);
                continue;
            }

            if (!CellTables.Read([file], options with { Chemistry = options.Chemistry ?? history.Now.Givens.Chemistry, RatedAh = options.RatedAh ?? history.Now.Givens.RatedAh }).Is(out CellTableReading? reading, out why))
                return why;
            JobSource source = new(history.Now.NextSourceId, Path.GetFileName(file), JobFile.FingerprintOf(bytes), SourceKind.Cells, reading.Understood);
            JobTable table = new(
                source, [.. reading.Rows.Select(row => row with { File = source.File })], reading.Account.RowsRead - reading.Account.RowsUsed);
            history = history.Do(JobChanges.AddTable(table));
            accounts.Add(reading.Account);
            understood.AddRange(reading.Understood);
            did.Add($"add {source.File}: {table.Rows.Count} rows of cells");
        }

        return new AddedFiles(history, RowAccount.Together(accounts), did, understood);
    }

    private static bool IsJson(string file, byte[] bytes) =>
        file.EndsWith(".json", StringComparison.OrdinalIgnoreCase) || bytes.AsSpan().TrimStart("\uFEFF\t\r\n "u8).StartsWith("{"u8);
}
