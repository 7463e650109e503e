using PackPlanner.Core.Cells;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Tests.Core.UsableEnergy;

// Which group ends a string is told only where its readings stand apart: by hand, two readings with one standard
// deviation s each differ by less than 1.645 x 1.414 x s = 2.33 s nine times in ten.
public class EndAlikeTests
{
    [Theory]
    [InlineData(new[] { 10.0, 10.1, 9.0 }, 0.05, 1)]
    [InlineData(new[] { 10.0, 9.95, 10.1 }, 0.05, 2)]
    [InlineData(new[] { 10.0, 10.0, 10.0 }, 0.05, 3)]
    [InlineData(new[] { 10.0, 10.115 }, 0.05, 2)]
    [InlineData(new[] { 10.0, 10.118 }, 0.05, 1)]
    public void Groups_within_the_noise_of_their_capacity_are_alike(double[] capacityAh, double sigmaAh, int alike)
    {
        SeriesGroup[] groups = [.. capacityAh.Select((ah, g) => new SeriesGroup(g + 1, ah, null) { CapacitySigmaAh = sigmaAh })];

        Assert.Equal(alike, Alike(groups));
    }

    [Fact]
    public void A_group_that_is_less_full_ends_it_though_its_capacity_is_like_the_others()
    {
        SeriesGroup[] groups = [.. new[] { 0.6, 0.5, 0.6 }.Select((full, g) => new SeriesGroup(g + 1, 10, null) { CapacitySigmaAh = 0.05, StateOfChargeFraction = full })];

        Assert.Equal(1, Alike(groups));
        // A tenth of the capacity, known to a tenth of it only, tells nothing.
        Assert.Equal(3, Alike([.. groups.Select(group => group with { StateOfChargeSigma = 0.1 })]));
    }

    private static int Alike(SeriesGroup[] groups) => EnergyBudgets.Of(
        new EnergyRequest { Groups = groups, Chemistry = Chemistries.NickelManganeseCobalt },
        TestContext.Current.CancellationToken).Spread.EndAlike;
}
