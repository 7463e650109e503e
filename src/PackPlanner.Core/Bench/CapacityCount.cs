namespace PackPlanner.Core.Bench;

/// <summary>Ampere-hours and watt-hours by the trapezoid rule.</summary>
internal static class CapacityCount
{
    // A row outside a step counts with it when it lies no farther away than this times the step's own rows.
    private const double NearTimes = 1.5;

    // A row under this part of the step's current is one of rest.
    private const double OffFraction = 0.1;

    /// <summary>Charge and energy between two rows.</summary>
    /// <param name="timeS">Seconds, never falling, shape [rows].</param>
    /// <param name="currentA">Amperes, shape [rows].</param>
    /// <param name="volts">Volts, shape [rows].</param>
    /// <param name="from">First row.</param>
    /// <param name="to">Last row, included.</param>
    /// <returns>Ampere-hours and watt-hours with the sign of the current.</returns>
    internal static (double Ah, double Wh) Between(
        ReadOnlySpan<double> timeS, ReadOnlySpan<double> currentA, ReadOnlySpan<double> volts, int from, int to)
    {
        double ampereSeconds = 0;
        double wattSeconds = 0;
        for (int i = from; i < to; i++)
        {
            double seconds = timeS[i + 1] - timeS[i];
            ampereSeconds += seconds * (currentA[i] + currentA[i + 1]) / 2;
            wattSeconds += seconds * (currentA[i] * volts[i] + currentA[i + 1] * volts[i + 1]) / 2;
        }

        return (ampereSeconds / 3600, wattSeconds / 3600);
    }

    /// <summary>The rows over which a step is counted: one more at each end where the current came on or went off between two rows close together.</summary>
    /// <remarks>
    /// Half of that interval is then counted. Where the row outside lies farther away than the step's own rows do, it
    /// was written at another rhythm and the current stepped at the row inside; counting half of a long rest would
    /// invent charge. Where the row outside carries the opposite current, <see cref="HalvesS"/> counts half of it instead.
    /// </remarks>
    internal static (int From, int To) WithEdges(ReadOnlySpan<double> timeS, ReadOnlySpan<double> currentA, int from, int to)
    {
        bool ClosesOn(ReadOnlySpan<double> amperes, int outside, int inside) =>
            outside >= 0 && outside < amperes.Length && (Math.Sign(amperes[outside]) == Math.Sign(amperes[inside]) || Math.Abs(amperes[outside]) < OffFraction * Math.Abs(amperes[inside]));

        (double begin, double end) = Rhythm(timeS, from, to);
        int first = from;
        int last = to;
        if (ClosesOn(currentA, from - 1, from) && timeS[from] - timeS[from - 1] <= NearTimes * begin)
            first--;
        if (ClosesOn(currentA, to + 1, to) && timeS[to + 1] - timeS[to] <= NearTimes * end)
            last++;
        return (first, last);
    }

    /// <summary>Seconds before the first and after the last row of a step in which its current flowed too, where the row outside carries the opposite current.</summary>
    /// <remarks>
    /// The current turned round somewhere between the two rows: half of the interval is the least wrong, as it is beside a
    /// rest. A line from one current to the other would count the other step's charge against this one's.
    /// </remarks>
    internal static (double Before, double After) HalvesS(ReadOnlySpan<double> timeS, ReadOnlySpan<double> currentA, int from, int to)
    {
        (double begin, double end) = Rhythm(timeS, from, to);
        double before = from > 0 && Turns(currentA[from - 1], currentA[from]) ? timeS[from] - timeS[from - 1] : 0;
        double after = to + 1 < timeS.Length && Turns(currentA[to + 1], currentA[to]) ? timeS[to + 1] - timeS[to] : 0;
        return (before <= NearTimes * begin ? before / 2 : 0, after <= NearTimes * end ? after / 2 : 0);
    }

    private static bool Turns(double outsideA, double insideA) =>
        Math.Sign(outsideA) == -Math.Sign(insideA) && Math.Abs(outsideA) >= OffFraction * Math.Abs(insideA);

    private static (double Begin, double End) Rhythm(ReadOnlySpan<double> timeS, int from, int to) =>
        to > from ? (timeS[from + 1] - timeS[from], timeS[to] - timeS[to - 1]) : (0, 0);
}
