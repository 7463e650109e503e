namespace PackPlanner.Formats.Logs;

/// <summary>Figures from all over a column, few enough that a season of rows costs no more to look at than a day.</summary>
internal static class SomeFigures
{
    private const int OfOneColumn = 500;

    /// <summary>Fewer than a thousand figures at equal distances; what is no figure is left out.</summary>
    internal static IEnumerable<double> Of(double[] values)
    {
        int every = Math.Max(1, values.Length / OfOneColumn);
        for (int i = 0; i < values.Length; i += every)
            if (double.IsFinite(values[i]))
                yield return values[i];
    }

    /// <summary>The same without nought and fillers, which stand where nothing was measured.</summary>
    internal static IEnumerable<double> Measured(double[] values) => Of(values).Where(figure => figure != 0 && !CellVolts.IsFiller(figure));
}
