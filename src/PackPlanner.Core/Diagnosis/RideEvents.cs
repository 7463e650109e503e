using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using static System.FormattableString;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Goes through a log for what happened in it: ends of rides, limits passed, cold charging, hot cells.</summary>
internal static class RideEvents
{
    // Cautions 3 and 15 (common practice, no source).
    private const double PastLimitV = 0.02, PastLimitS = 5;
    private const int MostOfAKind = 40;

    /// <summary>Seconds of current into the pack, without a pause, that may still be braking (common practice, no source).</summary>
    internal const double LongestBrakingS = 300;

    /// <summary>Events in order of time, and the cautions they raise.</summary>
    internal static (IReadOnlyList<RideEvent> Events, IReadOnlyList<Caution> Cautions) Of(
        RideLog log, PackGiven given, ChargeCount count, IReadOnlySet<int> suspectTaps)
    {
        List<RideEvent> events = [];
        List<Caution> cautions = [];
        Ends(log, given, count, events);
        Limits(log, given, count, suspectTaps, events, cautions);
        new ProbeEvents(log, given, count, events, cautions).Find();
        foreach (LogGap gap in count.Gaps.Where(g => g.UnderLoad).Take(MostOfAKind))
            events.Add(new RideEvent(gap.AtTimeS, "gap-under-load", null, null, count.CurrentA[gap.Row - 1], Invariant($"no rows for {gap.Seconds:f0} s while current flowed: the charge that passed is taken from the current on both sides")));
        return ([.. events.OrderBy(e => e.AtTimeS).ThenBy(e => e.What, StringComparer.Ordinal).ThenBy(e => e.Group)], cautions);
    }

    /// <summary>A ride ends where discharge of some duration gives way to rest or charge; the lowest group is named.</summary>
    private static void Ends(RideLog log, PackGiven given, ChargeCount count, List<RideEvent> events)
    {
        double[] amps = count.CurrentA;
        double fromAh = 0;
        int last = -1, sign = 0;
        double on = 0.05 * given.RatedGroupAh;
        for (int i = 0; i <= log.Rows; i++)
        {
            int now = i == log.Rows ? 0 : amps[i] > on ? 1 : amps[i] < -on ? -1 : 0;
            bool over = sign != 0 && (i == log.Rows || (now == -sign && Longer(i, -sign)) || (now == 0 && log.TimeS[i] - log.TimeS[last] > 300));
            if (over)
            {
                double movedAh = Math.Abs(count.DrawnAh[last] - fromAh);
                if (movedAh > 0.02 * given.RatedGroupAh)
                    events.Add(End(log, given, count, last, sign, movedAh));
                sign = 0;
            }
            if (now != 0 && sign == 0 && i < log.Rows)
                (sign, fromAh) = (now, count.DrawnAh[i]);
            if (now == sign && now != 0)
                last = i;
        }

        // Braking is no charge, down a long hill neither: a charger holds for minutes without a pause. A ride has begun after one.
        bool Longer(int from, int direction)
        {
            int i = from;
            while (i < log.Rows && amps[i] * direction > on)
            {
                if (log.TimeS[i] - log.TimeS[from] > (direction < 0 ? LongestBrakingS : 60))
                    return true;
                i++;
            }
            return false;
        }
    }

    private static RideEvent End(RideLog log, PackGiven given, ChargeCount count, int row, int sign, double movedAh)
    {
        // The row of the largest strain among the last few: the one that made the controller or the charger stop.
        int first = row;
        while (first > 0 && log.TimeS[row] - log.TimeS[first] < 15)
            first--;
        (int group, double v, int at) = (-1, double.NaN, row);
        for (int i = first; i <= row; i++)
        {
            for (int k = 0; k < log.Groups; k++)
            {
                double here = log.GroupV[k][i];
                if (!double.IsNaN(here) && (group < 0 || (sign > 0 ? here < v : here > v)))
                    (group, v, at) = (k, here, i);
            }
        }
        double limit = sign > 0 ? given.EmptyV : given.FullV;
        bool reached = group >= 0 && (sign > 0 ? v < limit + 0.1 : v > limit - 0.03);
        string how = sign > 0
            ? reached ? "group at its low-voltage limit" : "no group near its low-voltage limit: ended by the rider, or by the controller's pack limit"
            : reached ? "first group full" : "no group near full";
        return new RideEvent(
            log.TimeS[at], sign > 0 ? "ride-ended" : "charge-ended", group < 0 ? null : group + 1, group < 0 ? null : v, count.CurrentA[at],
            Invariant($"{how}; {movedAh:f2} Ah {(sign > 0 ? "drawn" : "put in")}, ") + (group < 0 ? "no volts were read at its end" : Invariant($"{(sign > 0 ? "lowest" : "highest")} at {v:f3} V")));
    }

    private static void Limits(
        RideLog log, PackGiven given, ChargeCount count, IReadOnlySet<int> suspectTaps, List<RideEvent> events, List<Caution> cautions)
    {
        double on = Math.Max(0.1, 0.01 * given.RatedGroupAh);
        for (int k = 0; k < log.Groups; k++)
        {
            if (suspectTaps.Contains(k))
                continue;
            double[] volts = log.GroupV[k];
            Past(k, i => volts[i] < given.EmptyV - PastLimitV && count.CurrentA[i] > on, low: true);
            Past(k, i => volts[i] > given.FullV + PastLimitV && count.CurrentA[i] < -on, low: false);
            Over(k, volts);
        }

        void Past(int k, Func<int, bool> past, bool low)
        {
            int found = 0;
            foreach ((int first, int last) in Runs(log, past, PastLimitS))
            {
                int worst = Worst(log.GroupV[k], first, last, low);
                double v = log.GroupV[k][worst];
                if (found++ < MostOfAKind)
                    events.Add(new RideEvent(log.TimeS[worst], low ? "below-limit" : "above-limit", k + 1, v, count.CurrentA[worst],
                        Invariant($"{v:f3} V with current on, limit {(low ? given.EmptyV : given.FullV):f2} V, for {log.TimeS[last] - log.TimeS[first]:f0} s")));
                if (found == 1)
                    cautions.Add(new Caution("caution-15", SignalWord.Warning, Invariant($"group {k + 1}, {log.TimeS[worst]:f0} s"),
                        Invariant($"{v:f3} V at {count.CurrentA[worst]:f1} A, limit {(low ? given.EmptyV : given.FullV):f2} V")));
            }
        }
        void Over(int k, double[] volts)
        {
            (int first, int last) = Runs(log, i => volts[i] > given.FullV + Chemistry.OverFullV, PastLimitS).FirstOrDefault((-1, -1));
            if (first < 0)
                return;
            double v = volts[Worst(volts, first, last, low: false)];
            cautions.Add(new Caution("caution-03", SignalWord.Warning, Invariant($"group {k + 1}, {log.TimeS[first]:f0} s"), Invariant($"{v:f3} V, full is {given.FullV:f2} V")));
        }
    }

    private static int Worst(double[] volts, int first, int last, bool low)
    {
        int at = first;
        for (int i = first; i <= last; i++)
            at = low ? volts[i] < volts[at] ? i : at : volts[i] > volts[at] ? i : at;
        return at;
    }

    /// <summary>Stretches of rows of which something holds for longer than a time.</summary>
    internal static IEnumerable<(int First, int Last)> Runs(RideLog log, Func<int, bool> holds, double longerThanS)
    {
        int first = -1;
        for (int i = 0; i <= log.Rows; i++)
        {
            bool now = i < log.Rows && holds(i);
            if (now && first < 0)
                first = i;
            if (!now && first >= 0)
            {
                if (log.TimeS[i - 1] - log.TimeS[first] > longerThanS)
                    yield return (first, i - 1);
                first = -1;
            }
        }
    }
}
