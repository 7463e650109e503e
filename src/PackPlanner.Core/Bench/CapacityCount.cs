namespace PackPlanner.Core.Bench;

/// <summary>Ampere-hours and watt-hours by the trapezoid rule.</summary>
internal static class CapacityCount
{
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
    /// invent charge. Where the row outside carries the opposite current, nothing of that interval is counted.
    /// </remarks>
    internal static (int From, int To) WithEdges(ReadOnlySpan<double> timeS, ReadOnlySpan<double> currentA, int from, int to)
    {
        bool ClosesOn(ReadOnlySpan<double> amperes, int outside, int inside) =>
            outside >= 0 && outside < amperes.Length && (Math.Sign(amperes[outside]) == Math.Sign(amperes[inside]) || Math.Abs(amperes[outside]) < 0.1 * Math.Abs(amperes[inside]));

        int first = from;
        int last = to;
        double begin = to > from ? timeS[from + 1] - timeS[from] : 0;
        double end = to > from ? timeS[to] - timeS[to - 1] : 0;
        if (ClosesOn(currentA, from - 1, from) && timeS[from] - timeS[from - 1] <= 1.5 * begin)
            first--;
        if (ClosesOn(currentA, to + 1, to) && timeS[to + 1] - timeS[to] <= 1.5 * end)
            last++;
        return (first, last);
    }
}
