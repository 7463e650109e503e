namespace PackPlanner.Core.Bench;

/// <summary>Finds the steps of the current and the resistance that each of them shows.</summary>
internal static class PulseFinder
{
    /// <summary>Seconds after a step at which a resistance is read, where the current is held that long.</summary>
    internal static readonly double[] AfterS = [1, 10, 30];

    // All our choice: what of a log counts as a step of the current, and until when its answer is read.
    private const double LeastFractionOfLargest = 0.1;
    private const double LeastFractionOfOwn = 0.3;
    private const double SteadyFraction = 0.05;
    private const int SteadyRows = 3;
    private const double RampS = 2;
    private const double SwitchS = 10;
    private const double EdgeOfHoldS = 0.05;
    private const double LongestPulseEndS = 60;
    private const double NearFraction = 0.1;
    private const double GapFraction = 0.3;

    /// <summary>Resistances at each step of the current.</summary>
    /// <param name="timeS">Seconds, never falling, shape [rows].</param>
    /// <param name="currentA">Amperes, discharge positive, shape [rows].</param>
    /// <param name="volts">Volts, shape [rows].</param>
    /// <returns>For each step one reading at the first row after it and one for each of <see cref="AfterS"/> that the current was held.</returns>
    internal static List<PulseReading> Find(double[] timeS, double[] currentA, double[] volts)
    {
        List<PulseReading> found = [];
        double largest = StepFinder.LargestA(currentA);
        if (largest <= 0)
            return found;
        double discharged = 0;
        int counted = 0;
        for (int row = 0; row + 1 < timeS.Length; row++)
        {
            if (!IsStep(currentA[row], currentA[row + 1], largest) || !WasSteady(timeS, currentA, row))
                continue;
            int after = EndOfRamp(timeS, currentA, row);
            discharged += CapacityCount.Between(timeS, currentA, volts, counted, row).Ah;
            counted = row;
            if (after < 0)
                continue;
            AddReadings(found, timeS, currentA, volts, row, after, discharged);
            row = after - 1;
        }

        return found;
    }

    /// <summary>Two-point resistance: the fall of volts over the rise of current.</summary>
    /// <param name="beforeV">Volts before the step.</param>
    /// <param name="afterV">Volts after it.</param>
    /// <param name="stepA">Change of current, amperes, discharge positive, not 0.</param>
    /// <returns>Milliohm.</returns>
    /// <remarks>Source: [Iec61960] in its two-level form; with a rest before, the pulse form of [Iso12405].</remarks>
    internal static double Milliohm(double beforeV, double afterV, double stepA) => (beforeV - afterV) / stepA * 1000;

    private static bool IsStep(double beforeA, double afterA, double largest)
    {
        double step = Math.Abs(afterA - beforeA);
        return step >= LeastFractionOfLargest * largest
            && step >= LeastFractionOfOwn * Math.Max(Math.Abs(beforeA), Math.Abs(afterA));
    }

    // In a constant-voltage tail a noisy current jumps to and fro; only a current that stayed can be stepped from.
    private static bool WasSteady(double[] timeS, double[] currentA, int row)
    {
        double most = SteadyFraction * Math.Abs(currentA[row + 1] - currentA[row]);
        for (int i = row - 1; i >= 0 && i >= row - SteadyRows && timeS[row] - timeS[i] <= SwitchS; i--)
            if (Math.Abs(currentA[i] - currentA[row]) > most)
                return false;
        return true;
    }

    // A tester takes some rows to reach its current. The step ends at the first row from which the current stays; a
    // constant-voltage tail seen once a minute never stays and is no step.
    private static int EndOfRamp(double[] timeS, double[] currentA, int before)
    {
        double direction = Math.Sign(currentA[before + 1] - currentA[before]);
        for (int after = before + 1; after < timeS.Length; after++)
        {
            if (after > before + 1 && timeS[after] - timeS[before + 1] > RampS)
                return -1;
            double step = Math.Abs(currentA[after] - currentA[before]);
            if (after + 1 >= timeS.Length || Math.Abs(currentA[after + 1] - currentA[after]) <= SteadyFraction * step)
                return after;
            if (Math.Sign(currentA[after + 1] - currentA[after]) != direction)
                return after;
        }

        return -1;
    }

    private static void AddReadings(
        List<PulseReading> found, double[] timeS, double[] currentA, double[] volts, int before, int after, double discharged)
    {
        double gap = timeS[after] - timeS[before];
        double rhythm = after + 1 < timeS.Length ? timeS[after + 1] - timeS[after] : gap;
        if (gap > SwitchS && rhythm > SwitchS)
            return;

        // Rows written at one rhythm: the current stepped just after the row before. A row long before was written at
        // another rhythm, and the tester began anew when it switched.
        double switchedS = gap <= Math.Max(2 * rhythm, RampS) ? timeS[before] : timeS[after];
        int end = after;
        double step = currentA[after] - currentA[before];
        while (end + 1 < timeS.Length && Math.Abs(currentA[end + 1] - currentA[after]) <= SteadyFraction * Math.Abs(step))
            end++;
        double held = timeS[end] - switchedS;
        if (end - after < SteadyRows - 1 && held < RampS)
            return;
        bool on = Math.Abs(currentA[after]) > Math.Abs(currentA[before]);
        void Add(double afterS, int row, double v)
        {
            double stepA = currentA[row] - currentA[before];
            found.Add(new PulseReading(switchedS, Milliohm(volts[before], v, stepA), afterS, stepA, on, held, discharged));
        }

        double firstS = timeS[after] - switchedS;
        if (!AfterS.Any(s => Math.Abs(s - firstS) < EdgeOfHoldS))
            Add(firstS, after, volts[after]);
        double wanted = firstS;
        foreach (double afterS in AfterS.Where(s => s >= firstS - EdgeOfHoldS && s <= held + EdgeOfHoldS))
        {
            if (At(timeS, volts, after, end, switchedS, afterS) is var (row, v))
            {
                Add(afterS, row, v);
                wanted = afterS;
            }
        }

        // The end of a short pulse is what its maker wanted to see, whatever its length.
        if (held <= LongestPulseEndS && held > wanted + EdgeOfHoldS && end > after)
            Add(held, end, volts[end]);
    }

    // Volts at a moment; nothing where the rows lie too far apart to tell.
    private static (int Row, double V)? At(double[] timeS, double[] volts, int from, int to, double switchedS, double afterS)
    {
        double momentS = switchedS + afterS;
        int next = from;
        while (next < to && timeS[next] < momentS - EdgeOfHoldS)
            next++;
        if (Math.Abs(timeS[next] - momentS) <= NearFraction * afterS && (next == from || timeS[next] - timeS[next - 1] > NearFraction * afterS))
            return (next, volts[next]);
        if (next == from || timeS[next] - timeS[next - 1] > GapFraction * afterS + 1)
            return null;
        double share = (momentS - timeS[next - 1]) / (timeS[next] - timeS[next - 1]);
        return (next, volts[next - 1] + Math.Min(1, share) * (volts[next] - volts[next - 1]));
    }
}
