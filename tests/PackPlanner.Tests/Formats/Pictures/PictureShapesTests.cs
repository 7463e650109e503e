using System.Globalization;
using System.Text.RegularExpressions;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Pictures;
using static PackPlanner.Tests.Formats.Pictures.PictureCases;

namespace PackPlanner.Tests.Formats.Pictures;

/// <summary>What is drawn stands where its figures say.</summary>
public partial class PictureShapesTests
{
    [Fact]
    public void Each_cell_is_drawn_at_its_place_and_one_millimetre_is_as_long_both_ways()
    {
        (double X, double Y)[] drawn = [.. Discs().Matches(Svg("layout", Trike.Value)).Select(disc => (Number(disc.Groups[1]), Number(disc.Groups[2])))];
        PlacedLabel[] places = [.. Trike.Value.Places];

        Assert.Equal(places.Length, drawn.Length);
        double scale = (drawn[^1].X - drawn[0].X) / (places[^1].Place.Centre.X - places[0].Place.Centre.X);
        Assert.All(places.Zip(drawn), pair =>
        {
            Assert.Equal(drawn[0].X + (scale * (pair.First.Place.Centre.X - places[0].Place.Centre.X)), pair.Second.X, 0.01);
            Assert.Equal(drawn[0].Y - (scale * (pair.First.Place.Centre.Y - places[0].Place.Centre.Y)), pair.Second.Y, 0.01);
        });
    }

    // By hand: 2 mΩ and 3 mΩ at 10 A drop 20 and 30 mV, so the second bar is half as tall again.
    [Fact]
    public void Bars_of_the_drop_are_as_tall_as_resistance_times_current()
    {
        (double currentA, IReadOnlyList<DropPicture.Drop> drops) = DropPicture.Of(Ridden);
        double[] heights = [.. Bars().Matches(Svg("drop", Ridden)).Where(bar => bar.Value.Contains("#DCDCDC", StringComparison.Ordinal) || bar.Value.Contains("#4D4D4D", StringComparison.Ordinal)).Select(bar => Number(bar.Groups[2]))];

        Assert.Equal(10, currentA);
        Assert.Equal([20.0, 30.0], drops.Select(drop => drop.Millivolt));
        Assert.Equal(1.5, heights[1] / heights[0], 0.005);
    }

    [Fact]
    public void Each_step_of_the_losses_hangs_where_the_one_before_ended_and_the_last_ends_at_usable()
    {
        EnergyBudget budget = Trike.Value.Energy!;
        IReadOnlyList<LossesPicture.Row> rows = LossesPicture.Rows(budget);

        Assert.Equal((0, budget.NominalWh), (rows[0].FromWh, rows[0].ToWh));
        Assert.All(rows.Skip(1).SkipLast(1).Zip(rows), pair => Assert.Equal(pair.Second.ToWh, pair.First.FromWh));
        Assert.Equal(budget.UsableWh, rows[^2].ToWh, 1e-6);
        Assert.Equal((0, budget.UsableWh), (rows[^1].FromWh, rows[^1].ToWh));
    }

    [Fact]
    public void Remedies_of_a_log_are_counted_from_the_pack_as_it_is() =>
        Assert.Equal([(500.0, 0.0), (520.0, 20.0)], RemediesPicture.Rows(Ridden).Select(row => (row.Wh, row.GainWh)));

    // Rows 0..899 in 450 stretches of two: lowest and highest are those of the readings, lost ones do not count.
    [Fact]
    public void A_thinned_log_keeps_its_lowest_and_highest_volts()
    {
        RideLog log = Ridden.Job.Logs[0].Log;

        VoltsPicture.Stretch[] stretches = [.. VoltsPicture.Thinned(log, [1])];

        Assert.Equal(450, stretches.Length);
        Assert.Equal(2.9, stretches.Min(stretch => stretch.LowestV));
        Assert.Equal(3.4, stretches.Max(stretch => stretch.HighestV));
        Assert.True(double.IsNaN(stretches[100].MeanV[0]));
        Assert.Equal(3.3, stretches[0].MeanV[0], 1e-9);
    }

    // Three groups at 3.3, 3.4 and 3.35 V: the first lies 50 mV below the middle one, whichever is chosen.
    [Fact]
    public void Groups_apart_are_drawn_less_the_middle_one()
    {
        double[] seconds = [.. Enumerable.Range(0, 90).Select(row => (double)row)];
        RideLog log = new() { TimeS = seconds, CurrentA = [.. seconds.Select(_ => 10.0)], GroupV = [.. ((double[])[3.3, 3.4, 3.35]).Select(v => seconds.Select(_ => v).ToArray())], Source = "ride.csv" };

        Assert.All(ApartPicture.Apart(log, [1, 2]), stretch =>
        {
            Assert.Equal(-50, stretch.MeanV[0], 1e-6);
            Assert.Equal(50, stretch.MeanV[1], 1e-6);
        });
        Assert.Equal("with fewer than three groups there is no middle one", Named("apart").WhyNot(Ridden));
    }

    [Fact]
    public void Groups_that_a_log_convicts_are_the_lines_of_its_picture()
    {
        string[] said = TextsOf(Svg("volts", Ridden));

        Assert.Contains("group 2", said);
        Assert.DoesNotContain("group 1", said);
        Assert.Contains("Volts of 2 groups over ride.csv", said);
    }

    private static double Number(Group text) => double.Parse(text.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("<ellipse fill=\"none\"[^>]* transform=\"translate\\(([0-9.]+) ([0-9.]+)\\)\"")]
    private static partial Regex Discs();

    [GeneratedRegex("<rect fill=\"#[0-9A-F]+\" [^>]*width=\"([0-9.]+)\" height=\"([0-9.]+)\"")]
    private static partial Regex Bars();
}
