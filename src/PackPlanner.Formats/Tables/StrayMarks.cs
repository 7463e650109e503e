using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Tables;

/// <summary>Finds a capacity that is a thousand times off its column only because of its mark: "2,850" among 2790 and 2815.</summary>
/// <remarks>
/// The decimal mark is decided once for a file, so one figure typed in the other notation would be read a thousand
/// times too small or too large, and a good cell would be rejected without a word. Such a figure is not guessed.
/// </remarks>
internal static class StrayMarks
{
    // A cell a hundred times its lot's middle is no cell; within thirty it may be another model in the same table.
    private const double NoCell = 100;
    private const double SameKind = 30;

    /// <summary>Looks through one column of charges.</summary>
    /// <param name="source">The file.</param>
    /// <param name="column">The figures, read with <paramref name="mark"/>.</param>
    /// <param name="rows">The rows that they came from.</param>
    /// <param name="mark">The file's decimal mark.</param>
    /// <returns>The first such figure with both its readings; null when there is none.</returns>
    internal static Refusal? Find(SourceFile source, FigureColumn column, IReadOnlyList<TextRow> rows, DecimalMark mark)
    {
        DecimalMark other = mark == DecimalMark.Point ? DecimalMark.Comma : DecimalMark.Point;
        string[] fields = [.. rows.Select(row => row[column.Column.Index])];
        double[] plain =
        [
            .. fields.Where(field => !DecimalVote.CouldBeGrouped(Figures.Split(field).Figure))
                .Select(field => Figures.TryRead(field, mark, out double value, out _) ? Math.Abs(value) : 0)
                .Where(value => value > 0),
        ];
        if (plain.Length == 0)
            return null;
        double middle = Robust.UpperMedian(plain);
        for (int i = 0; i < fields.Length; i++)
        {
            (string figure, string unit) = Figures.Split(fields[i]);
            if (unit.Length == 0 && DecimalVote.CouldBeGrouped(figure)
                && Figures.TryRead(figure, mark, out double read, out _) && Figures.TryRead(figure, other, out double otherwise, out _)
                && Off(read, middle) > NoCell && Off(otherwise, middle) < SameKind)
            {
                return Refusal.Input("two-readings", $"{source.Name}, line {rows[i].Line}, column {column.Column.Name}",
                    FormattableString.Invariant($"\"{figure}\" could be {read} or {otherwise}; other rows are near {middle}, and the file's decimal {Figures.NameOf(mark)} makes it the first. Nothing was guessed"),
                    $"Write it as the other rows are written, or say --decimal {Figures.NameOf(other)} if the whole file has decimal {Figures.NameOf(other)}s.");
            }
        }

        return null;
    }

    private static double Off(double value, double middle) => Math.Max(Math.Abs(value) / middle, middle / Math.Abs(value));
}
