namespace PackPlanner.Core.Fitting;

/// <summary>Places along one side of a container where rectangles may begin and end, in millimetres.</summary>
/// <remarks>Source: [Silva2016].</remarks>
internal static class NormalPatterns
{
    /// <summary>Every place where a side may lie: sums of sizes from the low side, starting where each kind may start.</summary>
    internal static double[] Grid(double length, (double Size, double Low, double High)[] kinds)
    {
        SortedSet<double> at = [0, .. kinds.Select(k => Math.Round(k.Low, 6))];
        Queue<double> todo = new(at);
        while (todo.TryDequeue(out double x))
        {
            foreach ((double size, double low, double high) in kinds)
            {
                double end = Math.Round(Math.Max(x, low) + size, 6);
                if (end <= length - high + 1e-6 && at.Add(end))
                    todo.Enqueue(end);
            }
        }

        at.RemoveWhere(x => x > length - 1e-6);
        return [.. at, length];
    }

    /// <summary>For each kind and place of <see cref="Grid"/> the place where its far side then lies; -1 where it may not begin.</summary>
    internal static int[,] Ends(double[] grid, double length, (double Size, double Low, double High)[] kinds)
    {
        int[,] ends = new int[kinds.Length, grid.Length];
        for (int k = 0; k < kinds.Length; k++)
        {
            for (int i = 0; i < grid.Length; i++)
            {
                double end = grid[i] + kinds[k].Size;
                bool allowed = grid[i] >= kinds[k].Low - 1e-6 && end <= length - kinds[k].High + 1e-6;
                ends[k, i] = allowed ? Array.FindIndex(grid, g => Math.Abs(g - end) < 2e-6) : -1;
            }
        }

        return ends;
    }

    /// <summary>Every sum of sizes that is no longer than a length, upward.</summary>
    internal static double[] Sums(double length, double[] sizes)
    {
        SortedSet<double> sums = [0];
        Queue<double> todo = new([0.0]);
        while (todo.TryDequeue(out double sum))
        {
            foreach (double size in sizes)
            {
                double next = Math.Round(sum + size, 6);
                if (next <= length + 1e-5 && sums.Add(next))
                    todo.Enqueue(next);
            }
        }

        return [.. sums];
    }

    /// <summary>What the largest sum that fits leaves over; a hair is forgiven.</summary>
    internal static double Lack(double[] sums, double length)
    {
        int at = Array.BinarySearch(sums, length + 1e-5);
        double lack = length - sums[at >= 0 ? at : ~at - 1];
        return lack < 1e-5 ? 0 : lack;
    }
}
