using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Outside;

public class RepeatabilityTests
{
    private static readonly double[][] SiRstv =
    [
        [196.3052, 196.1240, 196.1890, 196.2569, 196.3403],
        [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
        [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
        [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
        [196.2119, 196.1051, 196.1850, 196.0052, 196.2090],
    ];

    // Source: [NistStrd] SiRstv: certified residual standard deviation 0.104076068334656 with 20 degrees of freedom. Ours is
    // taken as a fraction of each cell's own mean, which differ by 0.05 %, so it agrees to that.
    [Fact]
    public void Pooled_repeats_agree_with_the_certified_residual_of_one_way_analysis_of_variance()
    {
        RepeatTests.Test[] tests = [.. SiRstv.SelectMany((cell, i) => cell.Select(value => new RepeatTests.Test(i, -1, value)))];

        RepeatTests.Finding found = RepeatTests.Fit(tests, 0, 0.015);

        Assert.Equal(20, found.Freedom);
        Assert.Equal(0.104076068334656, found.Fraction!.Value * 196.18916, 5e-4 * 0.104);
    }

    // By hand: 4.00 and 4.08 Ah, 5.00 and 4.95 Ah: squares of the relative deviations 2 x (0.04/4.04)^2 + 2 x (0.025/4.975)^2
    // = 1.9606e-4 + 5.0504e-5, over 2 degrees of freedom, root 0.011103.
    [Fact]
    public void Two_repeated_cells_are_pooled_as_on_paper()
    {
        RepeatTests.Finding found = RepeatTests.Fit([new(0, -1, 4.00), new(0, -1, 4.08), new(1, -1, 5.00), new(1, -1, 4.95), new(2, -1, 4.5)], 0, 0.015);

        Assert.Equal(2, found.Freedom);
        Assert.Equal(0.011103, found.Fraction!.Value, 5e-7);
    }

    // By hand: without noise, a slot that reads 2 % high against two equal ones is found as 2 % less what the cell's own mean takes up (second order).
    [Fact]
    public void A_slot_that_reads_high_is_found_whatever_the_cells_hold()
    {
        double[] cells = [4.1, 4.6, 5.0, 4.4, 4.8, 4.3];
        double[] offset = [0, 0, 0.02];
        RepeatTests.Test[] tests = [.. cells.SelectMany((ah, cell) => new[] { cell % 3, (cell + 1) % 3 }.Select(slot => new RepeatTests.Test(cell, slot, ah * (1 + offset[slot]))))];

        RepeatTests.Finding found = RepeatTests.Fit(tests, 3, 0.015);

        Assert.Equal([0, 0, 0.02], found.SlotFraction.Select(fraction => Math.Round(fraction, 3)));
        Assert.True(found.Fraction < 0.0005);
    }
}
