using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Bench;

/// <summary>Holes in a log while current flowed: hours without rows, in which the logger slept alone or the test stood still too.</summary>
/// <remarks>
/// The tester's own counter tells, where there is one; else the volts: had the current gone on, they would have gone on falling (or rising) at the pace of the
/// rows on both sides. Where they did not, or where the curve is too flat to tell, no charge is counted for the hole, because too little is seen on the bench and too
/// much is not. Common practice, no source.
/// </remarks>
internal static class CurveHoles
{
    // Rows written far apart on purpose, on a plateau say, are no hole by this: the volts between them have moved on. Our choice.
    private const double TimesUsual = 20;
    private const double LeastS = 60;

    // The current went on when the volts moved by this part of what they would have, and by more than they step and shake.
    private const double WentOnFraction = 0.5;
    private const double LeastMoveV = 0.005;

    // Rows on each side from which the pace of the volts is taken.
    private const int PaceRows = 30;

    /// <summary>Time with the holes taken out in which no charge is counted.</summary>
    /// <param name="columns">The log.</param>
    /// <param name="stretches">Where current flows.</param>
    /// <returns>Seconds, shape [rows]: a row after such a hole follows the row before it at the usual pace.</returns>
    internal static double[] CountedS(CurveColumns columns, IReadOnlyList<StepFinder.Stretch> stretches)
    {
        double[] countedS = [.. columns.TimeS];
        double takenOutS = 0;
        int row = 0;
        foreach (StepFinder.Stretch stretch in stretches)
        {
            for (; row <= stretch.From; row++)
                countedS[row] -= takenOutS;
            if (stretch.To - stretch.From < 3)
                continue;
            double usualS = Robust.Median([.. Enumerable.Range(stretch.From, stretch.To - stretch.From).Select(i => columns.TimeS[i + 1] - columns.TimeS[i])]);
            for (; row <= stretch.To; row++)
            {
                double holeS = columns.TimeS[row] - columns.TimeS[row - 1];
                if (holeS > Math.Max(LeastS, TimesUsual * usualS) && !WentOn(columns, stretch, row))
                    takenOutS += holeS - usualS;
                countedS[row] -= takenOutS;
            }
        }

        for (; row < countedS.Length; row++)
            countedS[row] -= takenOutS;
        return countedS;
    }

    // Of the hole that ends at this row.
    private static bool WentOn(CurveColumns columns, StepFinder.Stretch stretch, int row)
    {
        double holeS = columns.TimeS[row] - columns.TimeS[row - 1];
        if (columns.CounterAh is { } counter && double.IsFinite(counter[row]) && double.IsFinite(counter[row - 1]))
        {
            double flowedAh = holeS * Math.Abs(columns.CurrentA[row - 1] + columns.CurrentA[row]) / 2 / 3600;
            return Math.Abs(counter[row] - counter[row - 1]) > WentOnFraction * flowedAh;
        }

        double[] paces = [.. new[] { Pace(columns, Math.Max(stretch.From, row - 1 - PaceRows), row - 1), Pace(columns, row, Math.Min(stretch.To, row + PaceRows)) }.OfType<double>()];
        if (paces.Length == 0)
            return false;
        double expectedV = paces.Average() * holeS;
        double movedV = columns.Volts[row] - columns.Volts[row - 1];
        return Math.Abs(movedV) > LeastMoveV && movedV * expectedV > 0 && Math.Abs(movedV) > WentOnFraction * Math.Min(Math.Abs(expectedV), MostV(columns));
    }

    // Beside the knees the pace of a few rows tells more volts than a cell has.
    private static double MostV(CurveColumns columns) => columns.Volts.Max() - columns.Volts.Min();

    private static double? Pace(CurveColumns columns, int from, int to) =>
        to - from < 2 || columns.TimeS[to] <= columns.TimeS[from] ? null : (columns.Volts[to] - columns.Volts[from]) / (columns.TimeS[to] - columns.TimeS[from]);
}
