using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Screens.Reading;

/// <summary>What of a file the job holds already: said before it is taken, so that nobody brings it in twice unawares.</summary>
internal static class AlreadyHere
{
    /// <summary>A sentence with a blank before it; empty where the file is new.</summary>
    /// <param name="job">The job it would be added to.</param>
    /// <param name="fingerprint">The checksum of the file.</param>
    internal static string Same(Job job, string fingerprint) =>
        job.Sources.FirstOrDefault(source => source.Sha256 == fingerprint) is { } before ? $" This very file is in the job already, as {before.File}: leave it with Esc." : "";

    /// <summary>Like <see cref="Same"/>, and where a log is older than one that is there, which it then stands before.</summary>
    internal static string Log(Job job, string fingerprint, DateTime? start)
    {
        if (Same(job, fingerprint) is { Length: > 0 } same)
            return same;
        return job.Logs.FirstOrDefault(log => log.Log.Start > start) is { } later
            ? $" Of {start:yyyy-MM-dd}, before {later.Source.File} of {later.Log.Start:yyyy-MM-dd}: it is the earlier of them."
            : "";
    }

    /// <summary>What became of labels that the job has in another spelling.</summary>
    /// <param name="meant">The job's label by each that is written otherwise.</param>
    /// <param name="asInJob">Whether they are taken as those of the job.</param>
    internal static IEnumerable<string> Spelt(IReadOnlyDictionary<string, string> meant, bool asInJob) => meant.Count == 0 ? [] :
        [$"{string.Join(", ", meant.Take(4).Select(pair => $"{pair.Key} ({pair.Value})"))}{(meant.Count > 4 ? $" and {meant.Count - 4} more" : "")}: "
            + (asInJob ? "taken as those of the job." : "in the job in another spelling; kept apart as different cells.")];

    /// <summary>Like <see cref="Same"/>, and where the file is new how many of its cells the job knows.</summary>
    internal static string Cells(Job job, string fingerprint, IReadOnlyList<CellRow> rows)
    {
        if (Same(job, fingerprint) is { Length: > 0 } same)
            return same;
        HashSet<string> known = [.. job.Rows.Select(row => row.Label)];
        string[] labels = [.. rows.Select(row => row.Label).Distinct(StringComparer.Ordinal)];
        int met = labels.Count(known.Contains);
        return met == 0 ? ""
            : $" {(met < labels.Length ? $"{met} of its labels are" : met == 1 ? "Its label is" : $"All {met} labels are")} in the job already: their rows are taken as further readings of those cells.";
    }
}
