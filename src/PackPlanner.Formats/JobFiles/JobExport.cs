using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Files;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Writes what a job holds as files that other programs read.</summary>
public static class JobExport
{
    /// <summary>Writes cells, groups, logs and documents.</summary>
    /// <param name="job">The job.</param>
    /// <param name="folder">Made when it is missing.</param>
    /// <param name="decimalComma">Comma as the decimal mark and semicolon between fields.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>The files written, or why they could not be.</returns>
    public static Outcome<IReadOnlyList<string>> Write(OpenJob job, string folder, bool decimalComma, CancellationToken stopped = default)
    {
        List<(string Name, string Text)> files = [];
        Job now = job.History.Now;
        if (now.Rows.Count > 0)
            files.Add(("cells.csv", ExportedCells.Of(now.Rows).ToCsv(decimalComma)));
        if (GroupsOf(now, stopped) is { Count: > 0 } groups)
            files.Add(("groups.csv", Groups(groups).ToCsv(decimalComma)));
        if (!now.Locks.IsEmpty)
            files.Add(("locks.csv", new MainTable(["cell", "group"], [.. now.Locks.Select(pin => new object?[] { pin.Key, pin.Value })]).ToCsv(decimalComma)));
        files.AddRange(now.Logs.Select(log => ($"log-{log.Source.Id}.csv", Log(log.Log).ToCsv(decimalComma))));
        if (now.FitCase is { } space)
            files.Add(("fit-case.json", CaseAsAsked.Text(space, now.Givens)));
        files.AddRange(new (string Name, JobDocument? Document)[] { ("fit.json", now.FitAnswer), ("need.json", now.SizeNeed) }
            .Where(named => named.Document is not null).Select(named => (named.Name, named.Document!.Text)));
        return FolderFiles.Write(folder, files);
    }

    /// <summary>What the job says of its cells that their table cannot hold, and how a verb is told the same.</summary>
    /// <param name="job">The job.</param>
    /// <returns>A sentence each; empty when the table says all.</returns>
    public static IReadOnlyList<string> NotInTheTable(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        List<string> says = [];
        string Named(Func<Verdict, bool> which) => string.Join(",", job.Verdicts.Where(by => which(by.Value.Verdict)).Select(by => by.Key));
        if (Named(verdict => verdict != Verdict.Use) is { Length: > 0 } apart)
            says.Add($"held or rejected by hand, which cells.csv does not say: packplanner match takes --leave-out {apart}");
        if (Named(verdict => verdict == Verdict.Use) is { Length: > 0 } used)
            says.Add($"used by hand against a limit, which cells.csv does not say: {used}");
        if (!job.Locks.IsEmpty)
            says.Add("locked cells are in locks.csv: packplanner match takes --lock locks.csv");
        return says;
    }

    // As arranged by hand, else as the search makes them: other verbs take the groups that the screens show.
    private static IReadOnlyList<IReadOnlyList<string>> GroupsOf(Job job, CancellationToken stopped) => job.Grouping is { } arranged ? arranged.Groups
        : job.Rows.Count > 0 && JobGroups.Match(job, JobLot.Judge(job), null, stopped) is Core.Grouping.GroupingOutcome.Matched matched
            ? [.. matched.Pack.Groups.Select(group => (IReadOnlyList<string>)[.. group.Cells.Select(cell => cell.Label)])]
            : [];

    private static MainTable Groups(IReadOnlyList<IReadOnlyList<string>> groups) => new(
        ["cell", "group"],
        [.. groups.SelectMany((cells, i) => cells.Select(label => new object?[] { label, i + 1 }))]);

    private static MainTable Log(RideLog log)
    {
        List<(string Heading, double[] Values)> columns = [("time_s", log.TimeS)];
        if (log.CurrentA is { } current)
            columns.Add((log.CurrentIsUnsigned ? "current_A" : "current_discharge_positive_A", current));
        columns.AddRange(log.GroupV.Select((volts, i) => ($"cell{i + 1}_V", volts)));
        if (log.PackV is { } packV)
            columns.Add(("pack_voltage_V", packV));
        columns.AddRange(log.TemperatureDegC.Select((warmth, i) => ($"temperature{i + 1}_degC", warmth)));
        if (log.ShownStateOfCharge is { } shown)
            columns.Add(("soc_percent", [.. shown.Select(fraction => Math.Round(fraction * 100, 9))]));
        return new MainTable(
            [.. columns.Select(column => column.Heading)],
            [.. Enumerable.Range(0, log.Rows).Select(row => columns.Select(column => (object?)column.Values[row]).ToArray())]);
    }
}
