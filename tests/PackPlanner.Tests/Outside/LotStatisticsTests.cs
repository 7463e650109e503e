using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Outside;

public class LotStatisticsTests
{
    private static readonly double[] Rosner =
    [
        -0.25, 0.68, 0.94, 1.15, 1.20, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55, 1.56, 1.58, 1.65, 1.69, 1.70, 1.76, 1.77,
        1.81, 1.91, 1.94, 1.96, 1.99, 2.06, 2.09, 2.10, 2.14, 2.15, 2.23, 2.24, 2.26, 2.35, 2.37, 2.40, 2.47, 2.54, 2.62, 2.64,
        2.90, 2.92, 2.92, 2.93, 3.21, 3.26, 3.30, 3.59, 3.68, 4.30, 4.64, 5.34, 5.42, 6.01,
    ];

    // Invented lot of twelve capacities, Ah.
    private static readonly double[] Twelve = [2.41, 2.38, 2.44, 2.40, 2.36, 2.43, 2.39, 2.42, 2.12, 2.40, 2.37, 2.41];

    // Source: [NistEhandbook] 1.3.5.17.3, the printed output for the data of [Rosner1983].
    [Fact]
    public void The_generalised_test_finds_the_three_outliers_of_Rosner_although_the_first_two_steps_pass()
    {
        double[] statistic = [3.118906, 2.942973, 3.179424, 2.810181, 2.815580, 2.848172, 2.279327, 2.310366, 2.101581, 2.067178];
        double[] critical = [3.158794, 3.151430, 3.143890, 3.136165, 3.128247, 3.120128, 3.111796, 3.103243, 3.094456, 3.085425];
        double[] removed = [6.01, 5.42, 5.34, 4.64, -0.25, 4.30, 3.68, 3.59, 0.68, 3.30];

        (IReadOnlyList<ExtremeDeviates.Step> steps, int outliers) = ExtremeDeviates.Test(Rosner, 10, 0.05);

        Assert.Equal(3, outliers);
        for (int i = 0; i < 10; i++)
        {
            Assert.Equal(statistic[i], steps[i].Statistic, 5e-7);
            Assert.Equal(critical[i], steps[i].Critical, 5e-7);
            Assert.Equal(removed[i], Rosner[steps[i].Index]);
        }
    }

    // Source: [Iglewicz1993] score 0.6745 (x - median) / MAD, limit 3.5; by hand: median 2.095, MAD 0.545.
    [Fact]
    public void Modified_scores_name_the_same_three()
    {
        double[] scores = Robust.ModifiedScores(Rosner);

        Assert.Equal(2.095, Robust.Median(Rosner), 1e-12);
        Assert.Equal(0.545, Robust.MedianAbsoluteDeviation(Rosner), 1e-12);
        Assert.Equal([5.34, 5.42, 6.01], Rosner.Where((_, i) => Math.Abs(scores[i]) > Outliers.HighestScore).Order());
        Assert.Equal(4.8453, scores[^1], 5e-5);
        Assert.Equal(-2.9022, scores[0], 5e-5);
    }

    // Source: [NistEhandbook] 1.3.5.17.1, published 2.4687 and 2.032 (one-sided); the data are from memory and give both.
    [Fact]
    public void Grubbs_statistic_and_critical_value_of_the_handbook_example()
    {
        double[] values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];

        Assert.Equal(2.4687, ExtremeDeviates.Test(values, 1, 0.05).Steps[0].Statistic, 1e-4);
        Assert.Equal(2.032, ExtremeDeviates.Critical(8, 1, 2 * 0.05), 5e-4);
        Assert.Equal(29.9627, Robust.ModifiedScores(values)[^1], 5e-5);
    }

    // By hand from the same formula (t quantiles from a general statistics library run apart).
    [Theory]
    [InlineData(8, 2.126645)]
    [InlineData(10, 2.289954)]
    [InlineData(12, 2.411560)]
    [InlineData(20, 2.708246)]
    [InlineData(50, 3.128247)]
    [InlineData(100, 3.384083)]
    public void Two_sided_critical_values_of_Grubbs(int count, double expected) =>
        Assert.Equal(expected, ExtremeDeviates.Critical(count, 1, 0.05), 5e-7);

    // By hand: median 2.40, MAD 0.02, 0.6745 x (2.12 - 2.40) / 0.02 = -9.443.
    [Fact]
    public void The_weak_cell_of_an_invented_lot_is_the_only_one_unlike_it()
    {
        double[] scores = Robust.ModifiedScores(Twelve);
        bool[] unlike = Outliers.Of(Twelve, [.. Twelve.Select(ah => 0.015 * ah)]);

        Assert.Equal(-9.4430, scores[8], 5e-5);
        Assert.Equal(1.3490, scores.Where((_, i) => i != 8).Max(Math.Abs), 5e-5);
        Assert.Equal(3.049624, ExtremeDeviates.Test(Twelve, 1, 0.05).Steps[0].Statistic, 5e-7);
        Assert.Equal([8], unlike.Index().Where(entry => entry.Item).Select(entry => entry.Index));
    }

    [Fact]
    public void Where_over_half_the_values_are_equal_the_mean_absolute_deviation_stands_in()
    {
        // By hand: mean absolute deviation 0.9 / 10 = 0.09, times 1.2533 = 0.11280; 0.9 / 0.11280 = 7.979.
        double[] scores = Robust.ModifiedScores([2, 2, 2, 2, 2, 2, 2, 2, 2, 2.9]);

        Assert.Equal(7.979, scores[^1], 5e-4);
        Assert.Equal(0, scores[0]);
    }
}
