using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Screening;

public sealed class RepeatTestsTests
{
    [Fact]
    public void A_cell_repeated_in_one_slot_only_tells_the_repeatability_and_nothing_of_the_slots()
    {
        RepeatTests.Finding finding = RepeatTests.Fit([new(0, 2, 4.4), new(0, 2, 4.2), new(1, 0, 4.5)], slots: 4, assumedFraction: 0.015);
        // Mean 4.3; two deviations of 0.1 / 4.3 and one degree of freedom: 0.1 / 4.3 times the root of 2.
        Assert.Equal(0.1 / 4.3 * Math.Sqrt(2), finding.Fraction!.Value, 12);
        Assert.All(finding.SlotFraction, fraction => Assert.True(double.IsNaN(fraction)));
    }
}
