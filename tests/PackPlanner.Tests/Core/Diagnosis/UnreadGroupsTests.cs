using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Tests.Core.Diagnosis.Simulator;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>Channels that tell nothing of their group: never the volts of a cell, or one reading while the others move.</summary>
public class UnreadGroupsTests
{
    private const int Rows = 400;

    // Five groups that fall from 4.1 V by so much, a row each second.
    private static RideLog Log(double fallsV, Func<int, int, double?>? instead = null, double grainV = 0.001) => new()
    {
        TimeS = [.. Enumerable.Range(0, Rows).Select(i => (double)i)],
        CurrentA = [.. Enumerable.Repeat(10.0, Rows)],
        GroupV =
        [
            .. Enumerable.Range(0, 5).Select(k => Enumerable.Range(0, Rows).Select(i =>
                instead?.Invoke(k, i) ?? Math.Round((4.1 + (0.002 * k) - (fallsV * i / (Rows - 1))) / grainV) * grainV).ToArray()),
        ],
        UsualStepS = 1,
        Source = "invented",
    };

    // The limit is 0.15 V of the others, or four steps of a coarse log.
    [Theory]
    [InlineData(0.16, 0.001, true)]
    [InlineData(0.14, 0.001, false)]
    [InlineData(0.32, 0.1, false)]
    [InlineData(0.50, 0.1, true)]
    public void A_channel_that_stands_still_while_the_others_move_is_not_read(double fallsV, double grainV, bool unread)
    {
        UnreadGroups found = UnreadGroups.Of(Log(fallsV, (k, _) => k == 2 ? 3.7 : null, grainV), grainV);

        Assert.Equal(unread ? [2] : [], found.Groups);
        Assert.Equal(unread ? ["group 3"] : [], found.Cautions().Select(caution => caution.Where));
        Assert.Equal(unread, found.Has(2));
    }

    [Fact]
    public void In_its_place_stands_the_mean_of_the_others_and_those_stay_as_they_are()
    {
        RideLog log = Log(0.5, (k, i) => k == 1 ? double.NaN : k == 0 && i == 7 ? double.NaN : null);

        UnreadGroups found = UnreadGroups.Of(log, 0.001);

        Assert.Equal([1], found.Groups);
        Assert.Same(log.GroupV[0], found.Filled.GroupV[0]);
        Assert.Equal((log.GroupV[0][50] + log.GroupV[2][50] + log.GroupV[3][50] + log.GroupV[4][50]) / 4, found.Filled.GroupV[1][50], tolerance: 1e-12);
        Assert.Equal((log.GroupV[2][7] + log.GroupV[3][7] + log.GroupV[4][7]) / 3, found.Filled.GroupV[1][7], tolerance: 1e-12);
        Assert.Contains("never holds the volts of a cell", found.Cautions().Single().Saw, StringComparison.Ordinal);
        Assert.Contains("group 2 is not read", found.Notes().Single(), StringComparison.Ordinal);
    }

    // Rows 100 to 250 of a fall of 0.9 V: 0.34 V of the others pass there.
    [Fact]
    public void A_channel_that_stands_still_for_a_while_loses_those_readings_only()
    {
        RideLog log = Log(0.9, (k, i) => k == 3 && i is >= 100 and <= 250 ? 3.9 : null);

        UnreadGroups found = UnreadGroups.Of(log, 0.001);

        Assert.Empty(found.Groups);
        Assert.Equal(Enumerable.Range(100, 151), Enumerable.Range(0, Rows).Where(i => double.IsNaN(found.Filled.GroupV[3][i])));
        Assert.Equal(3.9, log.GroupV[3][100]);
        RideEvent begins = Assert.Single(found.Events());
        Assert.Equal((100.0, 4), (begins.AtTimeS, begins.Group));
        FindingDetail low = new(FindingKind.LowCapacity, [], Sureness.Low, "");
        Assert.Equal([FindingKind.Sensor, FindingKind.LowCapacity], found.With(3, [low]).Select(finding => finding.Kind));
        Assert.Equal([FindingKind.LowCapacity], found.With(2, [low]).Select(finding => finding.Kind));
    }

    // Every fifth row of a million is looked at; the channel stands still from one of them to another.
    [Fact]
    public void A_long_log_is_looked_at_row_by_row_no_more()
    {
        const int rows = 1_000_000;
        double[] falls = [.. Enumerable.Range(0, rows).Select(i => 4.1 - (1e-6 * i))];
        double[] stuck = [.. falls.Select((volts, i) => i is >= 300_000 and < 600_000 ? 3.8 : volts)];
        RideLog log = new() { TimeS = [.. Enumerable.Range(0, rows).Select(i => (double)i)], CurrentA = null, GroupV = [falls, stuck, falls], UsualStepS = 1, Source = "invented" };

        UnreadGroups found = UnreadGroups.Of(log, 0.001);

        Assert.Empty(found.Groups);
        Assert.InRange(found.Filled.GroupV[1].Count(double.IsNaN), 299_000, 301_000);
    }

    private static readonly PackGiven Nmc = new(Chemistries.NickelManganeseCobalt, 5, 1, 20, 4.2, 3.0), Lfp = new(Chemistries.LithiumIronPhosphate, 5, 1, 20, 3.65, 2.5);

    private static RideLog Ride(Func<int, double> currentA, Func<int, int, double> volts, int rows = Rows, double stepS = 10) => new()
    {
        TimeS = [.. Enumerable.Range(0, rows).Select(i => stepS * i)],
        CurrentA = [.. Enumerable.Range(0, rows).Select(currentA)],
        GroupV = [.. Enumerable.Range(0, 5).Select(k => Enumerable.Range(0, rows).Select(i => volts(k, i)).ToArray())],
        UsualStepS = stepS,
        Source = "invented",
    };

    // One group of five runs down to 2.5 V while the pack is parked: the others rest, and what rests keeps its reading.
    [Fact]
    public void Groups_that_rest_while_one_loses_its_charge_are_read()
    {
        RideLog parked = Ride(_ => 0, (k, i) => k == 4 ? 3.7 - (1.2 * i / Rows) : 3.7);

        Assert.Same(parked, UnreadGroups.Of(parked, 0.001, Nmc).Filled);
    }

    // The last hour of a charge, in steps of 10 mV: four groups rise to full, the fifth is still on the flat part; 5 A of 20 Ah for 400 x 10 s are 5.6 Ah.
    [Fact]
    public void A_group_on_the_flat_part_of_its_curve_keeps_its_reading_while_the_others_are_full()
    {
        RideLog charge = Ride(_ => -5, (k, i) => k == 4 ? 3.36 : Math.Round(3.36 + (0.29 * i / Rows), 2));

        Assert.Same(charge, UnreadGroups.Of(charge, 0.01, Lfp).Filled);
        Assert.Equal([4], UnreadGroups.Of(charge, 0.01, Nmc).Groups);
    }

    // The load goes on and off ten times; each time four groups give way by 50 mV. Five such steps are wanted, each of 15 mV or three steps of the log.
    [Theory]
    [InlineData(10, 0.05, 0.001, true)]
    [InlineData(2, 0.05, 0.001, false)]
    [InlineData(10, 0.01, 0.001, false)]
    [InlineData(10, 0.05, 0.02, false)]
    public void A_channel_that_no_step_of_the_load_moves_is_not_read(int steps, double giveWayV, double grainV, bool unread)
    {
        bool Loaded(int i) => i / (Rows / (steps + 1)) % 2 == 1;
        RideLog ride = Ride(i => Loaded(i) ? 20 : 0, (k, i) => k == 1 ? 3.3 : Loaded(i) ? 3.3 - giveWayV : 3.3, stepS: 1);

        Assert.Equal(unread ? [1] : [], UnreadGroups.Of(ride, grainV, Lfp).Groups);
    }

    // A reading that repeats for a few rows, a pack at rest, another group's lost readings, a log of one group.
    [Fact]
    public void A_pack_at_rest_and_readings_that_others_lose_accuse_none()
    {
        RideLog rest = Log(0);
        Assert.Same(rest, UnreadGroups.Of(rest, 0.001).Filled);
        RideLog shortly = Log(2.0, (k, i) => k == 3 && i is >= 100 and < 149 ? 3.5 : null);
        Assert.Same(shortly, UnreadGroups.Of(shortly, 0.001).Filled);
        RideLog lost = Log(0, (k, i) => k == 4 ? (i % 2 == 0 ? double.NaN : 2.5) : null);
        Assert.Same(lost, UnreadGroups.Of(lost, 0.001).Filled);
        RideLog one = new() { TimeS = [0, 1, 2], CurrentA = [1, 1, 1], GroupV = [[4, 4, 4]], Source = "invented" };
        Assert.Same(one, UnreadGroups.Of(one, 0.001).Filled);
    }

    // In steps of 10 mV a group that is low in charge keeps one reading for an hour while the others are filled.
    [Fact]
    public void A_coarse_log_accuses_no_channel_of_a_sample_whose_channels_all_read()
    {
        string folder = House.Repository.Data("sample-logs");
        PackLogReading read = Assert.IsType<Outcome<PackLogReading>.Given>(PackLogs.Read(Path.Combine(folder, "sample06.csv"), new() { Chemistry = Chemistries.LithiumIronPhosphate, RatedAh = 58.1 })).Value;
        RideLog coarse = read.Log.WithGroupV([.. read.Log.GroupV.Select(group => group.Select(volts => Math.Round(volts, 2)).ToArray())]);

        Assert.Same(coarse, UnreadGroups.Of(coarse, 0.01, new PackGiven(Chemistries.LithiumIronPhosphate, coarse.Groups, null, 58.1, 3.65, 2.5)).Filled);
    }

    // A simulated pack whose third channel is stuck: the finding is its own, its figures are none, and the others are as they were.
    [Fact]
    public void A_stuck_channel_of_a_whole_ride_is_named_and_the_others_are_judged_as_before()
    {
        SimulatedLog log = SimulatedScenario.Make(5, "lfp-ride");
        RideLog ride = DiagnosisScore.Ride(log.Columns);
        RideDiagnosis sound = RideDiagnoser.Diagnose(ride, DiagnosisScore.Given(log), TestContext.Current.CancellationToken);
        int stuck = Enumerable.Range(0, sound.Groups.Count).First(k => sound.Groups[k].Findings.Count == 0);
        double[][] volts = [.. ride.GroupV];
        volts[stuck] = [.. Enumerable.Repeat(3.3, ride.Rows)];

        RideDiagnosis blind = RideDiagnoser.Diagnose(ride.WithGroupV(volts), DiagnosisScore.Given(log), TestContext.Current.CancellationToken);

        Assert.Equal([FindingKind.Sensor], blind.Groups[stuck].Findings.Select(finding => finding.Kind));
        Assert.Null(blind.Groups[stuck].CapacityAh);
        Assert.NotEqual(stuck + 1, blind.Recovery?.LimitingNow);
        Assert.DoesNotContain(blind.Remedies, remedy => remedy.Do.Contains($" {stuck + 1} by one", StringComparison.Ordinal) || remedy.NextBottleneck == stuck + 1);
        Assert.Contains(blind.Cautions, caution => caution.Code == "caution-33" && caution.Where == $"group {stuck + 1}");
        Assert.All(Enumerable.Range(0, sound.Groups.Count).Where(k => k != stuck), k =>
            Assert.Equal(sound.Groups[k].Findings.Select(finding => finding.Kind), blind.Groups[k].Findings.Select(finding => finding.Kind)));
    }
}
