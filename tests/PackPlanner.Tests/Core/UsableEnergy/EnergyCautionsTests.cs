using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Tests.Core.UsableEnergy;

/// <summary>Each caution of a string at the value that raises it, and one step before. Limits: docs/safety.md.</summary>
public class EnergyCautionsTests
{
    private static readonly StringProtection AllFour = new() { Fuse = true, Disconnect = true, PreCharge = true, Monitor = true };

    // 60 V is not above 60 V: 15 groups charged to 4.00 V each, and a hundredth of a volt more.
    [Theory]
    [InlineData(4.00, false)]
    [InlineData(4.01, true)]
    public void Above_60_volts_at_full_charge(double fullV, bool raised) =>
        Assert.Equal(raised, Raised(String(15) with { FullV = fullV }, AllFour).Any(caution => caution.Code == "caution-09"));

    // Without a temperature nothing is judged; a titanate's lowest charging temperature stands on its data sheet only.
    [Theory]
    [InlineData("NMC", null, true, false)]
    [InlineData("NMC", -1.0, false, true)]
    [InlineData("NMC", 20.0, false, false)]
    [InlineData("LTO", -1.0, true, false)]
    public void Cold_charging_that_cannot_be_judged_is_named(string chemistry, double? degC, bool open, bool raised)
    {
        EnergyRequest request = String(4) with { Chemistry = Chemistries.Find(chemistry)!, TemperatureDegC = degC };

        Assert.Equal(open, Figures(request, AllFour).Open.Any(left => left.Code == "caution-11"));
        Assert.Equal(raised, Raised(request, AllFour).Any(caution => caution.Code == "caution-11"));
    }

    // By hand: ten groups of 4.20 V are full at 42.0 V, and half a percent above is 42.21 V; a controller may be at its limit, not past it.
    [Theory]
    [InlineData(42.2, null, null, null, false)]
    [InlineData(42.3, null, null, null, true)]
    [InlineData(36.0, null, null, null, false)]
    [InlineData(null, 2.5, 2.5, null, false)]
    [InlineData(null, 2.6, 2.5, null, true)]
    [InlineData(null, null, null, 42.0, false)]
    [InlineData(null, null, null, 41.9, true)]
    public void A_charger_or_a_controller_that_does_not_suit_the_pack(double? chargerV, double? chargerA, double? cellChargeA, double? controllerMaxV, bool raised)
    {
        EnergyRequest request = String(10) with { FullV = 4.2, ControllerMaxV = controllerMaxV };
        string[] codes = [.. Raised(request, AllFour with { ChargerV = chargerV, ChargerA = chargerA, CellChargeA = cellChargeA }).Select(caution => caution.Code)];

        Assert.Equal(raised && controllerMaxV is null, codes.Contains("caution-32"));
        Assert.Equal(raised && controllerMaxV is not null, codes.Contains("caution-31"));
    }

    // Where nobody says what a cell takes: half its Ah as amperes for NMC, its Ah for LFP. Sources: [Inr18650-26], [Lfp26650-40], as ChargeRates has them.
    [Theory]
    [InlineData("NMC", 0.5, false)]
    [InlineData("NMC", 0.51, true)]
    [InlineData("LFP", 1.0, false)]
    [InlineData("LFP", 1.01, true)]
    [InlineData("LTO", 9.0, false)]
    public void A_charger_of_more_amperes_than_is_usual_for_the_smallest_group(string chemistry, double perHour, bool raised)
    {
        EnergyRequest request = String(10) with { Chemistry = Chemistries.Find(chemistry)! };
        StringProtection protection = AllFour with { ChargerA = perHour * request.Groups.Min(group => group.CapacityAh) };

        Assert.Equal(raised, Raised(request, protection).Any(caution => caution.Code == "caution-32"));
    }

    // 100 ohm for each volt: 14 x 4.2 V = 58.8 V want 5880 ohm and only a notice; 15 groups, 63 V, want 6300 ohm and are a danger.
    [Theory]
    [InlineData(14, 5880, null)]
    [InlineData(14, 5879, SignalWord.Notice)]
    [InlineData(15, 6300, null)]
    [InlineData(15, 6299, SignalWord.Danger)]
    public void Too_little_insulation(int series, double ohm, SignalWord? signal) =>
        Assert.Equal(signal, Raised(String(series), AllFour with { InsulationOhm = ohm }).SingleOrDefault(caution => caution.Code == "caution-10")?.Signal);

    [Fact]
    public void Insulation_that_nobody_measured_is_named_above_60_volts()
    {
        Assert.Contains(Figures(String(15), AllFour).Open, open => open.Code == "caution-10");
        Assert.DoesNotContain(Figures(String(14), AllFour).Open, open => open.Code == "caution-10");
    }

    // First instant of 4.2 V over 1 kHz resistance: 4.2 mΩ is 1000 A exactly, which is not above 1 kA; by DC 8.4 mΩ the same by twice the figure.
    [Theory]
    [InlineData(null, 8.4, false)]
    [InlineData(null, 8.39, true)]
    [InlineData(4.2, 6.0, false)]
    [InlineData(4.19, 6.0, true)]
    public void A_prospective_current_above_one_kiloampere(double? firstInstantMilliohm, double milliohm, bool raised)
    {
        EnergyRequest one = String(1) with { Groups = [new SeriesGroup(1, 10, milliohm, null, 1, firstInstantMilliohm)] };

        Assert.Equal(raised, Raised(one, AllFour).Any(caution => caution.Code == "caution-21"));
    }

    [Theory]
    [InlineData(4, false, false)]
    [InlineData(5, false, true)]
    [InlineData(5, true, false)]
    public void More_than_four_small_cells_without_a_fuse_each(int parallel, bool fused, bool raised)
    {
        EnergyRequest request = String(2) with { Groups = [new(1, 2.5 * parallel, 30.0 / parallel, null, parallel), new(2, 2.5 * parallel, 30.0 / parallel, null, parallel)] };

        Assert.Equal(raised, Raised(request, AllFour with { CellFuses = fused }).Any(caution => caution.Code == "caution-22"));
    }

    [Fact]
    public void Each_of_the_four_that_is_missing_is_named_and_with_all_four_nothing_is()
    {
        string Saw(StringProtection has) => Raised(String(2), has).Single(caution => caution.Code == "caution-23").Saw;

        Assert.DoesNotContain(Raised(String(2), AllFour), caution => caution.Code == "caution-23");
        Assert.EndsWith(": fuse", Saw(AllFour with { Fuse = false }), StringComparison.Ordinal);
        Assert.EndsWith(": disconnect", Saw(AllFour with { Disconnect = false }), StringComparison.Ordinal);
        Assert.EndsWith(": pre-charge", Saw(AllFour with { PreCharge = false }), StringComparison.Ordinal);
        Assert.EndsWith(": BMS with a cut-off for each group", Saw(AllFour with { Monitor = false }), StringComparison.Ordinal);
    }

    // 20 A over 4 cells is 5 A; the hardest-worked takes 1.2 times that, 6 A. Rated 7.5 A and aged to 80 %: 6 A, which is not above.
    [Theory]
    [InlineData(20, false)]
    [InlineData(20.1, true)]
    public void A_cell_above_its_aged_rating(double loadA, bool raised)
    {
        EnergyRequest request = String(1) with
        {
            Groups = [new SeriesGroup(1, 8, 10, null, 4, null, 1.2)],
            RatedAh = 10,
            Load = new LoadPlan.ConstantCurrent(loadA),
        };

        Assert.Equal(raised, Raised(request, AllFour with { CellRatingA = 7.5 }).Any(caution => caution.Code == "caution-24"));
    }

    [Fact]
    public void The_first_charge_is_told_beside_the_charger_only()
    {
        Assert.DoesNotContain(Raised(String(2), AllFour), caution => caution.Code == "caution-28");
        Assert.Contains(Raised(String(2), AllFour with { ChargerA = 2 }), caution => caution.Code == "caution-28");
    }

    private static EnergyRequest String(int series) => new()
    {
        Groups = [.. Enumerable.Range(1, series).Select(g => new SeriesGroup(g, 10, 5, null, 1))],
        Chemistry = Chemistries.NickelManganeseCobalt,
    };

    private static IReadOnlyList<Caution> Raised(EnergyRequest request, StringProtection protection) => Figures(request, protection).Raised;

    private static StringFigures Figures(EnergyRequest request, StringProtection protection) =>
        StringFigures.Of(request, protection, TestContext.Current.CancellationToken);
}
