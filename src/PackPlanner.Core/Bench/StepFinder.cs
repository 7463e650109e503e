namespace PackPlanner.Core.Bench;

/// <summary>Finds where current flows, and which way.</summary>
/// <remarks>
/// A step begins where the current exceeds 1.5 % of the log's largest: a sensor shows up to about 1 % at rest. It
/// ends where the current is off; a constant-voltage tail is followed below that level for as long as it fades and
/// does not drop by half from one row to the next.
/// </remarks>
internal static class StepFinder
{
    private const double OnFraction = 0.015;
    private const double TailFraction = 0.003;
    private const int ShortBreakRows = 2;
    private const double ShortBreakS = 5;

    /// <summary>A stretch of rows with current one way.</summary>
    /// <param name="From">First row.</param>
    /// <param name="To">Last row.</param>
    /// <param name="Direction">Which way.</param>
    internal readonly record struct Stretch(int From, int To, CurrentDirection Direction);

    /// <summary>All stretches in order; what lies between them is rest.</summary>
    /// <param name="timeS">Seconds, never falling, shape [rows].</param>
    /// <param name="currentA">Amperes, discharge positive, shape [rows].</param>
    /// <returns>The stretches.</returns>
    internal static List<Stretch> Find(ReadOnlySpan<double> timeS, ReadOnlySpan<double> currentA)
    {
        double largest = LargestA(currentA);
        List<Stretch> found = [];
        if (largest <= 0)
            return found;
        int row = 0;
        while (row < currentA.Length)
        {
            CurrentDirection direction = Way(currentA[row], OnFraction * largest);
            if (direction == CurrentDirection.Rest)
            {
                row++;
                continue;
            }

            int from = row;
            while (row + 1 < currentA.Length && Way(currentA[row + 1], OnFraction * largest) == direction)
                row++;
            row = EndOfTail(currentA, row, direction, TailFraction * largest);
            Add(found, new Stretch(from, row, direction), timeS);
            row++;
        }

        return found;
    }

    /// <summary>The largest current that is not one stray sample.</summary>
    internal static double LargestA(ReadOnlySpan<double> currentA)
    {
        double largest = 0;
        for (int i = 0; i < currentA.Length; i++)
        {
            double here = Math.Abs(currentA[i]);
            double next = i + 1 < currentA.Length ? Math.Abs(currentA[i + 1]) : i > 0 ? Math.Abs(currentA[i - 1]) : here;
            largest = Math.Max(largest, Math.Min(here, next));
        }

        return largest;
    }

    private static CurrentDirection Way(double currentA, double threshold) =>
        currentA > threshold ? CurrentDirection.Discharge
        : currentA < -threshold ? CurrentDirection.Charge
        : CurrentDirection.Rest;

    private static int EndOfTail(ReadOnlySpan<double> currentA, int row, CurrentDirection direction, double threshold)
    {
        while (row + 1 < currentA.Length
            && Way(currentA[row + 1], threshold) == direction
            && Math.Abs(currentA[row + 1]) >= 0.5 * Math.Abs(currentA[row])
            && Math.Abs(currentA[row + 1]) <= 1.5 * Math.Abs(currentA[row]))
            row++;
        return row;
    }

    // One or two lost or zero samples in the middle do not cut a step in two.
    private static void Add(List<Stretch> found, Stretch next, ReadOnlySpan<double> timeS)
    {
        if (found.Count > 0 && found[^1] is var last && last.Direction == next.Direction
            && next.From - last.To - 1 <= ShortBreakRows && timeS[next.From] - timeS[last.To] <= ShortBreakS)
            found[^1] = last with { To = next.To };
        else
            found.Add(next);
    }
}
