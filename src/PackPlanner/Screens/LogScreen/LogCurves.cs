using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Screens.Plots;

namespace PackPlanner.Screens.LogScreen;

/// <summary>Volts of chosen groups and of the median over time, thinned to what a screen can show.</summary>
internal static class LogCurves
{
    // Twice the dots of the widest screen that is likely.
    private const int Points = 600;

    /// <summary>Curves of a part of a log.</summary>
    /// <param name="log">The log.</param>
    /// <param name="groups">Groups from 1, at most a few.</param>
    /// <param name="from">Left end, as a fraction of the log's length.</param>
    /// <param name="to">Right end.</param>
    internal static IReadOnlyList<BrailleCurves.Curve> Of(RideLog log, IReadOnlyList<int> groups, double from, double to)
    {
        (int first, int last) = Rows(log, from, to);
        int[] rows = [.. RowsShown(log, groups, first, last)];
        double[] hours = [.. rows.Select(row => log.TimeS[row] / 3600)];
        List<BrailleCurves.Curve> curves = [new("m", hours, [.. rows.Select(row => Robust.Median([.. log.GroupV.Select(group => group[row]).Where(double.IsFinite)]))], IsDotted: true)];
        foreach (int group in groups)
            curves.Add(new(group.ToString(System.Globalization.CultureInfo.InvariantCulture), hours, [.. rows.Select(row => log.GroupV[group - 1][row])]));
        return curves;
    }

    /// <summary>Millivolts of each group less the median, with a line at nought.</summary>
    /// <param name="volts">The median, then the groups.</param>
    internal static IReadOnlyList<BrailleCurves.Curve> Apart(IReadOnlyList<BrailleCurves.Curve> volts)
    {
        return
        [
            volts[0] with { Name = "0", Y = [.. volts[0].Y.Select(_ => 0.0)] },
            .. volts.Skip(1).Select(curve => curve with { Y = [.. curve.Y.Zip(volts[0].Y, (group, median) => 1000 * (group - median))] }),
        ];
    }

    // A dive of a second in a ride of hours must not fall between two points: of each stretch the lowest and the highest row of each group are shown.
    private static SortedSet<int> RowsShown(RideLog log, IReadOnlyList<int> groups, int first, int last)
    {
        SortedSet<int> rows = [.. Enumerable.Range(0, Points).Select(i => first + (int)((long)i * (last - first) / (Points - 1)))];
        if (last - first < Points)
            return rows;
        foreach (double[] volts in groups.Select(group => log.GroupV[group - 1]))
        {
            for (int i = 0; i < Points; i++)
            {
                (int from, int to) = (first + (int)((long)i * (last - first) / Points), first + (int)((long)(i + 1) * (last - first) / Points));
                (int low, int high) = (from, from);
                for (int row = from; row < to; row++)
                {
                    low = double.IsNaN(volts[low]) || volts[row] < volts[low] ? row : low;
                    high = double.IsNaN(volts[high]) || volts[row] > volts[high] ? row : high;
                }

                rows.Add(low);
                rows.Add(high);
            }
        }

        return rows;
    }

    private static (int First, int Last) Rows(RideLog log, double from, double to)
    {
        double length = log.TimeS[^1];
        int first = Array.BinarySearch(log.TimeS, from * length);
        int last = Array.BinarySearch(log.TimeS, to * length);
        first = Math.Clamp(first < 0 ? ~first : first, 0, log.Rows - 1);
        last = Math.Clamp(last < 0 ? ~last : last, 0, log.Rows - 1);
        return last > first ? (first, last) : (Math.Max(0, last - 1), Math.Max(1, last));
    }
}
