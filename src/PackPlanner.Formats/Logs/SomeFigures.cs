namespace PackPlanner.Formats.Logs;

/// <summary>Figures from all over a column, few enough that a season of rows costs no more to look at than a day.</summary>
internal static class SomeFigures
{
    private const int OfOneColumn = 500;

    /// <summary>Up to about a thousand figures at equal distances; nought, fillers and what is no figure are left out.</summary>
    internal static IEnumerable<double> Of(double[] values)
    {
        int every = Math.Max(1, values.Length / OfOneColumn);
        for (int i = 0; i < values.Length; i += every)
            if (double.IsFinite(values[i]) && values[i] != 0 && !CellVolts.IsFiller(values[i]))
                yield return values[i];
    }

    /// <summary>The middle one by size, the upper of two; NaN where there is none.</summary>
    internal static double Middle(IEnumerable<double> figures)
    {
        double[] sorted = [.. figures];
        Array.Sort(sorted);
        return sorted.Length == 0 ? double.NaN : sorted[sorted.Length / 2];
    }
}
