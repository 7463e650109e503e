using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>What a log shows of ends, limits and temperatures, on both sides of every limit; 10 Ah, 4.2 V full, 3.0 V empty.</summary>
public class RideEventLimitsTests
{
    private static readonly PackGiven Given = new(Chemistries.Find("NMC")!, 2, 1, 10, 4.2, 3.0);

    private static (IReadOnlyList<RideEvent> Events, IReadOnlyList<Caution> Cautions) Of(
        double[] amps, Func<int, int, double>? volts = null, Func<int, int, double>? degC = null, int probes = 0, double stepS = 1, HashSet<int>? suspect = null, string chemistry = "NMC")
    {
        double[] time = [.. amps.Select((_, i) => i * stepS)];
        RideLog log = new()
        {
            TimeS = time,
            CurrentA = amps,
            GroupV = [.. Enumerable.Range(0, 2).Select(k => amps.Select((_, i) => volts?.Invoke(k, i) ?? 3.7).ToArray())],
            TemperatureDegC = [.. Enumerable.Range(0, probes).Select(p => amps.Select((_, i) => degC!(p, i)).ToArray())],
            UsualStepS = stepS,
            Source = "log.csv",
        };
        return RideEvents.Of(log, Given with { Chemistry = Chemistries.Find(chemistry)! }, ChargeCount.Of(time, amps, true, 10), suspect ?? []);
    }

    private static double[] Many(int n, double amps) => [.. Enumerable.Repeat(amps, n)];

    private static string[] Whats((IReadOnlyList<RideEvent> Events, IReadOnlyList<Caution> Cautions) seen) => [.. seen.Events.Select(e => e.What)];

    private static string[] Codes((IReadOnlyList<RideEvent> Events, IReadOnlyList<Caution> Cautions) seen) => [.. seen.Cautions.Select(c => c.Code)];

    // Half an ampere of 10 Ah is on; 0.2 Ah must have moved: 200 s at 3.6 A.
    [Theory]
    [InlineData(3.6, 202, true)]
    [InlineData(3.6, 198, false)]
    [InlineData(0.51, 3000, true)]
    [InlineData(0.49, 3000, false)]
    public void A_ride_ends_when_something_was_drawn(double amps, int rows, bool ended)
    {
        Assert.Equal(ended ? ["ride-ended"] : [], Whats(Of([.. Many(rows, amps), .. Many(400, 0)])));
    }

    // Five minutes of rest end a ride, a shorter one does not.
    [Theory]
    [InlineData(299, 1)]
    [InlineData(302, 2)]
    public void Five_minutes_of_rest_end_a_ride(int rest, int ends)
    {
        Assert.Equal(ends, Whats(Of([.. Many(300, 5), .. Many(rest, 0), .. Many(300, 5)])).Length);
    }

    // Charging for more than five minutes ends a ride; braking down a hill of two minutes or five does not.
    [Theory]
    [InlineData(117, 1)]
    [InlineData(300, 1)]
    [InlineData(303, 2)]
    public void Five_minutes_of_charging_end_a_ride(int rows, int ends)
    {
        (IReadOnlyList<RideEvent> events, _) = Of([.. Many(300, 5), .. Many(rows, -15), .. Many(300, 5)]);

        Assert.Equal(ends, events.Count(e => e.What == "ride-ended"));
        Assert.Equal(ends - 1, events.Count(e => e.What == "charge-ended"));
    }

    // The group with the least volts in the last quarter of a minute is told, and whether it was at its limit: a tenth of a volt.
    [Theory]
    [InlineData(3.099, 14, "group at its low-voltage limit")]
    [InlineData(3.101, 14, "no group near")]
    [InlineData(3.05, 17, "no group near")]
    public void A_ride_is_ended_by_the_lowest_group(double volts, int before, string says)
    {
        (IReadOnlyList<RideEvent> events, _) = Of([.. Many(300, 7.2), .. Many(400, 0)], (k, i) => k == 1 && i == 299 - before ? volts : 3.7);
        RideEvent end = Assert.Single(events);

        Assert.StartsWith(says, end.Says, StringComparison.Ordinal);
        // 299 rows of 7.2 A are counted, the first row stands for nothing.
        Assert.Contains("0.60 Ah drawn", end.Says, StringComparison.Ordinal);
        Assert.Equal(7.2, end.CurrentA);
        if (before == 14)
        {
            Assert.Equal((2, volts, 299.0 - 14), (end.Group, end.VoltageV, end.AtTimeS));
            Assert.Contains("lowest at", end.Says, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(4.171, "first group full")]
    [InlineData(4.169, "no group near full")]
    public void A_charge_is_ended_by_the_highest_group(double volts, string says)
    {
        RideEvent end = Assert.Single(Of([.. Many(300, -7.2), .. Many(400, 0)], (k, i) => k == 0 && i == 295 ? volts : 3.7).Events);

        Assert.Equal(("charge-ended", 1, volts), (end.What, end.Group, end.VoltageV));
        Assert.StartsWith(says, end.Says, StringComparison.Ordinal);
        Assert.Contains("0.60 Ah put in, highest at", end.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_volts_were_read_none_are_told()
    {
        RideEvent end = Assert.Single(Of([.. Many(300, 7.2), .. Many(400, 0)], (_, _) => double.NaN).Events);

        Assert.Equal((null, null), (end.Group, end.VoltageV));
        Assert.Contains("no volts were read at its end", end.Says, StringComparison.Ordinal);
    }

    // 20 mV past the limit for more than five seconds, with current on in the direction that does it.
    [Theory]
    [InlineData(2.979, 7, 5, true)]
    [InlineData(2.981, 7, 5, false)]
    [InlineData(2.9, 6, 5, false)]
    [InlineData(2.9, 7, 0.09, false)]
    [InlineData(2.9, 7, 0.12, true)]
    [InlineData(2.9, 7, -5, false)]
    public void A_group_below_its_limit_under_load_is_told(double volts, int rows, double amps, bool told)
    {
        (IReadOnlyList<RideEvent> events, IReadOnlyList<Caution> cautions) = Of([.. Many(30, 0.4), .. Many(rows, amps), .. Many(30, 0.4)], (k, i) => k == 0 && i >= 30 && i < 30 + rows ? volts : 3.7);

        Assert.Equal(told, events.Any(e => e.What == "below-limit" && e.Group == 1 && e.VoltageV == volts));
        Assert.Equal(told, cautions.Any(c => c.Code == "caution-15"));
    }

    [Theory]
    [InlineData(4.221, 7, -5, true)]
    [InlineData(4.219, 7, -5, false)]
    [InlineData(4.24, 6, -5, false)]
    [InlineData(4.24, 7, 5, false)]
    public void A_group_above_its_limit_on_charge_is_told(double volts, int rows, double amps, bool told)
    {
        (IReadOnlyList<RideEvent> events, IReadOnlyList<Caution> cautions) = Of([.. Many(30, 0.4), .. Many(rows, amps), .. Many(30, 0.4)], (k, i) => k == 1 && i >= 30 && i < 30 + rows ? volts : 3.7);

        Assert.Equal(told, events.Any(e => e.What == "above-limit" && e.Group == 2 && e.VoltageV == volts));
        Assert.Equal(told, cautions.Any(c => c.Code == "caution-15"));
    }

    // Overfull by 50 mV is told whatever the current.
    [Theory]
    [InlineData(4.251, 7, true)]
    [InlineData(4.249, 7, false)]
    [InlineData(4.3, 6, false)]
    public void A_group_overfull_is_told_at_rest_too(double volts, int rows, bool told)
    {
        Assert.Equal(told, Codes(Of(Many(60, 0), (k, i) => k == 1 && i >= 30 && i < 30 + rows ? volts : 3.7)).Contains("caution-03"));
    }

    [Fact]
    public void The_worst_row_of_a_stretch_is_told_once_as_a_caution_and_a_suspect_tap_not_at_all()
    {
        double Volts(int k, int i) => k == 0 && i % 20 < 10 ? 2.95 - (i == 44 ? 0.1 : 0) + (i % 20 == 5 ? -0.01 : 0) : 3.7;

        (IReadOnlyList<RideEvent> events, IReadOnlyList<Caution> cautions) = Of(Many(1000, 5), Volts);

        RideEvent[] below = [.. events.Where(e => e.What == "below-limit")];
        Assert.Equal(40, below.Length);
        Assert.Equal([5, 25, 44, 65], below.Take(4).Select(e => e.AtTimeS));
        Assert.StartsWith("2.940 V with current on, limit 3.00 V, for 9 s", below[0].Says, StringComparison.Ordinal);
        Assert.Equal("group 1, 5 s", Assert.Single(cautions, c => c.Code == "caution-15").Where);
        Assert.DoesNotContain("below-limit", Whats(Of(Many(1000, 5), Volts, suspect: [0])));
    }

    // Below 0 °C for more than ten seconds, below 10 °C for more than a minute, with at least 0.2 A flowing in.
    [Theory]
    [InlineData(-0.1, 12, -5, "Warning")]
    [InlineData(-0.1, 11, -5, null)]
    [InlineData(0, 61, -5, null)]
    [InlineData(0, 62, -5, "Caution")]
    [InlineData(9.9, 62, -5, "Caution")]
    [InlineData(10, 62, -5, null)]
    [InlineData(-5, 62, -0.26, "Warning")]
    [InlineData(-5, 62, -0.19, null)]
    [InlineData(-5, 62, 5, null)]
    public void Charging_in_the_cold_is_told(double degC, int rows, double amps, string? word)
    {
        (IReadOnlyList<RideEvent> events, IReadOnlyList<Caution> cautions) = Of([.. Many(40, 5), .. Many(rows, amps), .. Many(40, 5)], degC: (_, _) => degC, probes: 1);

        Assert.Equal(word, cautions.FirstOrDefault(c => c.Code == "caution-11")?.Signal.ToString());
        Assert.Equal(word is not null, events.Any(e => e.What == "charged-cold" && e.AtTimeS == 40));
    }

    [Theory]
    [InlineData(60.1, 7, 5, "Warning")]
    [InlineData(60.1, 6, 5, null)]
    [InlineData(60, 7, 5, null)]
    [InlineData(150, 7, 5, null)]
    [InlineData(149, 7, 5, "Warning")]
    [InlineData(45.1, 32, -5, "Caution")]
    [InlineData(45.1, 31, -5, null)]
    [InlineData(45, 32, -5, null)]
    [InlineData(45.1, 32, 5, null)]
    [InlineData(60, 32, -5, "Caution")]
    public void Hot_cells_are_told(double degC, int rows, double amps, string? word)
    {
        IReadOnlyList<Caution> cautions = Of([.. Many(40, 5), .. Many(rows, amps), .. Many(40, 5)], degC: (_, i) => i >= 40 && i < 40 + rows ? degC : 25, probes: 1).Cautions;

        Assert.Equal(word, cautions.FirstOrDefault(c => c.Code == "caution-12")?.Signal.ToString());
    }

    // Ten kelvin above the mean of the others for more than a minute under load.
    [Theory]
    [InlineData(40.1, 62, 5, true)]
    [InlineData(39.9, 62, 5, false)]
    [InlineData(40.1, 61, 5, false)]
    [InlineData(40.1, 62, 0.19, false)]
    [InlineData(40.1, 62, 0.3, true)]
    public void One_probe_warmer_than_the_others_is_told(double degC, int rows, double amps, bool told)
    {
        (IReadOnlyList<RideEvent> events, IReadOnlyList<Caution> cautions) = Of([.. Many(40, 5), .. Many(rows, amps), .. Many(40, 5)], degC: (p, i) => p == 1 && i >= 40 && i < 40 + rows ? degC : p == 2 ? 28 : p == 3 ? double.NaN : 32, probes: 4);

        Assert.Equal(told, events.Any(e => e.What == "warmer-than-others" && e.Says.StartsWith("probe 2:", StringComparison.Ordinal)));
        Assert.Equal(told, cautions.Any(c => c.Code == "caution-13"));
    }

    [Fact]
    public void What_is_not_checked_is_said()
    {
        Assert.Contains("caution-17", Codes(Of(Many(40, 5))));
        Assert.Contains("caution-13", Codes(Of(Many(40, 5), degC: (_, _) => 25, probes: 1)));
        Assert.Empty(Codes(Of(Many(40, 5), degC: (_, _) => 25, probes: 2)));
        Assert.Single(Codes(Of(Many(40, 5), degC: (_, _) => 25, probes: 2, chemistry: "LTO")), "caution-11");
    }
}
