using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Tables;

/// <summary>What was read from one or more tables of cells.</summary>
public sealed record CellTableReading
{
    /// <summary>One for each row used, in the order of the files; a cell that was tested twice has two.</summary>
    public required IReadOnlyList<CellRow> Rows { get; init; }

    /// <summary>What became of every row.</summary>
    public required RowAccount Account { get; init; }

    /// <summary>What was understood and assumed, one sentence each.</summary>
    public required IReadOnlyList<string> Understood { get; init; }

    /// <summary>How each file was read, in the order of the files.</summary>
    public required IReadOnlyList<FileShape> Shapes { get; init; }

    /// <summary>Labels that differ only in zeros, case or blanks (C7 and C07): kept apart, and asked about.</summary>
    public IReadOnlyList<IReadOnlyList<string>> LabelClashes { get; init; } = [];
}
