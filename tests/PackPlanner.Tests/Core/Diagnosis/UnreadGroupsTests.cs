using PackPlanner.Core.Diagnosis;
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
