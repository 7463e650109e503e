using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Tables;

/// <summary>What one table of cells gave.</summary>
internal sealed record CellFile(IReadOnlyList<CellRow> Rows, RowAccount Account, IReadOnlyList<string> Understood, FileShape Shape);
