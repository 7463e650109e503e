namespace PackPlanner.Core.Fitting;

/// <summary>Squares with the discs that lie in each, to find neighbours without looking at every pair. Reused between runs.</summary>
internal sealed class DiscGrid
{
    private int[] heads = [];
    private int[] next = [];
    private double minX;
    private double minY;
    private double side;
    private int columns;
    private int rows;

    /// <summary>Sorts discs into squares at least <paramref name="reach"/> wide.</summary>
    internal void Fill(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, double reach)
    {
        int n = xs.Length;
        (double maxX, double maxY) = (double.NegativeInfinity, double.NegativeInfinity);
        (minX, minY) = (double.PositiveInfinity, double.PositiveInfinity);
        for (int i = 0; i < n; i++)
        {
            (minX, maxX) = (Math.Min(minX, xs[i]), Math.Max(maxX, xs[i]));
            (minY, maxY) = (Math.Min(minY, ys[i]), Math.Max(maxY, ys[i]));
        }

        // Never many more squares than discs, however far a few of them have strayed.
        side = n == 0 ? reach : Math.Max(reach, Math.Sqrt((maxX - minX) * (maxY - minY) / (4.0 * n)));
        columns = n == 0 ? 0 : (int)((maxX - minX) / side) + 1;
        rows = n == 0 ? 0 : (int)((maxY - minY) / side) + 1;
        if (heads.Length < columns * rows)
            heads = new int[columns * rows];
        Array.Fill(heads, -1, 0, columns * rows);
        if (next.Length < n)
            next = new int[n];
        for (int i = n - 1; i >= 0; i--)
        {
            int square = ((int)((ys[i] - minY) / side) * columns) + (int)((xs[i] - minX) / side);
            (next[i], heads[square]) = (heads[square], i);
        }
    }

    /// <summary>Writes the discs in the nine squares round a place; returns how many.</summary>
    internal int Around(double x, double y, ref int[] found)
    {
        int column = (int)Math.Floor((x - minX) / side), row = (int)Math.Floor((y - minY) / side), count = 0;
        for (int r = Math.Max(0, row - 1); r <= Math.Min(rows - 1, row + 1); r++)
        {
            for (int c = Math.Max(0, column - 1); c <= Math.Min(columns - 1, column + 1); c++)
            {
                for (int i = heads[(r * columns) + c]; i >= 0; i = next[i])
                {
                    if (count == found.Length)
                        Array.Resize(ref found, Math.Max(64, 2 * count));
                    found[count++] = i;
                }
            }
        }

        return count;
    }
}
