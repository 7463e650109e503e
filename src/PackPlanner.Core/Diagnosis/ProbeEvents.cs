using PackPlanner.Core.Cautions;
using static System.FormattableString;

namespace PackPlanner.Core.Diagnosis;

/// <summary>What the temperatures of a log tell: charging in the cold, hot cells, one place warmer than the others.</summary>
internal sealed class ProbeEvents(RideLog log, PackGiven given, ChargeCount count, List<RideEvent> events, List<Caution> cautions)
{
    // Cautions 11, 12, 13 (common practice, no source). Above the last a reading is no temperature of a cell.
    private const double ColdDegC = 0, CoolDegC = 10, HotOnChargeDegC = 45, HotDegC = 60, WarmerK = 10, NoCellDegC = 150;

    // Current that counts as flowing: a fiftieth of the rated capacity in an hour.
    private readonly double onA = 0.02 * given.RatedGroupAh;

    /// <summary>Adds the events and their cautions, each kind once a probe.</summary>
    internal void Find()
    {
        int probes = log.TemperatureDegC.Length;
        if (probes == 0)
            cautions.Add(new Caution("caution-17", SignalWord.Notice, log.Source, "no temperature column: charging in the cold, hot cells and uneven warming are not checked"));
        for (int p = 0; p < probes; p++)
        {
            Cold(p);
            Hot(p);
            if (probes > 1)
                Warmer(p);
        }

        if (probes == 1)
            cautions.Add(new Caution("caution-13", SignalWord.Notice, log.Source, Caution.NotChecked + ": one temperature probe, so whether one cell is warmer than its neighbours is not seen"));
    }

    private void Cold(int p)
    {
        double[] degrees = log.TemperatureDegC[p];
        if (given.Chemistry.HasGraphiteAnode)
        {
            Note(p, i => degrees[i] < ColdDegC && Charges(i), 10, "charged-cold", "caution-11", SignalWord.Warning, "charging below 0 °C");
            Note(p, i => degrees[i] >= ColdDegC && degrees[i] < CoolDegC && Charges(i), 60, "charged-cold", "caution-11", SignalWord.Caution, "charging below 10 °C");
        }
        else if (p == 0)
        {
            cautions.Add(new Caution("caution-11", SignalWord.Notice, log.Source, $"{Caution.NotChecked}: the lowest charging temperature of {given.Chemistry.Name} cells is their maker's to say"));
        }
    }

    private void Hot(int p)
    {
        double[] degrees = log.TemperatureDegC[p];
        Note(p, i => degrees[i] > HotDegC && degrees[i] < NoCellDegC, 5, "hot", "caution-12", SignalWord.Warning, "above 60 °C");
        Note(p, i => degrees[i] > HotOnChargeDegC && degrees[i] <= HotDegC && Charges(i), 30, "hot-on-charge", "caution-12", SignalWord.Caution, "above 45 °C on charge");
    }

    private void Warmer(int p)
    {
        double[] degrees = log.TemperatureDegC[p];
        if (WarmingAtRest.First(log, count.CurrentA, p, given.RatedGroupAh / 50) is { } row)
        {
            string says = Invariant($"warms with no current flowing: {degrees[row]:f1} °C, more than 0.5 K a minute for 5 minutes against the other probes");
            events.Add(new RideEvent(log.TimeS[row], "warming-at-rest", null, null, count.CurrentA[row], Invariant($"probe {p + 1}: {says}")));
            cautions.Add(new Caution("caution-13", SignalWord.Danger, Invariant($"probe {p + 1}, {log.TimeS[row]:f0} s"), says, "Do not handle it: leave, close the door, call the fire service."));
        }

        Note(p, i => degrees[i] - MeanOfOthers(p, i) > WarmerK && count.CurrentA[i] > onA, 60, "warmer-than-others", "caution-13", SignalWord.Warning,
            "more than 10 K above the other probes under load");
    }

    private bool Charges(int row) => count.CurrentA[row] < -onA;

    /// <summary>Mean of the other probes at a row, °C; NaN where none was read.</summary>
    private double MeanOfOthers(int probe, int row)
    {
        double sum = 0;
        int n = 0;
        for (int q = 0; q < log.TemperatureDegC.Length; q++)
        {
            double t = log.TemperatureDegC[q][row];
            if (q != probe && !double.IsNaN(t))
            {
                sum += t;
                n++;
            }
        }
        return n == 0 ? double.NaN : sum / n;
    }

    private void Note(int p, Func<int, bool> seen, double shortestS, string what, string code, SignalWord word, string says)
    {
        (int first, int last) = RideEvents.Runs(log, seen, shortestS).FirstOrDefault((-1, -1));
        if (first < 0)
            return;
        double degrees = log.TemperatureDegC[p][(first + last) / 2];
        events.Add(new RideEvent(log.TimeS[first], what, null, null, count.CurrentA[first], Invariant($"probe {p + 1}: {says}, {degrees:f1} °C")));
        cautions.Add(new Caution(code, word, Invariant($"probe {p + 1}, {log.TimeS[first]:f0} s"), Invariant($"{says}: {degrees:f1} °C at {count.CurrentA[first]:f1} A")));
    }
}
