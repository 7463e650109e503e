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

    private static string[] Codes(RideLog log)
    {
        PackGiven given = new(Chemistries.Find("LFP")!, 2, 1, 100, 3.65, 2.5);
        ChargeCount count = ChargeCount.Of(log.TimeS, log.CurrentA!, averages: false, given.RatedGroupAh);
        IReadOnlyList<Caution> cautions = RideEvents.Of(log, given, count, new HashSet<int>()).Cautions;
        return [.. cautions.Select(caution => caution.Code)];
    }
}
