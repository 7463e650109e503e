using System.Collections.Immutable;

namespace PackPlanner.Core.Jobs;

/// <summary>What a user is working on: what he told, what he brought, what he decided. Immutable; see <see cref="JobHistory"/>.</summary>
/// <remarks>
/// Answers (verdicts, groups of the search, energy) are not here: they are computed from this by the same doors that
/// the verbs call. Here is only what cannot be computed again: givens, imported data, edits, and decisions.
/// </remarks>
public sealed record Job
{
    /// <summary>What the job is called.</summary>
    public required string Title { get; init; }

    /// <summary>True for a copy of invented data; the title line says so.</summary>
    public bool IsDemo { get; init; }

    /// <summary>What is known about cells, pack and vehicle.</summary>
    public JobGivens Givens { get; init; } = JobGivens.None;

    /// <summary>Cell tables, in the order in which they were added.</summary>
    public ImmutableList<JobTable> Tables { get; init; } = [];

    /// <summary>Cells and tests added by hand.</summary>
    public ImmutableList<Cells.CellRow> AddedRows { get; init; } = [];

    /// <summary>Values changed by hand.</summary>
    public ImmutableSortedDictionary<CellKey, CellEdit> Edits { get; init; } =
        ImmutableSortedDictionary.Create<CellKey, CellEdit>(CellKey.InOrder);

    /// <summary>Verdicts set by hand, by label.</summary>
    public ImmutableSortedDictionary<string, VerdictOverride> Verdicts { get; init; } = ByLabel<VerdictOverride>();

    /// <summary>Cells that must stand in a group, by label; groups are counted from 1.</summary>
    public ImmutableSortedDictionary<string, int> Locks { get; init; } = ByLabel<int>();

    /// <summary>The grouping that was read or arranged by hand; null while the search alone decides.</summary>
    public JobGrouping? Grouping { get; init; }

    /// <summary>What the groups favour.</summary>
    public GroupsFavour Favour { get; init; }

    /// <summary>A cavity with its cell and clearances.</summary>
    public JobDocument? FitCase { get; init; }

    /// <summary>Where the cells go, as it was read; null while the search alone decides.</summary>
    public JobDocument? FitAnswer { get; init; }

    /// <summary>What the vehicle needs.</summary>
    public JobDocument? SizeNeed { get; init; }

    /// <summary>What was changed about where groups stand.</summary>
    public JobPlacement Placement { get; init; } = JobPlacement.AsFitted;

    /// <summary>Logs, the oldest first where they tell their days, else in the order in which they were added.</summary>
    public ImmutableList<JobLog> Logs { get; init; } = [];

    /// <summary>Readings typed at the sense taps, by tap; tap 0 is pack minus.</summary>
    public ImmutableSortedDictionary<int, TapReading> TapReadings { get; init; } = ImmutableSortedDictionary<int, TapReading>.Empty;

    /// <summary>Cautions marked as read: code and place, joined by a blank. They are shown all the same.</summary>
    public ImmutableSortedSet<string> CautionsRead { get; init; } = ImmutableSortedSet.Create<string>(StringComparer.Ordinal);

    /// <summary>Names of the sheets that are ticked.</summary>
    public ImmutableSortedSet<string> SheetsTicked { get; init; } = ImmutableSortedSet.Create<string>(StringComparer.Ordinal);

    /// <summary>How many files were ever added; gives each a name that no other had.</summary>
    public int SourcesEver { get; init; }

    /// <summary>All cell rows with the edits applied, in the job's order.</summary>
    public IReadOnlyList<Cells.CellRow> Rows => JobRows.Of(this);

    /// <summary>What was read for a value of a cell, before any edit.</summary>
    /// <param name="key">Which value; its row must exist.</param>
    /// <returns>The value; null when the table was silent.</returns>
    /// <exception cref="InvalidOperationException">There is no such row.</exception>
    public JobValue? Raw(CellKey key) => JobRows.Raw(this, key);

    /// <summary>The files that were taken in and are still there: tables, logs, groups, then the documents.</summary>
    public IReadOnlyList<JobSource> Sources =>
    [
        .. Tables.Select(table => table.Source),
        .. Logs.Select(log => log.Source),
        .. Grouping?.Source is { } grouping ? [grouping] : Array.Empty<JobSource>(),
        .. new[] { FitCase, FitAnswer, SizeNeed }.OfType<JobDocument>().Select(document => document.Source),
    ];

    /// <summary>The name that the next added file gets inside the job.</summary>
    public string NextSourceId => $"s{SourcesEver + 1}";

    private static ImmutableSortedDictionary<string, T> ByLabel<T>() => ImmutableSortedDictionary.Create<string, T>(StringComparer.Ordinal);
}
