using System.Globalization;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.JobFiles;

/// <summary>What a job holds, for people and for scripts.</summary>
public static class JobSummary
{
    /// <summary>The answer of the verb job.</summary>
    /// <param name="job">The open job.</param>
    /// <param name="did">What this call did.</param>
    /// <param name="cautions">What is to be told with it: <see cref="Quick"/> or <see cref="Whole"/>.</param>
    /// <returns>The answer.</returns>
    public static JobAnswer Answer(OpenJob job, IReadOnlyList<string> did, IReadOnlyList<Caution> cautions)
    {
        Job now = job.History.Now;
        IReadOnlyList<Core.Cells.CellRow> rows = now.Rows;
        return new JobAnswer
        {
            Job = job.Path,
            Title = now.Title,
            Revision = job.History.Revision,
            Demo = now.IsDemo,
            Did = did,
            Givens = [.. GivenCatalogue.All.Select(entry => GivenOf(entry, now.Givens.Known.GetValueOrDefault(entry.Key)))],
            Sources = [.. Sources(now)],
            Favour = FavourText.Of(now.Favour),
            Counts = new JobCountsJson(
                rows.Select(row => row.Label).Distinct(StringComparer.Ordinal).Count(), rows.Count, now.Edits.Count, now.Verdicts.Count,
                now.Locks.Count, now.Grouping?.Groups.Count ?? 0, now.Logs.Count, now.TapReadings.Count),
            Undo = job.History.UndoName,
            Redo = job.History.RedoName,
            Changes = [.. job.History.Done.Select(step => step.Name)],
            Cautions = CautionJson.From(cautions),
        };
    }

    /// <summary>Cautions of the givens, the cells and the taps: what can be told after each change without searching for places or judging a log.</summary>
    /// <param name="now">The job.</param>
    /// <returns>Gravest first.</returns>
    public static IReadOnlyList<Caution> Quick(Job now)
    {
        ScreenedLot? lot = now.Rows.Count > 0 ? JobLot.Judge(now) : null;
        return Caution.OfOneJob([.. JobCautions.Of(now.Givens), .. lot?.Cautions ?? [], .. Taps(now, lot)]);
    }

    /// <summary>All cautions of a job, those that its screens list: its places, groups, energy and latest log are worked out for them.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>Gravest first; refused where the space cannot be read.</returns>
    public static Outcome<IReadOnlyList<Caution>> Whole(JobHistory job, CancellationToken stopped) =>
        SheetInput.Of(job, default, stopped).Is(out SheetInput? known, out Refusal? why) ? new Outcome<IReadOnlyList<Caution>>.Given(known.Cautions) : why;

    // The groups are looked for only where a reading wants to be judged.
    private static IReadOnlyList<Caution> Taps(Job now, ScreenedLot? lot) => now.TapReadings.IsEmpty ? []
        : JobTaps.Cautions(now, lot is null ? [] : JobPlaces.InSeries(JobGroups.Find(now, lot, CancellationToken.None).Groups, now.Placement));

    /// <summary>The same for people.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>Lines.</returns>
    public static IReadOnlyList<string> Lines(JobAnswer answer)
    {
        List<string> lines = [$"{answer.Title}{(answer.Demo ? " (demo copy)" : "")}, rev {answer.Revision}, {answer.Job}", .. answer.Did.Select(done => $"  {done}")];
        lines.Add("");
        foreach (GivenJson given in answer.Givens.Where(given => given.From is not null))
            lines.Add($"  {given.What,-38} {Shown(given),-12} {given.From}{(given.On is null ? "" : ", " + given.On)}");
        GivenJson[] unknown = [.. answer.Givens.Where(given => given.From is null && given.Without.Length > 0)];
        if (unknown.Length > 0)
            lines.Add($"  unknown: {string.Join(", ", unknown.Select(given => given.Key))}");
        lines.Add("");
        foreach (JobSourceJson source in answer.Sources)
        {
            string rows = source.Rows is { } held ? $", {held} rows held, {source.RowsSetAside} set aside" : "";
            lines.Add($"  {source.Id,-4} {source.File}: {source.Kind}{rows}, sha256 {source.Sha256[..Math.Min(12, source.Sha256.Length)]}");
        }

        JobCountsJson counts = answer.Counts;
        lines.Add($"  {counts.Cells} cells in {counts.Rows} rows, {counts.Edits} values changed by hand, {counts.Verdicts} verdicts by hand, {counts.Locks} locked, {counts.Logs} logs");
        if (answer.Favour != FavourText.Of(GroupsFavour.EqualAh))
            lines.Add($"  groups favour {answer.Favour}");
        lines.Add($"  {answer.Changes.Count} changes; undo: {answer.Undo ?? "-"}; redo: {answer.Redo ?? "-"}");
        return lines;
    }

    /// <summary>The givens as the answer's main table.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>A row for each given.</returns>
    public static MainTable Table(JobAnswer answer) => new(
        ["key", "what", "value", "from", "on"],
        [.. answer.Givens.Select(given => new object?[] { given.Key, given.What, (object?)given.Value ?? given.Word ?? (given.Ticked is { } tick ? tick ? "yes" : "no" : null), given.From, given.On })]);

    private static string Shown(GivenJson given) => GivenCatalogue.Find(given.Key)?.Kind switch
    {
        GivenKind.YesNo => given.Ticked == true ? "yes" : "no",
        GivenKind.Fraction => Figures.Digits(given.Value * 100, 3) + " %",
        GivenKind kind when given.Value is { } value => $"{value.ToString("R", CultureInfo.InvariantCulture)} {TypedGiven.UnitOf(kind)}".TrimEnd(),
        _ => given.Word ?? "-",
    };

    private static GivenJson GivenOf(GivenEntry entry, Given? given) => new(
        entry.Key,
        entry.What,
        given?.Value is JobValue.Number number ? number.Value : null,
        given?.Value is JobValue.Word word ? word.Value : null,
        given?.Value is JobValue.YesNo tick ? tick.Value : null,
        given?.From.From,
        given?.From.On?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        entry.Without);

    private static IEnumerable<JobSourceJson> Sources(Job job)
    {
        foreach (JobTable table in job.Tables)
            yield return Source(table.Source, table.Rows.Count, table.RowsSetAside);
        foreach (JobLog log in job.Logs)
            yield return Source(log.Source, log.Log.Rows, log.RowsSetAside);
        if (job.Grouping?.Source is { } grouping)
            yield return Source(grouping, null, null);
        foreach (JobDocument document in new[] { job.FitCase, job.FitAnswer, job.SizeNeed }.OfType<JobDocument>())
            yield return Source(document.Source, null, null);
    }

    private static JobSourceJson Source(JobSource source, int? rows, int? aside) =>
        new(source.Id, source.File, source.Sha256, SourceText.Name(source.Kind), rows, aside, source.Understood);
}
