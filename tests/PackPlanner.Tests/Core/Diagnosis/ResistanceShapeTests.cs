using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>How resistance depends on charge and temperature: the belief by its formula, and what readings make of it.</summary>
public class ResistanceShapeTests
{
    private static readonly double[] Nodes = [0, .03, .06, .1, .15, .2, .3, .4, .5, .65, .8, .9, 1];

    // 1.7 times as much when empty, dying away within a tenth of charge, and 1 at half: the belief that is stated.
    [Fact]
    public void The_belief_is_the_stated_curve_at_its_nodes_and_straight_in_its_logarithm_between()
    {
        ResistanceShape prior = ResistanceShape.Prior(25);
        double Expected(double z) => (1 + (0.7 * Math.Exp(-z / 0.1))) / (1 + (0.7 * Math.Exp(-5)));

        Assert.All(Nodes, z => Assert.Equal(Expected(z), prior.AtCharge(z, out _), 1e-9));
        Assert.Equal(Math.Sqrt(Expected(0.2) * Expected(0.3)), prior.AtCharge(0.25, out _), 1e-9);
        Assert.Equal(Math.Sqrt(Expected(0.9) * Expected(1)), prior.AtCharge(0.95, out _), 1e-9);
        Assert.Equal(0.018, prior.FallPerKelvin);
    }

    // Beyond full and empty resistance stays what it is there.
    [Fact]
    public void Beyond_both_ends_it_stays_level()
    {
        ResistanceShape prior = ResistanceShape.Prior(25);

        Assert.Equal(prior.AtCharge(0, out double atEmpty), prior.AtCharge(-0.2, out double below), 1e-12);
        Assert.Equal(prior.AtCharge(1, out double atFull), prior.AtCharge(1.2, out double above), 1e-12);
        Assert.Equal([0, 0, 0, 0], new[] { atEmpty, below, atFull, above });
    }

    [Theory]
    [InlineData(0.0123)]
    [InlineData(0.2217)]
    [InlineData(0.7771)]
    [InlineData(0.9993)]
    public void Slopes_are_those_of_small_differences(double z)
    {
        ResistanceShape prior = ResistanceShape.Prior(25);
        double up = prior.At(z + 1e-5, 15, out _), down = prior.At(z - 1e-5, 15, out _);

        prior.At(z, 15, out double slope);

        Assert.Equal((up - down) / 2e-5, slope, 1e-6);
        Assert.NotEqual(0, slope);
    }

    [Fact]
    public void Warmth_takes_a_share_for_each_kelvin_and_none_where_it_is_not_known()
    {
        ResistanceShape prior = ResistanceShape.Prior(25), unknown = ResistanceShape.Prior(double.NaN);

        Assert.Equal(Math.Exp(0.18), prior.Warm(15), 1e-12);
        Assert.Equal(Math.Exp(-0.18), prior.Warm(35), 1e-12);
        Assert.Equal(1, prior.Warm(double.NaN));
        Assert.Equal(1, unknown.Warm(15));
        Assert.Equal(prior.AtCharge(0.3, out _) * Math.Exp(0.18), prior.At(0.3, 15, out _), 1e-12);
        Assert.Equal((1, 1.0), (ResistanceShape.Flat().At(0.1, 15, out double slope), ResistanceShape.Flat().Warm(0)));
        Assert.Equal(0, slope);
    }

    [Fact]
    public void Without_readings_the_belief_stays()
    {
        ResistanceShape prior = ResistanceShape.Prior(25), fit = ResistanceShape.Fit([], 25);

        Assert.All(Nodes, z => Assert.Equal(prior.AtCharge(z, out _), fit.AtCharge(z, out _), 1e-9));
        Assert.Equal(0.018, fit.FallPerKelvin, 1e-9);
    }

    // Many sharp readings of another curve and another fall with warmth: they are followed.
    [Fact]
    public void Sharp_readings_are_followed()
    {
        double Truth(double z, double degC) => (1 + (1.2 * Math.Exp(-z / 0.12))) / (1 + (1.2 * Math.Exp(-0.5 / 0.12))) * Math.Exp(-0.025 * (degC - 20));
        ResistanceShape.Reading[] readings = [.. Enumerable.Range(0, 400).Select(i => (Z: i / 399.0, C: 10 + (i % 5 * 5.0))).Select(at => new ResistanceShape.Reading(at.Z, at.C, Truth(at.Z, at.C), 0.0004))];

        ResistanceShape fit = ResistanceShape.Fit(readings, 20);

        Assert.Equal(0.025, fit.FallPerKelvin, 0.001);
        Assert.All(Nodes[1..], z => Assert.Equal(Truth(z, 20), fit.AtCharge(z, out _), 0.04 * Truth(z, 20)));
        Assert.Equal(1, fit.AtCharge(0.5, out _), 1e-9);
    }

    // One reading beside a strong belief: the middle of both by their variances, 0.018 + 0.5 x (what it says more), where both are as sharp.
    [Fact]
    public void Belief_and_readings_are_weighed_by_their_spreads()
    {
        // A reading at half charge, where the factor is 1 whatever the curve: d factor / d fall = -10, so 0.08^2 of variance is 0.008 of fall.
        ResistanceShape fit = ResistanceShape.Fit([new(0.5, 30, Math.Exp(-0.18) - 0.04, 0.0064 * Math.Exp(-0.36))], 20);

        double half = 0.04 / Math.Exp(-0.18) / 10 / 2;
        Assert.Equal(0.018 + half, fit.FallPerKelvin, 0.0002);
    }

    // A reading ten spreads off counts no more than a quarter of its weight (Huber): one wild window turns nothing.
    [Fact]
    public void A_wild_reading_hardly_counts()
    {
        ResistanceShape.Reading[] sound = [.. Enumerable.Range(0, 20).Select(i => new ResistanceShape.Reading(0.3, 25, ResistanceShape.Prior(25).AtCharge(0.3, out _), 0.01))];

        double moved = ResistanceShape.Fit([.. sound, new(0.3, 25, 6, 0.01)], 25).AtCharge(0.3, out _) - ResistanceShape.Prior(25).AtCharge(0.3, out _);

        // By hand: 2.5 spreads of 0.1 pull on a weight of 20: an eightieth.
        Assert.InRange(moved, 0.002, 0.0125);
    }

    // The spread of the belief is half the value when empty and 15 % far from there: a reading as sharp moves it by about half.
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(1, 0.15)]
    public void The_belief_is_wider_towards_empty(double z, double sd)
    {
        double prior = ResistanceShape.Prior(25).AtCharge(z, out _);

        double fit = ResistanceShape.Fit([new(z, 25, prior * 1.1, prior * prior * sd * sd)], 25).AtCharge(z, out _);

        Assert.InRange((fit / prior) - 1, 0.04, 0.056);
    }
}
