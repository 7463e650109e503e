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
    /// <summary>The question of a job; null when it has no cells.</summary>
    internal static CellsQuestion? Of(Job? job) => job is null || (job.Tables.IsEmpty && job.AddedRows.IsEmpty)
        ? null
        : new CellsQuestion(job.Tables, job.AddedRows, job.Edits, job.Verdicts, job.Givens);

    /// <summary>Few enough rows to be judged between two keys.</summary>
    internal bool IsShort => Tables.Sum(table => table.Rows.Count) < 2000;

    internal ScreenedLot Answer() => JobLot.Judge(
        new Job { Title = "", Tables = Tables, AddedRows = Added, Edits = Edits, Verdicts = Verdicts, Givens = Givens });
}
