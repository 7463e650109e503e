using PackPlanner.Formats.Words;
using PackPlanner.Tests.House;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Formats.Words;

// The factors are exact by definition: inch 25.4 mm, pound 0.45359237 kg, mile 1.609344 km, foot 0.3048 m.
public class UsUnitsTests
{
    [Theory]
    [InlineData("38.0 kg in one box; a box is heavy above 25 kg", "83.8 lb in one box; a box is heavy above 55 lb")]
    [InlineData("75 km at 33.6 Wh/km", "47 miles at 54.1 Wh/mile")]
    [InlineData("opening 310.0 x 190.0 mm", "opening 12.205 x 7.480 in")]
    [InlineData("centre of mass x 254 y 127 z 25.4 mm", "centre of mass x 10.00 y 5.00 z 1.000 in")]
    [InlineData("from -10 to 5 °C", "from 14 to 41 °F")]
    [InlineData("from 0-45 °C", "from 32-113 °F")]
    [InlineData("60.45 km/h", "37.56 mph")]
    [InlineData("over 3 m one way", "over 10 ft one way")]
    public void A_figure_with_its_unit_is_turned(string metric, string turned) => Assert.Equal(turned, UsUnits.Of(metric));

    // By the formula of the gauge: AWG 5 has 16.77 mm2 and AWG 6 13.30; AWG 7 10.55 and AWG 8 8.37; 4/0 107.2; AWG 0 53.49 and AWG 1 42.41.
    [Theory]
    [InlineData("16 mm2 for the fuse's 60 A", "16 mm2 (AWG 5) for the fuse's 60 A")]
    [InlineData("10 mm² copper", "10 mm² (AWG 7) copper")]
    [InlineData("50 mm2", "50 mm2 (AWG 1/0)")]
    [InlineData("107 mm2", "107 mm2 (AWG 4/0)")]
    [InlineData("120 mm2", "120 mm2 (above AWG 4/0)")]
    public void Beside_the_area_of_a_cable_stands_the_gauge_with_at_least_as_much(string metric, string us)
    {
        Assert.Equal(us, UsUnits.Of(metric));
        Assert.Equal(us, UsUnits.Of(us));
    }

    [Theory]
    [InlineData("Write --use 38Wh/km.")]
    [InlineData("As many ohms as 4.62 mm2 of copper; a solid wire of no more is AWG 11.")]
    [InlineData("annealed copper of 1/58 ohm mm2/m")]
    [InlineData("16s4p of M5 cells, 40 mΩ, 3 min, 165 Wh/kg")]
    [InlineData("- kg, - km")]
    public void What_is_typed_and_other_units_stay(string metric) => Assert.Equal(metric, UsUnits.Of(metric));

    [Fact]
    public void Words_and_plain_facts_turn_and_json_stays_metric()
    {
        string[] size = ["size", Repository.Data("sizing", "lfp-16s.json")];

        Assert.Contains("47 miles, 83.8 lb.", Planner.Run([.. size, "--units", "us"]).Output, StringComparison.Ordinal);
        string plain = Planner.Run([.. size, "--units", "us", "--plain"]).Output;
        Assert.Contains("\ndesign.packMassLb 83.77", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("Kg", plain, StringComparison.Ordinal);
        Assert.Equal(Planner.Run([.. size, "--json"]).Output, Planner.Run([.. size, "--units", "us", "--json"]).Output);
    }
}
