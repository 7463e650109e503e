using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
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
    /// <returns>The files written, or why they could not be.</returns>
    public static Outcome<IReadOnlyList<string>> Write(OpenJob job, string folder, bool decimalComma)
    {
        List<(string Name, string Text)> files = [];
        Job now = job.History.Now;
        if (now.Rows.Count > 0)
            files.Add(("cells.csv", Cells(now).ToCsv(decimalComma)));
        if (now.Grouping is { } grouping)
            files.Add(("groups.csv", Groups(grouping).ToCsv(decimalComma)));
        files.AddRange(now.Logs.Select(log => ($"log-{log.Source.Id}.csv", Log(log.Log).ToCsv(decimalComma))));
        files.AddRange(new (string Name, JobDocument? Document)[] { ("fit-case.json", now.FitCase), ("fit.json", now.FitAnswer), ("need.json", now.SizeNeed) }
            .Where(named => named.Document is not null).Select(named => (named.Name, named.Document!.Text)));
        return FolderFiles.Write(folder, files);
    }

    private static MainTable Cells(Job job)
    {
        (string Heading, Func<CellRow, object?> Of)[] columns =
        [
            ("cell", row => row.Label),
            ("capacity_Ah", row => row.CapacityAh),
            ("rated_Ah", row => row.RatedAh),
            ("resistance_mohm", row => row.ResistanceMilliohm),
            ("resistance_kind", row => row.ResistanceKind switch { ResistanceKind.Dc => "dc", ResistanceKind.Ac1Khz => "ac-1khz", _ => null }),
            ("rest_V", row => row.RestV),
            ("date", row => row.Date?.ToString("yyyy-MM-dd", null)),
            ("end_V", row => row.TestEndV),
            ("cutoff_V", row => row.TestCutoffV),
            ("current_A", row => row.TestCurrentA),
            ("temperature_degC", row => row.TemperatureDegC),
            ("slot", row => row.Slot),
            ("tray", row => row.Tray),
            ("model", row => row.Model),
            ("batch", row => row.Batch),
            ("chemistry", row => row.Chemistry),
            ("condition", row => row.Condition),
        ];
        IReadOnlyList<CellRow> rows = job.Rows;
        (string Heading, Func<CellRow, object?> Of)[] used = [.. columns.Where(column => rows.Any(row => column.Of(row) is not null))];
        return new MainTable([.. used.Select(column => column.Heading)], [.. rows.Select(row => used.Select(column => column.Of(row)).ToArray())]);
    }

    private static MainTable Groups(JobGrouping grouping) => new(
        ["cell", "group"],
        [.. grouping.Groups.SelectMany((cells, i) => cells.Select(label => new object?[] { label, i + 1 }))]);

    private static MainTable Log(RideLog log)
    {
        List<(string Heading, double[] Values)> columns = [("time_s", log.TimeS)];
        if (log.CurrentA is { } current)
            columns.Add(("current_A_discharge_positive", current));
        columns.AddRange(log.GroupV.Select((volts, i) => ($"cell{i + 1}_V", volts)));
        columns.AddRange(log.TemperatureDegC.Select((warmth, i) => ($"temperature{i + 1}_degC", warmth)));
        return new MainTable(
            [.. columns.Select(column => column.Heading)],
            [.. Enumerable.Range(0, log.Rows).Select(row => columns.Select(column => (object?)column.Values[row]).ToArray())]);
    }
}
