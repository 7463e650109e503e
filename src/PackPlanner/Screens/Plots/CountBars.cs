namespace PackPlanner.Screens.Plots;

/// <summary>How many fall where, one row of block elements.</summary>
internal static class CountBars
{
    private const string Blocks = " ▁▂▃▄▅▆▇█";

    /// <summary>A sign a column, the highest count full.</summary>
    /// <param name="values">What is counted.</param>
    /// <param name="low">Left end.</param>
    /// <param name="high">Right end.</param>
    /// <param name="columns">Columns between them.</param>
    /// <param name="most">The highest count.</param>
    internal static string Of(IEnumerable<double> values, double low, double high, int columns, out int most)
    {
        int[] counts = new int[Math.Max(1, columns)];
        foreach (double value in values)
        {
            if (value >= low && value <= high && high > low)
                counts[Math.Min(counts.Length - 1, (int)((value - low) / (high - low) * counts.Length))]++;
        }

        int full = most = Math.Max(1, counts.Max());
        return string.Concat(counts.Select(count => Blocks[count == 0 ? 0 : 1 + (count * 7 / full)]));
    }
}
