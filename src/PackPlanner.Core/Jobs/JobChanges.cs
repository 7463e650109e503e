using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Jobs;

/// <summary>The changes that verbs and screens make, each with the name that undo shows.</summary>
public static class JobChanges
{
    /// <summary>Tells the job something, or makes it unknown again.</summary>
    /// <param name="key">A key of <see cref="GivenCatalogue"/>.</param>
    /// <param name="given">The value; null forgets it.</param>
    /// <returns>The change.</returns>
    public static JobChange Set(string key, Given? given) =>
        new($"{(given is null ? "forget" : "set")} {GivenCatalogue.Find(key)?.What ?? key}", job => job with { Givens = job.Givens.With(key, given) });

    /// <summary>Calls the job something else.</summary>
    /// <param name="title">The new title.</param>
    /// <returns>The change.</returns>
    public static JobChange Rename(string title) => new($"rename to {title}", job => job with { Title = title });

    /// <summary>Takes in a table of cells.</summary>
    /// <param name="table">Its rows; the source's id must be <see cref="Job.NextSourceId"/>.</param>
    /// <returns>The change.</returns>
    public static JobChange AddTable(JobTable table) => Adding(table.Source, job => JobRows.WithEditsAtTheirRows(job, job with { Tables = job.Tables.Add(table) }));

    /// <summary>Takes in a log; where the logs tell their days it stands before those that are later, whenever it was added.</summary>
    /// <param name="log">Its columns; the source's id must be <see cref="Job.NextSourceId"/>.</param>
    /// <returns>The change.</returns>
    public static JobChange AddLog(JobLog log) => Adding(log.Source, job => job with { Logs = job.Logs.Insert(PlaceOf(log, job), log) });

    // The last log tells how the pack is now: a base line that is found later must not take its place.
    private static int PlaceOf(JobLog log, Job job) =>
        log.Log.Start is { } start && job.Logs.FindIndex(other => other.Log.Start > start) is >= 0 and { } later ? later : job.Logs.Count;

    /// <summary>Takes in a document of ours: a fit case, a fit answer or a size need, by its source's kind.</summary>
    /// <param name="document">The document; the source's id must be <see cref="Job.NextSourceId"/>.</param>
    /// <returns>The change.</returns>
    /// <exception cref="ArgumentException">The kind is none of the three.</exception>
    public static JobChange AddDocument(JobDocument document) => document.Source.Kind switch
    {
        SourceKind.FitCase => Adding(document.Source, job => job with { FitCase = document, FitAnswer = null }),
        SourceKind.FitAnswer => Adding(document.Source, job => job with { FitAnswer = document }),
        SourceKind.SizeNeed => Adding(document.Source, job => job with { SizeNeed = document }),
        _ => throw new ArgumentException($"{document.Source.Kind} is not kept as a document", nameof(document)),
    };

    /// <summary>Takes in a grouping from a file.</summary>
    /// <param name="grouping">With its source, whose id must be <see cref="Job.NextSourceId"/>.</param>
    /// <returns>The change.</returns>
    /// <exception cref="ArgumentException">The grouping has no source.</exception>
    public static JobChange AddGrouping(JobGrouping grouping) => Adding(
        grouping.Source ?? throw new ArgumentException("a grouping from a file has a source", nameof(grouping)),
        job => Arranged(job, grouping));

    /// <summary>Takes a table, log or document out again. Values changed by hand in its rows go with it, verdicts of its cells stay.</summary>
    /// <param name="source">The source to remove.</param>
    /// <returns>The change.</returns>
    public static JobChange Remove(JobSource source) => new($"take out {source.File}", job => JobRows.WithEditsAtTheirRows(job, job with
    {
        Tables = job.Tables.RemoveAll(table => table.Source.Id == source.Id),
        Logs = job.Logs.RemoveAll(log => log.Source.Id == source.Id),
        Grouping = job.Grouping?.Source?.Id == source.Id ? null : job.Grouping,
        FitCase = job.FitCase?.Source.Id == source.Id ? null : job.FitCase,
        FitAnswer = job.FitAnswer?.Source.Id == source.Id ? null : job.FitAnswer,
        SizeNeed = job.SizeNeed?.Source.Id == source.Id ? null : job.SizeNeed,
    }));

    /// <summary>Adds a cell, or one more test of a cell, by hand.</summary>
    /// <param name="row">What is known of it.</param>
    /// <returns>The change.</returns>
    public static JobChange AddRow(CellRow row) =>
        new($"add {row.Label} by hand", job => JobRows.WithEditsAtTheirRows(job, job with { AddedRows = job.AddedRows.Add(row) }));

    /// <summary>Changes a value of a cell; what was read is kept.</summary>
    /// <param name="key">Which value.</param>
    /// <param name="edit">The new value and its origin; null goes back to what was read.</param>
    /// <returns>The change.</returns>
    public static JobChange Edit(CellKey key, CellEdit? edit) => new(
        $"{(edit is null ? "restore" : "change")} {Words(key.Field)} of {key.Label}",
        job => job with { Edits = edit is null ? job.Edits.Remove(key) : job.Edits.SetItem(key, edit) });

    private static string Words(CellField field) => field switch
    {
        CellField.CapacityAh => "Ah",
        CellField.ResistanceMilliohm => "milliohm",
        CellField.RestV => "resting V",
        CellField.Date => "its day",
        CellField.LaterRestV => "fresh V",
        CellField.LaterDate => "day of fresh V",
        CellField.RatedAh => "rated Ah",
        CellField.Condition => "looks",
        CellField.MassG => "mass",
        CellField.TemperatureDegC => "temperature",
        _ => field.ToString().ToLowerInvariant(),
    };

    /// <summary>Sets a verdict by hand.</summary>
    /// <param name="label">The cell.</param>
    /// <param name="verdict">The verdict with its reason; null goes back to the computed one.</param>
    /// <returns>The change.</returns>
    public static JobChange SetVerdict(string label, VerdictOverride? verdict) => new(
        verdict is null ? $"judge {label} by the limits again" : $"{verdict.Verdict.ToString().ToLowerInvariant()} {label}",
        job => job with { Verdicts = verdict is null ? job.Verdicts.Remove(label) : job.Verdicts.SetItem(label, verdict) });

    /// <summary>Locks a cell into a group, or sets it free.</summary>
    /// <param name="label">The cell.</param>
    /// <param name="group">The group from 1; null sets it free.</param>
    /// <returns>The change.</returns>
    public static JobChange Lock(string label, int? group) => new(
        group is { } number ? $"lock {label} in group {number}" : $"unlock {label}",
        job => job with { Locks = group is { } fixedTo ? job.Locks.SetItem(label, fixedTo) : job.Locks.Remove(label) });

    /// <summary>Takes a grouping over, or gives the search its freedom back.</summary>
    /// <param name="name">What undo shows: exchange T004 and T091.</param>
    /// <param name="grouping">The grouping; null for the search's own.</param>
    /// <returns>The change.</returns>
    public static JobChange SetGrouping(string name, JobGrouping? grouping) => new(name, job => Arranged(job, grouping));

    /// <summary>Chooses what the groups favour.</summary>
    /// <param name="favour">What comes first.</param>
    /// <returns>The change.</returns>
    public static JobChange Prefer(GroupsFavour favour) => new(
        favour switch { GroupsFavour.EvenCurrents => "favour even currents", GroupsFavour.FewestMoves => "favour fewest moves", _ => "favour equal Ah" },
        job => job with { Favour = favour });

    /// <summary>Changes where groups stand.</summary>
    /// <param name="name">What undo shows: turn group 3 over.</param>
    /// <param name="placement">The new placement.</param>
    /// <returns>The change.</returns>
    public static JobChange SetPlacement(string name, JobPlacement placement) => new(name, job => job with
    {
        Placement = placement,
        TapReadings = job.TapReadings.Clear(),
    });

    /// <summary>Writes down what a meter showed at a tap.</summary>
    /// <param name="tap">0 is pack minus.</param>
    /// <param name="reading">The reading; null takes it out.</param>
    /// <returns>The change.</returns>
    public static JobChange ReadTap(int tap, TapReading? reading) => new($"reading at tap B{tap}", job => job with
    {
        TapReadings = reading is null ? job.TapReadings.Remove(tap) : job.TapReadings.SetItem(tap, reading),
    });

    /// <summary>Marks cautions as read, or as unread.</summary>
    /// <param name="name">What they are called together.</param>
    /// <param name="cautions">Code and place of each, joined by a blank.</param>
    /// <param name="read">Read or not.</param>
    /// <returns>The change.</returns>
    public static JobChange MarkCautions(string name, IReadOnlyList<string> cautions, bool read) => new($"mark {name}", job => job with
    {
        CautionsRead = read ? job.CautionsRead.Union(cautions) : job.CautionsRead.Except(cautions),
    });

    /// <summary>Ticks a sheet, or takes the tick away.</summary>
    /// <param name="sheet">Its name.</param>
    /// <param name="ticked">Ticked or not.</param>
    /// <returns>The change.</returns>
    public static JobChange TickSheet(string sheet, bool ticked) => new($"tick {sheet}", job => job with
    {
        SheetsTicked = ticked ? job.SheetsTicked.Add(sheet) : job.SheetsTicked.Remove(sheet),
    });

    // Moves are counted from the arrangement before; a new one is wanted as it stands.
    private static Job Arranged(Job job, JobGrouping? grouping) =>
        job with { Grouping = grouping, Favour = job.Favour == GroupsFavour.FewestMoves ? GroupsFavour.EqualAh : job.Favour };

    private static JobChange Adding(JobSource source, Func<Job, Job> add) => new($"add {source.File}", job =>
        job.NextSourceId == source.Id
            ? add(job) with { SourcesEver = job.SourcesEver + 1 }
            : throw new ArgumentException($"source {source.Id} where {job.NextSourceId} is next", nameof(source)));
}
