using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Ampere-hours that passed, counted from a log whose current sensor may not read zero at rest.</summary>
/// <param name="CurrentA">Corrected current, amperes, discharge positive, shape [rows]; exactly 0 while the pack rests.</param>
/// <param name="DrawnAh">Charge drawn since the first row, ampere-hours, shape [rows].</param>
/// <param name="Resting">Rows that belong to a rest, shape [rows].</param>
/// <param name="StepS">Seconds that each row stands for since the row before; 0 in the first, shape [rows].</param>
/// <param name="ZeroA">What the sensor read at rest, amperes; 0 when no rest was found.</param>
/// <param name="ZeroSpreadA">One standard deviation of that; wide when no rest was found.</param>
/// <param name="Gaps">Stretches without rows.</param>
internal sealed record ChargeCount(
    double[] CurrentA, double[] DrawnAh, bool[] Resting, double[] StepS, double ZeroA, double ZeroSpreadA, IReadOnlyList<LogGap> Gaps)
{
    // A rest is this long at least, so that a red light is none.
    private const double ShortestRestS = 20;

    /// <summary>Zeroes the sensor in rests and counts.</summary>
    /// <param name="log">A log, or a stretch of one.</param>
    /// <param name="given">What the owner knows.</param>
    internal static ChargeCount Of(DiagnosisColumns log, PackGiven given) => Of(log.TimeS, log.CurrentA, log.RowsAreAverages, given.RatedGroupAh);

    /// <summary>Zeroes the sensor in rests and counts.</summary>
    /// <param name="timeS">Seconds, never falling, shape [rows].</param>
    /// <param name="currentA">Amperes as logged, discharge positive, shape [rows]; a lost value is NaN.</param>
    /// <param name="averages">Each row is the mean since the row before.</param>
    /// <param name="ratedAh">Rated capacity of a group.</param>
    internal static ChargeCount Of(double[] timeS, double[] currentA, bool averages, double ratedAh)
    {
        int rows = timeS.Length;
        double usualS = UsualStep(timeS);
        double[] corrected = FillLost(currentA);
        bool[] resting = FindRests(timeS, corrected, usualS, ratedAh, out double zeroA, out double spreadA);
        double gapS = Math.Max(60, 5 * usualS);
        for (int i = 0; i < rows; i++)
            corrected[i] = resting[i] ? 0 : corrected[i] - zeroA;

        double[] drawn = new double[rows], step = new double[rows];
        List<LogGap> gaps = [];
        for (int i = 1; i < rows; i++)
        {
            step[i] = timeS[i] - timeS[i - 1];
            double meanA = averages ? corrected[i] : (corrected[i] + corrected[i - 1]) / 2;
            if (step[i] > gapS)
            {
                bool quiet = Math.Abs(corrected[i - 1]) < 0.02 * ratedAh || Math.Abs(corrected[i]) < 0.02 * ratedAh || step[i] > 900;
                meanA = quiet ? 0 : (corrected[i] + corrected[i - 1]) / 2;
                gaps.Add(new LogGap(i, timeS[i - 1], step[i], meanA != 0));
            }
            drawn[i] = drawn[i - 1] + (meanA * step[i] / 3600);
        }
        return new ChargeCount(corrected, drawn, resting, step, zeroA, spreadA, gaps);
    }

    /// <summary>How far the count may be off because the current moved between two rows, one standard deviation, ampere-hours.</summary>
    /// <remarks>
    /// A step of current somewhere between two rows is taken to be in the middle: a twelfth of its square. A current that goes to and fro faster than
    /// the rows is a sample of scatter at each of them. Rows that are averages miss nothing.
    /// </remarks>
    /// <param name="averages">Each row is the mean since the row before.</param>
    internal double SamplingAh(bool averages)
    {
        if (averages)
            return 0;
        double steps = 0, toAndFro = 0, before = 0;
        for (int i = 1; i < CurrentA.Length; i++)
        {
            // Across a gap nothing was counted.
            double move = StepS[i] > 900 ? 0 : (CurrentA[i] - CurrentA[i - 1]) * StepS[i] / 3600;
            steps += move * move;
            toAndFro -= move * before;
            before = move;
        }
        return Math.Sqrt((steps / 12) + (Math.Max(0, toAndFro) * 5 / 6));
    }

    /// <summary>Mean current while the pack was discharged; a third of the rated capacity an hour when it never was.</summary>
    /// <param name="ratedAh">Rated capacity of a group.</param>
    internal double MeanDischargeA(double ratedAh)
    {
        double ah = 0, hours = 0;
        for (int i = 1; i < CurrentA.Length; i++)
        {
            if (CurrentA[i] > 0.02 * ratedAh && StepS[i] < 60)
            {
                ah += CurrentA[i] * StepS[i] / 3600;
                hours += StepS[i] / 3600;
            }
        }
        return hours > 0.02 ? ah / hours : ratedAh / 3;
    }

    /// <summary>Median time between rows, seconds, from a few thousand of them.</summary>
    internal static double UsualStep(double[] timeS)
    {
        int stride = Math.Max(1, timeS.Length / 4000);
        List<double> steps = [];
        for (int i = 1; i < timeS.Length; i += stride)
        {
            if (timeS[i] > timeS[i - 1])
                steps.Add(timeS[i] - timeS[i - 1]);
        }
        return steps.Count == 0 ? 1 : Robust.UpperMedian(steps);
    }

    private static double[] FillLost(double[] currentA)
    {
        double[] filled = (double[])currentA.Clone();
        double last = 0;
        for (int i = 0; i < filled.Length; i++)
        {
            if (double.IsNaN(filled[i]))
                filled[i] = last;
            last = filled[i];
        }
        return filled;
    }

    private static bool[] FindRests(
        double[] timeS, double[] currentA, double usualS, double ratedAh, out double zeroA, out double spreadA)
    {
        // Charging tapers to C/20 or so; the electronics of a parked vehicle and a sensor's offset stay below C/40.
        double limitA = Math.Max(0.025 * ratedAh, 0.15);
        int rows = timeS.Length;
        bool[] resting = new bool[rows];
        List<(double A, double Weight)> means = [];
        for (int i = 0; i < rows;)
        {
            if (Math.Abs(currentA[i]) > 1.6 * limitA)
            {
                i++;
                continue;
            }
            int j = i;
            double sum = 0;
            while (j < rows && Math.Abs(currentA[j]) <= 1.6 * limitA)
                sum += currentA[j++];
            double mean = sum / (j - i), spanS = timeS[j - 1] - timeS[i] + usualS;
            bool rest = (spanS >= ShortestRestS && j - i >= 4) || (usualS >= 8 && j - i >= 2);
            // A wheel rolling at part load scatters; a rest repeats itself.
            if (rest && Math.Abs(mean) <= limitA && Scatter(currentA, i, j, mean) < 0.5 * limitA)
            {
                Array.Fill(resting, true, i, j - i);
                means.Add((mean, Math.Min(spanS, 3600)));
            }
            i = j;
        }
        Zero(means, limitA, out zeroA, out spreadA);
        return resting;
    }

    private static double Scatter(double[] currentA, int from, int to, double mean)
    {
        double sum = 0;
        for (int i = from; i < to; i++)
            sum += (currentA[i] - mean) * (currentA[i] - mean);
        return Math.Sqrt(sum / (to - from));
    }

    private static void Zero(List<(double A, double Weight)> means, double limitA, out double zeroA, out double spreadA)
    {
        if (means.Count == 0)
        {
            (zeroA, spreadA) = (0, 0.2 * limitA);
            return;
        }
        means.Sort((a, b) => a.A.CompareTo(b.A));
        double half = means.Sum(m => m.Weight) / 2, sum = 0;
        zeroA = means[^1].A;
        foreach ((double a, double weight) in means)
        {
            sum += weight;
            if (sum >= half)
            {
                zeroA = a;
                break;
            }
        }
        // A dead band prints 0.00 whatever the sensor's zero is.
        if (means.All(m => m.A == 0))
        {
            spreadA = 0.1 * limitA;
            return;
        }
        double zero = zeroA;
        spreadA = Math.Max(0.02 * limitA, means.Sum(m => m.Weight * Math.Abs(m.A - zero)) / means.Sum(m => m.Weight));
    }
}
