using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Screening;

public class StillToTestTests
{
    [Fact]
    public void Places_short_over_the_pass_rate_with_rounds_and_hours()
    {
        // By hand: 117 places, 90 of 100 passed, 27 short: 27 x 100 / 90 = 30 tests, 8 rounds of 4, 72 h.
        StillToTest still = StillToTest.Of(places: 117, passed: 90, tried: 100, slots: 4, hoursPerTest: 9);

        Assert.Equal((27, 30, 8, 72.0), (still.Missing, still.Likely, still.Rounds, still.Hours));
        Assert.InRange(still.Low, 27, 30);
        Assert.InRange(still.High!.Value, 30, 36);
    }

    [Fact]
    public void Nothing_is_short_when_enough_have_passed()
    {
        StillToTest still = StillToTest.Of(places: 12, passed: 20, tried: 25, slots: 4, hoursPerTest: 9);

        Assert.Equal((0, 0, 0, 0, 0.0), (still.Missing, still.Low, still.Likely, still.High, still.Hours));
    }

    [Fact]
    public void While_no_cell_has_passed_nobody_can_say_how_many_more()
    {
        StillToTest still = StillToTest.Of(places: 12, passed: 0, tried: 3, slots: 4, hoursPerTest: 9);

        Assert.Null(still.Likely);
        Assert.Null(still.Hours);
        Assert.Null(StillToTest.Of(places: 12, passed: 0, tried: 0, slots: null, hoursPerTest: null).High);
    }

    [Fact]
    public void The_range_holds_the_truth_about_nine_times_in_ten()
    {
        // Given rates of which each is as likely, a first lot of 40 cells, then tests until 20 more have passed.
        Random random = new(7);
        int inside = 0;
        const int trials = 4000;
        for (int trial = 0; trial < trials; trial++)
        {
            double rate = 0.5 + 0.5 * random.NextDouble();
            int passed = Enumerable.Range(0, 40).Count(_ => random.NextDouble() < rate);
            StillToTest still = StillToTest.Of(passed + 20, passed, 40, null, null);
            int tests = 0;
            for (int found = 0; found < 20; tests++)
                found += random.NextDouble() < rate ? 1 : 0;
            inside += tests >= still.Low && tests <= still.High ? 1 : 0;
        }

        // Whole numbers make the range a little wider than nine in ten.
        Assert.InRange(inside / (double)trials, 0.89, 0.96);
    }
}
