using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Jobs;

/// <summary>The rows of one cell table, as they were read. Edits by hand are kept apart, so that the raw figure stays.</summary>
/// <param name="Source">Where they came from.</param>
/// <param name="Rows">In the file's order.</param>
/// <param name="RowsSetAside">Rows of the file that are not here.</param>
public sealed record JobTable(JobSource Source, IReadOnlyList<CellRow> Rows, int RowsSetAside);
