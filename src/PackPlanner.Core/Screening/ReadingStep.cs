namespace PackPlanner.Core.Screening;

/// <summary>How finely a column of readings was written.</summary>
internal static class ReadingStep
{
    private static readonly double[] Steps = [0.1, 0.01, 0.001, 0.0001];

    /// <summary>The largest power of ten that every reading is a multiple of.</summary>
    /// <param name="values">Readings; fewer than two tell nothing.</param>
    /// <returns>0.1 down to 0.0001; 0 when unknown or finer.</returns>
    internal static double Of(IReadOnlyCollection<double> values)
    {
        if (values.Count < 2)
            return 0;
        foreach (double step in Steps)
            if (values.All(value => Math.Abs(value / step - Math.Round(value / step)) < 1e-6))
                return step;
        return 0;
    }
}
