namespace PackPlanner.Screens.Plots;

/// <summary>How many fall where, one row of block elements.</summary>
internal static class CountBars
{
    private const string Blocks = " ▁▂▃▄▅▆▇█";

    /// <summary>A sign a column, the highest count full.</summary>
    internal static string Of(IEnumerable<double> values, double low, double high, int columns)
    {
        int[] counts = new int[Math.Max(1, columns)];
        foreach (double value in values)
        {
            if (value >= low && value <= high && high > low)
                counts[Math.Min(counts.Length - 1, (int)((value - low) / (high - low) * counts.Length))]++;
        }

        int most = Math.Max(1, counts.Max());
        return string.Concat(counts.Select(count => Blocks[count == 0 ? 0 : 1 + (count * 7 / most)]));
    }
}
