using CsCheck;
using PackPlanner.Core.Cells;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Tests.Core.UsableEnergy;

/// <summary>How far the usable energy may be off: reckoned, and by draws.</summary>
public class EnergySpreadTests
{
    // No controller; one that ends it far above the cells; one that ends it a hair before a cell, so that most draws are ended by a cell.
    [Theory]
    [InlineData(null)]
    [InlineData(21.0)]
    [InlineData(18.25)]
    public void The_spread_agrees_with_a_seeded_monte_carlo_run(double? packEmptyV) => Agree(StraightCells.Request([10, 9.9, 9.95, 10.1, 9.92, 10.05]) with
    {
        Load = new LoadPlan.ConstantCurrent(8),
        PackEmptyV = packEmptyV,
        RepeatabilityFraction = 0.02,
    });

    // The weakest of many like groups is some way below its reading, where the volts are not those of the end.
    [Theory]
    [InlineData(null)]
    [InlineData(46.0)]
    public void The_spread_of_many_like_groups_agrees_with_a_seeded_monte_carlo_run(double? packEmptyV) => Agree(new EnergyRequest
    {
        Groups = [.. Enumerable.Range(1, 16).Select(g => new SeriesGroup(g, 92 + g % 3, 0.5))],
        Chemistry = Chemistries.LithiumIronPhosphate,
        Load = new LoadPlan.ConstantCurrent(40),
        PackEmptyV = packEmptyV,
    });

    // Two groups nearly level at the top, so that either may be the first full one, one that stands low and one that is small; a log's own ranges.
    [Theory]
    [InlineData(null, 0.0)]
    [InlineData(null, 0.01)]
    [InlineData(22.0, 0.01)]
    public void The_spread_of_groups_out_of_step_agrees_with_a_seeded_monte_carlo_run(double? packEmptyV, double chargeSigma)
    {
        double[] charge = [0.60, 0.595, 0.56, 0.60, 0.58, 0.59];
        EnergyRequest request = StraightCells.Request([10, 9.9, 9.95, 9.6, 9.92, 10.05]);
        Agree(request with
        {
            Groups =
            [
                .. request.Groups.Select((group, g) => group with
                {
                    StateOfChargeFraction = charge[g],
                    StateOfChargeSigma = chargeSigma > 0 ? chargeSigma : null,
                    CapacitySigmaAh = 0.15,
                    ResistanceSigmaMilliohm = 0.5,
                }),
            ],
            Load = new LoadPlan.ConstantPower(180),
            PackEmptyV = packEmptyV,
        });
    }

    private static void Agree(EnergyRequest request)
    {
        UsableSpread spread = Of(request).Spread;

        EnergyDraws drawn = EnergyDraws.Of(request, 2000, seed: 20261125, null, TestContext.Current.CancellationToken)!;

        Assert.Equal(drawn.LowWh, spread.LowWh, tolerance: 0.12 * spread.HalfWidthWh);
        Assert.Equal(drawn.HighWh, spread.HighWh, tolerance: 0.12 * spread.HalfWidthWh);
        Assert.Equal(2000, drawn.Draws);
    }

    [Fact]
    public void Draws_report_how_far_they_are_and_stop_with_what_they_have()
    {
        EnergyRequest request = StraightCells.Request([10, 9.9]) with { Load = new LoadPlan.ConstantCurrent(8) };
        using CancellationTokenSource stop = new();
        StopAfter progress = new(300, stop);

        EnergyDraws drawn = EnergyDraws.Of(request, 10_000, seed: 1, progress, stop.Token)!;

        Assert.Equal([100, 200, 300], progress.Heard);
        Assert.Equal(300, drawn.Draws);
        Assert.True(drawn.WasStopped);
        Assert.True(drawn.LowWh < drawn.MedianWh && drawn.MedianWh < drawn.HighWh);
    }

    [Fact]
    public void The_same_seed_draws_the_same_and_another_does_not()
    {
        EnergyRequest request = StraightCells.Request([10, 9.9]);
        EnergyDraws Draw(int seed) => EnergyDraws.Of(request, 200, seed, null, TestContext.Current.CancellationToken)!;

        Assert.Equal(Draw(1), Draw(1));
        Assert.NotEqual(Draw(1), Draw(2));
    }

    [Fact]
    public void The_least_of_several_equal_groups_is_likely_below_its_reading()
    {
        double[] mean = [10, 10, 10, 10];
        double[] sigma = [0.1, 0.1, 0.1, 0.1];

        // Source: by hand: the median of the least of four is where one group alone is above with 0.5^(1/4) = 0.8409: 0.9982 sigma below.
        Assert.Equal(10 - 0.09982, EnergySpread.QuantileOfLeast(mean, sigma, 0.5), tolerance: 1e-5);
    }

    private sealed class StopAfter(int draws, CancellationTokenSource stop) : IProgress<int>
    {
        internal List<int> Heard { get; } = [];

        public void Report(int value)
        {
            Heard.Add(value);
            if (value >= draws)
                stop.Cancel();
        }
    }

    private static EnergyBudget Of(EnergyRequest request) => EnergyBudgets.Of(request, TestContext.Current.CancellationToken);
}
