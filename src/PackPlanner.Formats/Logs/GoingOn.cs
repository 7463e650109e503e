using static System.FormattableString;

namespace PackPlanner.Formats.Logs;

/// <summary>Lets a log go on through what its clock did: midnights without a date, the end of summer time, resets.</summary>
internal sealed class GoingOn(double[] seconds, TimeColumn time, double usual)
{
    private readonly double[] mended = (double[])seconds.Clone();
    private double shift;
    private int resets, midnights, hours;

    /// <summary>Moments that never fall, seconds, shape [rows]; what was done is said.</summary>
    internal double[] Mended(List<string> said)
    {
        for (int i = 1; i < seconds.Length; i++)
        {
            Step(i);
            mended[i] = seconds[i] + shift;
        }

        if (midnights > 0)
            said.Add($"The clock has no date and passed midnight {midnights} times.");
        if (hours > 0)
            said.Add("The stamps fall back by one hour, as at the end of summer time; the log goes on without a gap.");
        if (resets > 0)
            said.Add(Invariant($"The clock was reset {resets} times; from there the rows go on by the usual step of {usual:0.###} s, and the real time between is not known."));
        return mended;
    }

    private void Step(int row)
    {
        double step = seconds[row] - seconds[row - 1];
        if (time.IsClock && ClockMending.IsNewDay(step, usual))
        {
            shift += ClockMending.DayS;
            midnights++;
        }
        else if (step < 0 && time.IsStamp && ClockMending.IsHourBack(step, usual))
        {
            shift += 3600;
            hours++;
        }
        else if (step < 0 || step > ClockMending.LeapS)
        {
            Reset(row, step);
        }
    }

    private void Reset(int row, double step)
    {
        // Back to the right clock after a spell of the wrong one: the true stamp holds again, if it lies ahead.
        double goesOn = mended[row - 1] + usual;
        if (step > ClockMending.LeapS && resets == 0)
        {
            // The clock was wrong from the first row: those rows stand just before the first right one.
            for (int j = 0; j < row; j++)
                mended[j] += seconds[row] - goesOn;
            goesOn = seconds[row];
        }

        shift = step > 0 && seconds[row] >= goesOn ? 0 : goesOn - seconds[row];
        resets++;
    }
}
