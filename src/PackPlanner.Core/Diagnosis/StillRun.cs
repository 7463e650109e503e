namespace PackPlanner.Core.Diagnosis;

/// <summary>Rows in which a channel keeps one reading, and what the others and the current do meanwhile.</summary>
internal sealed class StillRun(double[] volts)
{
    private const double SameV = 0.0005;

    private double low = double.PositiveInfinity, high = double.NegativeInfinity, leastAh = double.PositiveInfinity, mostAh = double.NegativeInfinity;
    private double lastV = double.NaN, lastA = double.NaN;

    internal double[] Volts => volts;

    internal int First { get; private set; }

    internal int Last { get; private set; }

    internal int Rows { get; private set; }

    /// <summary>Steps of the load that the others followed.</summary>
    internal int Jumps { get; private set; }

    /// <summary>From the lowest to the highest middle of the others.</summary>
    internal double MovedV => high > low ? high - low : 0;

    /// <summary>From the least to the most charge drawn, ampere-hours.</summary>
    internal double MovedAh => mostAh > leastAh ? mostAh - leastAh : 0;

    internal bool GoesOn(int row)
    {
        // Before the first reading there is none to keep.
        if (Rows == 0)
            First = row;
        if (Math.Abs(volts[row] - volts[First]) >= SameV)
            return false;
        (Last, Rows) = (row, Rows + 1);
        return true;
    }

    internal void Begin(int row)
    {
        (First, Last, Rows, Jumps) = (row, row, 1, 0);
        (low, high, leastAh, mostAh) = (double.PositiveInfinity, double.NegativeInfinity, double.PositiveInfinity, double.NegativeInfinity);
        (lastV, lastA) = (double.NaN, double.NaN);
    }

    internal void See(double middleV, double currentA, double chargeAh, double jumpV, double jumpA)
    {
        if (Math.Abs(middleV - lastV) >= jumpV && Math.Abs(currentA - lastA) >= jumpA)
            Jumps++;
        (lastV, lastA) = (middleV, currentA);
        (low, high) = (Math.Min(low, middleV), Math.Max(high, middleV));
        (leastAh, mostAh) = (Math.Min(leastAh, chargeAh), Math.Max(mostAh, chargeAh));
    }
}
