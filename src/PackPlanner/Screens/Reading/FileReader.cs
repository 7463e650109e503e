using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Screens.Reading;

/// <summary>Reads a file by the same doors as the verbs, whatever it is.</summary>
internal static class FileReader
{
    internal static FileInHand? Read(FileChoices choices, Job job, CancellationToken stopped, out Refusal? why)
    {
        if (IsJson(choices.Path))
            return Document(choices, job, out why);
        JobGivens givens = job.Givens;
        ReadOptions options = choices.Into(new() { Chemistry = givens.Chemistry, RatedAh = givens.RatedAh, Series = givens.Series, Stopped = stopped });
        ReadOptions logOptions = options with { RatedAh = givens.RatedAh * (givens.Parallel ?? 1) };
        // Looked at first, so that a log is not refused as a bad table, nor a table as a bad log.
        if (FileLooks.KindOf(choices.Path, logOptions).Is(out string? kind, out _) && kind == "pack-log")
            return PackLogs.Read(choices.Path, logOptions).Is(out PackLogReading? log, out why) ? Log(choices, log, job) : null;
        if (!CellSources.Read([choices.Path], options, givens.NumberOf("emptyV")).Is(out CellTableReading? reading, out why))
            return null;
        return Cells(choices, reading, job);
    }

    private static FileInHand Log(FileChoices choices, PackLogReading reading, Job now)
    {
        string sum = ReadingStart.Fingerprint(choices.Path);
        RowAccount account = reading.Account;
        string sign = reading.Shape.CurrentSign switch
        {
            "discharge-positive" => " Plus is discharge.",
            "charge-positive" => " Plus was charge; turned round.",
            "unsigned" => " The current has no sign.",
            _ => reading.Log.CurrentA is null ? " No current in it." : "",
        };
        return new FileInHand(
            "Have I read your log right?",
            $"{account.RowsRead} rows read: {account.RowsUsed} used, {account.RowsRead - account.RowsUsed} set aside. {reading.Log.Groups} groups, {reading.Log.TimeS[^1] / 3600:0.0} h.{sign}{AlreadyHere.Log(now, sum, reading.Log.Start)}",
            reading.Shape.Kind,
            reading.Shape.Columns,
            FirstValuesOfLog.Of(reading),
            account,
            reading.Understood,
            job => JobChanges.AddLog(new JobLog(
                new JobSource(job.NextSourceId, choices.Shown, sum, SourceKind.PackLog, reading.Understood), reading.Log, account.RowsRead - account.RowsUsed)),
            Step: 6);
    }

    /// <summary>Whether it is a document of ours: it is told by what it holds, and whatever begins like one is read as one.</summary>
    internal static bool IsJson(string path)
    {
        try
        {
            using StreamReader reader = new(path);
            int first;
            do
                first = reader.Read();
            while (first >= 0 && char.IsWhiteSpace((char)first));
            return first == '{';
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            // The reader of tables says better what is wrong with the file.
            return false;
        }
    }

    private static FileInHand? Document(FileChoices choices, Job job, out Refusal? why)
    {
        byte[] bytes = File.ReadAllBytes(choices.Path);
        if (!JobDocuments.Change(choices.Shown, bytes, job).Is(out JobChange? change, out why))
            return null;
        Job after = change.Apply(job);
        // A space that cannot be read must not take the place of one that can.
        if (!ReferenceEquals(after.FitCase, job.FitCase) && !JobFit.Case(after).Is(out _, out why))
            return null;
        (string what, int step) = !ReferenceEquals(after.FitCase, job.FitCase) ? ("a cavity with its cell and clearances", 3)
            : !ReferenceEquals(after.FitAnswer, job.FitAnswer) ? ("positions of cells in a cavity", 4)
            : !ReferenceEquals(after.Grouping, job.Grouping) ? ("a grouping: which cell stands in which group", 2)
            : !ReferenceEquals(after.SizeNeed, job.SizeNeed) ? ("what the vehicle needs", 3)
            : ("givens: what the job is to know", 0);
        return new FileInHand(
            "Have I read your file right?", $"{choices.Shown} holds {what}.", "", [], new Dictionary<string, string>(), null, [change.Name],
            now => JobDocuments.Change(choices.Shown, bytes, now).Is(out JobChange? again, out _) ? again : change, step);
    }

    private static FileInHand Cells(FileChoices choices, CellTableReading reading, Job now)
    {
        string sum = ReadingStart.Fingerprint(choices.Path);
        IReadOnlyDictionary<string, string> meant = LabelClashes.Meant(now.Rows.Select(row => row.Label), reading.Rows.Select(row => row.Label));
        CellRow[] rows = [.. reading.Rows.Select(row => row with { File = choices.Shown, Label = choices.AsInJob ? meant.GetValueOrDefault(row.Label, row.Label) : row.Label })];
        string[] sentences = [.. AlreadyHere.Spelt(meant, choices.AsInJob), .. reading.Understood];
        int cells = rows.Select(row => row.Label).Distinct(StringComparer.Ordinal).Count();
        int again = rows.Length - cells;
        string repeats = again == 0 ? "" : again == 1 ? " (one a repeat)" : $" ({again} repeats)";
        RowAccount account = reading.Account;
        return new FileInHand(
            "Have I read your file right?",
            $"{cells} cell{(cells == 1 ? "" : "s")}. {account.RowsRead} rows read: {account.RowsUsed} used{repeats}, {account.RowsRead - account.RowsUsed} set aside.{AlreadyHere.Cells(now, sum, rows)}",
            reading.Shapes[0].Kind,
            reading.Shapes[0].Columns,
            FirstValuesOfCells.Of(reading.Shapes[0].Columns, rows),
            account,
            sentences,
            job => JobChanges.AddTable(new JobTable(
                new JobSource(job.NextSourceId, choices.Shown, sum, SourceKind.Cells, sentences), rows, account.RowsRead - account.RowsUsed)),
            Step: 1)
        { Spelt = meant.Count };
    }
}
