using System.Collections.Immutable;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>All that verdicts depend on; equal questions have equal answers, so nothing is judged twice.</summary>
internal sealed record CellsQuestion(
    ImmutableList<JobTable> Tables,
    ImmutableList<CellRow> Added,
    ImmutableSortedDictionary<CellKey, CellEdit> Edits,
    ImmutableSortedDictionary<string, VerdictOverride> Verdicts,
    JobGivens Givens)
{
    // What verdicts rest on; a changed load must not judge the lot anew, nor start the grouping again.
    private static readonly string[] Asked = ["chemistry", "ratedAh", "minShareOfRated", "maxMilliohm", "fullV", "emptyV", "repeatability"];

    /// <summary>Equal when the verdicts would be the same.</summary>
    public bool Equals(CellsQuestion? other) => other is not null
        && ReferenceEquals(Tables, other.Tables) && ReferenceEquals(Added, other.Added)
        && ReferenceEquals(Edits, other.Edits) && ReferenceEquals(Verdicts, other.Verdicts)
        && Array.TrueForAll(Asked, key => Equals(Givens.Known.GetValueOrDefault(key)?.Value, other.Givens.Known.GetValueOrDefault(key)?.Value));

    public override int GetHashCode() => HashCode.Combine(Tables, Added, Edits, Verdicts);

    /// <summary>The question of a job; null when it has no cells.</summary>
    internal static CellsQuestion? Of(Job? job) => job is null || (job.Tables.IsEmpty && job.AddedRows.IsEmpty)
        ? null
        : new CellsQuestion(job.Tables, job.AddedRows, job.Edits, job.Verdicts, job.Givens);

    /// <summary>Few enough rows to be judged between two keys.</summary>
    internal bool IsShort => Tables.Sum(table => table.Rows.Count) < 2000;

    internal ScreenedLot Answer() => JobLot.Judge(
        new Job { Title = "", Tables = Tables, AddedRows = Added, Edits = Edits, Verdicts = Verdicts, Givens = Givens });
}
