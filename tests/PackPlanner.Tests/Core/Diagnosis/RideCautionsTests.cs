using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>Cautions of a log at the value that raises them, and just not one step before (common practice, no source).</summary>
public class RideCautionsTests
{
    private const int Rows = 400;

    // Full 3.65 V, empty 2.50 V; a group may pass its limit by 20 mV for five seconds, while current flows.
    [Theory]
    [InlineData(2.479, 40, true)]
    [InlineData(2.481, 40, false)]
    [InlineData(2.479, 0, false)]
    public void A_limit_passed_while_current_goes_on(double lowestV, double amperes, bool raises) =>
        Assert.Equal(raises, Codes(Log(v: lowestV, amperes: amperes, degrees: [20])).Contains("caution-15"));

    [Theory]
    [InlineData(60.1, 40, true)]
    [InlineData(59.9, 40, false)]
    [InlineData(45.1, -40, true)]
    [InlineData(44.9, -40, false)]
    public void A_hot_cell(double degrees, double amperes, bool raises) =>
        Assert.Equal(raises, Codes(Log(v: 3.2, amperes, [degrees])).Contains("caution-12"));

    [Theory]
    [InlineData(30.1, true)]
    [InlineData(29.9, false)]
    public void A_cell_warmer_than_the_others_under_load(double degrees, bool raises) =>
        Assert.Equal(raises, Codes(Log(v: 3.2, amperes: 40, degrees: [20, degrees])).Contains("caution-13"));

    // Current below C/50 (2 A of 100 Ah) for half an hour, then the second of three probes rises for five minutes; a row each ten seconds.
    [Theory]
    [InlineData(0.52, 0, 1800, true)]
    [InlineData(0.48, 0, 1800, false)]
    [InlineData(0.52, 1.9, 1800, true)]
    [InlineData(0.52, 10, 1800, false)]
    [InlineData(0.52, 0, 1400, false)]
    public void A_probe_that_warms_with_no_current_is_the_gravest(double kelvinPerMinute, double amperes, double restS, bool raises)
    {
        double[] probe = [.. Enumerable.Range(0, (int)(restS / 10) + 1).Select(i => 20 + (kelvinPerMinute * Math.Max(0, (i * 10) - (restS - 300)) / 60))];

        Caution[] raised = [.. Raised(Resting(amperes, [Level(probe.Length), probe, Level(probe.Length)])).Where(caution => caution.Code == "caution-13")];

        Assert.Equal(raises, raised.Any(caution => caution.Signal == SignalWord.Danger));
        if (raises)
            Assert.Equal(("probe 2, 1800 s", "Do not handle it: leave, close the door, call the fire service."), (Assert.Single(raised).Where, raised[0].Do));
    }

    [Fact]
    public void A_filler_or_a_probe_that_only_cools_more_slowly_is_not_warming()
    {
        const int Length = 400;
        double[] filler = [.. Enumerable.Range(0, Length).Select(i => i == 250 ? 65.535 : 20.0)];
        double[] stays = [.. Enumerable.Range(0, Length).Select(i => i > 250 ? 65.535 : 20.0)];
        double[] cools = [.. Enumerable.Range(0, Length).Select(i => 60 - (0.15 * i))];
        double[] slower = [.. Enumerable.Range(0, Length).Select(i => 60 - (0.01 * i))];

        Assert.DoesNotContain(Raised(Resting(0, [filler, Level(Length)])), caution => caution.Signal == SignalWord.Danger);
        Assert.DoesNotContain(Raised(Resting(0, [stays, Level(Length)])), caution => caution.Signal == SignalWord.Danger);
        Assert.DoesNotContain(Raised(Resting(0, [slower, cools])), caution => caution.Signal == SignalWord.Danger);
    }

    [Fact]
    public void One_probe_alone_says_that_neighbours_are_not_checked() =>
        Assert.Contains(Raised(Log(v: 3.2, amperes: 40, degrees: [20])), caution => caution is { Code: "caution-13", Signal: SignalWord.Notice } && caution.Saw.StartsWith(Caution.NotChecked, StringComparison.Ordinal));

    private static double[] Level(int rows) => [.. Enumerable.Repeat(20.0, rows)];

    private static RideLog Resting(double amperes, double[][] probes) => new()
    {
        Source = "invented",
        TimeS = [.. Enumerable.Range(0, probes[0].Length).Select(i => i * 10.0)],
        CurrentA = [.. Enumerable.Repeat(amperes, probes[0].Length)],
        GroupV = [[.. Enumerable.Repeat(3.2, probes[0].Length)], [.. Enumerable.Repeat(3.2, probes[0].Length)]],
        TemperatureDegC = probes,
        UsualStepS = 10,
    };

    [Fact]
    public void Without_a_temperature_nothing_is_said_to_be_cool()
    {
        Assert.Contains("caution-17", Codes(Log(v: 3.2, amperes: 40, degrees: [])));
        Assert.DoesNotContain("caution-17", Codes(Log(v: 3.2, amperes: 40, degrees: [20])));
    }

    private static RideLog Log(double v, double amperes, double[] degrees) => new()
    {
        Source = "invented",
        TimeS = [.. Enumerable.Range(0, Rows).Select(i => (double)i)],
        CurrentA = [.. Enumerable.Repeat(amperes, Rows)],
        GroupV = [[.. Enumerable.Repeat(3.2, Rows)], [.. Enumerable.Repeat(v, Rows)]],
        TemperatureDegC = [.. degrees.Select(probe => Enumerable.Repeat(probe, Rows).ToArray())],
        UsualStepS = 1,
    };

    private static string[] Codes(RideLog log) => [.. Raised(log).Select(caution => caution.Code)];

    private static IReadOnlyList<Caution> Raised(RideLog log)
    {
        PackGiven given = new(Chemistries.Find("LFP")!, 2, 1, 100, 3.65, 2.5);
        ChargeCount count = ChargeCount.Of(log.TimeS, log.CurrentA!, averages: false, given.RatedGroupAh);
        return RideEvents.Of(log, given, count, new HashSet<int>()).Cautions;
    }
}
