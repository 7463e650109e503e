using MathNet.Numerics.Statistics;

namespace PackPlanner.Formats.Tables;

/// <summary>The one column of a table without a heading that can be nothing but resistances beside its capacities.</summary>
internal static class HeadlessResistance
{
    private const int FewestRows = 3;

    // Resistance times capacity is about 80 milliohm ampere-hours for lithium cells of all sizes (common practice, no source); used cells lie up to five times above.
    private const double LeastMilliohmAh = 20, MostMilliohmAh = 400;

    /// <summary>Looks at the columns that nothing else is known of.</summary>
    /// <param name="columns">All columns, with the roles that size and units tell.</param>
    /// <param name="figures">The figures of a column by its index, row by row; NaN where there is none.</param>
    /// <returns>The column; null where none or several can be it, or there is no capacity to hold it against.</returns>
    internal static CellColumn? Find(CellColumn[] columns, Func<int, double[]> figures)
    {
        if (columns.Any(column => column.Role == ColumnRole.Resistance) || Array.Find(columns, column => column.Role == ColumnRole.Capacity) is not { } capacity)
            return null;
        double[] written = figures(capacity.Index);
        double[] capacityAh = [.. written.Select(figure => figure > 400 ? figure / 1000 : figure)];
        CellColumn[] likely = [.. columns.Where(column => column.Role == ColumnRole.Unknown && IsSize(figures(column.Index), capacityAh))];
        return likely is [var one] && IsNothingElse(figures(one.Index), capacityAh) ? one : null;
    }

    private static bool IsSize(double[] figures, double[] capacityAh)
    {
        double[] products = [.. figures.Zip(capacityAh, (figure, ah) => figure * ah).Where(double.IsFinite)];
        if (products.Length < FewestRows || products.Length * 2 < figures.Length)
            return false;
        double middle = products.Median();
        return middle is > LeastMilliohmAh and < MostMilliohmAh or > LeastMilliohmAh / 1000 and < MostMilliohmAh / 1000;
    }

    // Places count up one by one, temperatures keep to a few figures, and percent of rated follow the capacity.
    private static bool IsNothingElse(double[] figures, double[] capacityAh)
    {
        (double Figure, double Ah)[] both = [.. figures.Zip(capacityAh).Where(pair => double.IsFinite(pair.First) && double.IsFinite(pair.Second))];
        double[] told = [.. both.Select(pair => pair.Figure)];
        bool counts = told.All(figure => figure == Math.Floor(figure)) && told.Zip(told.Skip(1)).Count(next => next.Second == next.First + 1) * 2 >= told.Length - 1;
        bool fewFigures = told.Median() is > 5 and < 45 && told.Distinct().Count() * 3 < told.Length;
        bool follows = Correlation.Pearson(told, both.Select(pair => pair.Ah)) > 0.98;
        return !counts && !fewFigures && !follows;
    }
}
