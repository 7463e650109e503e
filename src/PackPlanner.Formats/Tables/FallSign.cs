namespace PackPlanner.Formats.Tables;

/// <summary>Whether a column of self-discharge writes a fall of the volts as a positive or a negative figure.</summary>
internal static class FallSign
{
    /// <summary>Turns the column round where falls are negative in it: only then is the cell that falls most the one that leaks.</summary>
    /// <param name="column">The column; null where the table has none.</param>
    /// <returns>A sentence, or null where most figures are above zero.</returns>
    internal static string? Settle(FigureColumn? column)
    {
        double[] figures = column is null ? [] : [.. column.All];
        if (figures.Count(figure => figure < 0) <= figures.Count(figure => figure > 0))
            return null;
        // A few that rise among many that rest at about zero leave it open; there the largest tells, since nothing makes a cell rise far.
        if (-figures.Min() >= figures.Max())
        {
            column!.IsTurned = true;
            return $"Column {column.Column.Name}: most figures are below zero, so a fall of the volts is written as a negative figure; they are turned round.";
        }

        return $"Column {column!.Column.Name}: most figures are below zero but the largest is above; a fall of the volts is taken as a positive figure. Turn the signs round if falls are negative in it.";
    }
}
