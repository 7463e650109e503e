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
            mended[i] = Step(i) ?? (seconds[i] + shift);
        }

        if (midnights > 0)
            said.Add($"The clock has no date and passed midnight {midnights} times.");
        if (hours > 0)
            said.Add("The stamps fall back by one hour, as at the end of summer time; the log goes on without a gap.");
        if (resets > 0)
            said.Add(Invariant($"The clock was reset {resets} times; from there the rows go on by the usual step of {usual:0.###} s, and the real time between is not known."));
        return mended;
    }

    // The moment of a row whose own tells nothing; null where it stands, shifted.
    private double? Step(int row)
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
            return Reset(row, step);
        }

        return null;
    }

    private double? Reset(int row, double step)
    {
        // Back to the right clock after a spell of the wrong one: the true stamp holds again, if it lies ahead.
        double goesOn = mended[row - 1] + usual;
        resets++;
        // One moment years ahead of the rows on both sides is a slip of that row: nothing is moved to it.
        if (step > ClockMending.LeapS && row + 1 < seconds.Length && seconds[row + 1] - seconds[row] < -ClockMending.LeapS)
            return goesOn;
        if (step > ClockMending.LeapS && resets == 1)
        {
            // The clock was wrong from the first row: those rows stand just before the first right one.
            for (int j = 0; j < row; j++)
                mended[j] += seconds[row] - goesOn;
            goesOn = seconds[row];
        }

        shift = step > 0 && seconds[row] >= goesOn ? 0 : goesOn - seconds[row];
        return null;
    }
}
