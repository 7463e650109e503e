using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>The dampings that are asked for tell every step of a descent; each is told beforehand by hand.</summary>
public class DampedStepsTests
{
    private static (double[] X, double Cost, List<double> Asked) Run(Func<double, double> cost, Func<double, double, double> move, int steps, Func<int, double, bool>? enough = null, Action<int, double[]>? moved = null)
    {
        List<double> asked = [];
        double at = 0;
        (double[] x, double end) = DampedSteps.Run(
            [0], steps, x => cost(at = x[0]), damping =>
            {
                asked.Add(damping);
                return [move(at, damping)];
            }, x => cost(x[0]), enough ?? ((_, _) => false), moved);
        return (x, end, asked);
    }

    [Fact]
    public void Each_step_that_helps_lowers_the_damping_six_times_down_to_a_billionth()
    {
        (double[] x, double cost, List<double> asked) = Run(x => 100 - x, (_, _) => 1, 12);

        Assert.Equal((12, 88), (x[0], cost));
        Assert.All(asked, (damping, i) => Assert.Equal(Math.Max(1e-9, 1e-3 / Math.Pow(6, i)), damping, 1e-15));
    }

    // Nothing helps: a thousandth, eight times as much each time, and no further than a million.
    [Fact]
    public void Steps_that_do_not_help_raise_the_damping_until_none_can()
    {
        (double[] x, double cost, List<double> asked) = Run(x => x, (_, _) => 1, 100);

        Assert.Equal((0, 0), (x[0], cost));
        // By hand: 1e-3 x 8^9 = 1.3e5 is tried still, 1e-3 x 8^10 = 1.07e6 is not.
        Assert.Equal(10, asked.Count);
        Assert.All(asked, (damping, i) => Assert.Equal(1e-3 * Math.Pow(8, i), damping, 1e-6));
    }

    [Fact]
    public void After_a_failure_the_damping_is_a_ten_thousandth_at_least()
    {
        // Down to 4 it helps: eight steps of a half; then nothing does.
        (_, _, List<double> asked) = Run(x => x < 4.25 ? -x : x, (_, _) => 0.5, 10);

        Assert.Equal(1e-9, asked[8], 1e-15);
        Assert.Equal(1e-4, asked[9], 1e-12);
    }

    [Fact]
    public void Steps_that_failed_count_and_none_is_made_beyond_the_count()
    {
        Assert.Equal(3, Run(x => x, (_, _) => 1, 3).Asked.Count);
        Assert.Empty(Run(x => -x, (_, _) => 1, 0).Asked);
    }

    [Fact]
    public void A_step_worse_by_no_more_than_rounding_is_taken_and_one_of_no_number_is_not()
    {
        Assert.Equal(2, Run(x => 0.9e-9 * x, (_, _) => 1, 2).X[0]);
        Assert.Equal(0, Run(x => 1.1e-9 * x, (_, _) => 1, 2).X[0]);
        Assert.Equal(0, Run(x => x > 0 ? double.NaN : 1, (_, _) => 1, 2).X[0]);
    }

    [Fact]
    public void It_ends_where_a_gain_is_enough_and_tells_of_every_step_made()
    {
        List<(int, double)> told = [], asked = [];

        (double[] x, double cost, _) = Run(x => Math.Pow(x - 3, 2), (_, _) => 1, 9, (step, gain) =>
        {
            asked.Add((step, gain));
            return gain < 2;
        }, (step, at) => told.Add((step, at[0])));

        // By hand: 9, 4, 1, 0: gains of 5, 3 and 1.
        Assert.Equal((3, 0), (x[0], cost));
        Assert.Equal([(0, 5), (1, 3), (2, 1)], asked);
        Assert.Equal([(0, 1), (1, 2), (2, 3)], told);
    }
}
