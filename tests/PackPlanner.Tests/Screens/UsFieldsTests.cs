using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Tests.Screens;

/// <summary>In US units a field is filled in as the table beside it reads; what is kept is metric.</summary>
public class UsFieldsTests
{
    // 50 degF are 10 degC; 61 Wh a mile over 1.609344 km a mile are 37.90 Wh a km; 24 lb x 0.45359237 are 10.886 kg. A unit that is typed holds.
    [Theory]
    [InlineData("temperatureDegC", "50", 10.0)]
    [InlineData("temperatureDegC", "8degC", 8.0)]
    [InlineData("whPerKm", "61", 37.9036)]
    [InlineData("whPerKm", "38 Wh/km", 38.0)]
    [InlineData("kmNow", "10", 16.09344)]
    public void A_bare_figure_has_the_unit_that_stands_beside_the_field(string key, string typed, double kept)
    {
        using Bench bench = new(new Look(UsUnits: true));
        bench.Desk.Store.New("Units");
        PackPlanner.Screens.GivenField.Ask(bench.Desk, key);
        bench.Type(typed);

        bench.Press("Enter");

        Assert.Equal(kept, bench.Desk.Job!.Givens.NumberOf(key)!.Value, tolerance: 1e-4);
    }

    [Fact]
    public void The_field_opens_with_the_figure_that_the_table_shows_and_Enter_changes_nothing()
    {
        using Bench bench = new(new Look(UsUnits: true));
        bench.Desk.Store.New("Units");
        bench.Set("temperatureDegC", new JobValue.Number(8));

        PackPlanner.Screens.GivenField.Ask(bench.Desk, "temperatureDegC");

        string shown = bench.Text(120, 36);
        Assert.Contains("(degF)", shown, StringComparison.Ordinal);
        Assert.Contains("46.4", shown, StringComparison.Ordinal);
        bench.Press("Enter");
        Assert.Equal(8, bench.Desk.Job!.Givens.NumberOf("temperatureDegC")!.Value, tolerance: 1e-9);
    }
}
