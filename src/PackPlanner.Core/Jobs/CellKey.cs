namespace PackPlanner.Core.Jobs;

/// <summary>One row of one cell: a cell that was tested twice has two.</summary>
/// <param name="Label">What is written on the cell.</param>
/// <param name="Test">Counted from 1 among the rows of this label, in the job's order.</param>
/// <param name="Field">The column.</param>
public readonly record struct CellKey(string Label, int Test, CellField Field)
{
    /// <summary>By label, then by test, then by column.</summary>
    public static IComparer<CellKey> InOrder { get; } = Comparer<CellKey>.Create((one, other) =>
    {
        int byLabel = string.CompareOrdinal(one.Label, other.Label);
        int byTest = byLabel != 0 ? byLabel : one.Test.CompareTo(other.Test);
        return byTest != 0 ? byTest : one.Field.CompareTo(other.Field);
    });
}
