using PackPlanner.Core.Cells;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Tests.Core.UsableEnergy;

/// <summary>Small figures of the room, each by hand.</summary>
public class EnergyDetailsTests
{
    private static readonly Chemistry Nmc = Chemistries.NickelManganeseCobalt;

    private static EnergyRequest String(params double?[] milliohm) => new() { Groups = [.. milliohm.Select((r, g) => new SeriesGroup(g + 1, 10, r))], Chemistry = Nmc };

    private static EnergyBudget Of(EnergyRequest request) => EnergyBudgets.Of(request, TestContext.Current.CancellationToken);

    // Source: [Inr18650-26] and [Lfp26650-40], each step and a hair below it.
    [Theory]
    [InlineData("NMC", -0.1, 0.0)]
    [InlineData("NMC", 0.0, 0.1)]
    [InlineData("NMC", 4.9, 0.1)]
    [InlineData("NMC", 5.0, 0.2)]
    [InlineData("NMC", 14.9, 0.2)]
    [InlineData("NMC", 15.0, 0.5)]
    [InlineData("NMC", 55.0, 0.5)]
    [InlineData("NMC", 55.1, 0.0)]
    [InlineData("LFP", -0.1, 0.0)]
    [InlineData("LFP", 0.0, 0.2)]
    [InlineData("LFP", 5.0, 0.5)]
    [InlineData("LFP", 15.0, 1.0)]
    [InlineData("LFP", 55.0, 1.0)]
    [InlineData("LFP", 55.1, 0.0)]
    [InlineData("LTO", 20.0, null)]
    public void Charging_is_slower_in_the_cold(string chemistry, double degC, double? perHour) =>
        Assert.Equal(perHour, ChargeRates.PerHour(Chemistries.Find(chemistry)!, degC));

    [Fact]
    public void A_charge_ends_at_a_hundredth_or_two_of_the_capacity() =>
        Assert.Equal((0.01, 0.02), (ChargeRates.TaperPerHour(Chemistries.LithiumIronPhosphate), ChargeRates.TaperPerHour(Nmc)));

    // By hand: 12 Ah at 3 A are 4 h and half an hour of tail; at 10 °C two tenths of 12 Ah; 0.02 of 12 Ah.
    [Fact]
    public void Charger_settings_go_by_the_smallest_group()
    {
        EnergyRequest request = String(5, 5) with { Groups = [new(1, 12, 5), new(2, 14, 5)], TemperatureDegC = 30 };
        ChargerSettings charger = ChargerSettings.Of(request, new StringProtection { ChargerA = 3, ChargeDegC = 10 })!;

        Assert.Equal((8.4, 3.0, 4.5), (charger.PackV, charger.CurrentA, charger.Hours));
        Assert.Equal(0.24, charger.TaperA, tolerance: 1e-12);
        Assert.Equal(2.4, charger.HighestA!.Value, tolerance: 1e-12);
        Assert.Equal(6, ChargerSettings.Of(request, new StringProtection { ChargerA = 3 })!.HighestA!.Value, tolerance: 1e-12);
        Assert.Null(ChargerSettings.Of(request, new StringProtection()));
    }

    // Source: [LfpColdSheet], lines between its points; [Nenadic2020] 0.5 % a kelvin for the others.
    [Theory]
    [InlineData("LFP", 30, 1.0, false)]
    [InlineData("LFP", 12.5, 0.9, false)]
    [InlineData("LFP", 0, 0.8, false)]
    [InlineData("LFP", -10, 0.65, false)]
    [InlineData("LFP", -20, 0.5, false)]
    [InlineData("LFP", -21, 0.485, true)]
    [InlineData("LFP", -60, 0.05, true)]
    [InlineData("NMC", 25, 1.0, false)]
    [InlineData("NMC", 15, 0.95, false)]
    [InlineData("NMC", 14, 0.945, true)]
    public void Cold_leaves_a_part_of_the_charge(string chemistry, double degC, double part, bool extrapolated)
    {
        Assert.Equal(part, ColdCapacity.Fraction(Chemistries.Find(chemistry)!, degC), tolerance: 1e-12);
        Assert.Equal(extrapolated, ColdCapacity.IsExtrapolated(Chemistries.Find(chemistry)!, degC));
    }

    // By hand: 10 V behind 1 ohm give 16 W at 2 A (8 V), at most 25 W at 5 A; more than that is drawn at 5 A too. Without ohms 30 W are 3 A.
    [Theory]
    [InlineData(16, 1, 2)]
    [InlineData(25, 1, 5)]
    [InlineData(30, 1, 5)]
    [InlineData(30, 0, 3)]
    [InlineData(-11, 1, -1)]
    public void A_power_is_drawn_at_the_current_that_gives_it(double watts, double ohm, double amps) =>
        Assert.Equal(amps, Discharge.AmperesFor(watts, 10, ohm), tolerance: 1e-12);

    // By hand: half the time 10 A, half the time none: the root of 50.
    [Fact]
    public void The_effective_current_is_the_root_of_the_mean_square()
    {
        EnergyBudget budget = Of(String(5) with { Load = new LoadPlan.Profile([new LoadStep(1, 10, false), new LoadStep(1, 0, false)]) });

        Assert.Equal(Math.Sqrt(50), budget.EffectiveA, tolerance: 0.02);
        Assert.Equal(budget.UsableAh / 5, budget.Hours, tolerance: 0.002);
    }

    // Of one figure of 100 with 10 to either side one in twenty lies below 83.5515; a figure without a spread is what it is.
    [Fact]
    public void The_least_of_uncertain_figures()
    {
        Assert.Equal(83.5515, EnergySpread.QuantileOfLeast([100], [10], 0.05), tolerance: 1e-3);
        Assert.Equal(116.4485, EnergySpread.QuantileOfLeast([100], [10], 0.95), tolerance: 1e-3);
        Assert.Equal(100, EnergySpread.QuantileOfLeast([100], [0], 0.05), tolerance: 1e-6);
        Assert.Equal(90, EnergySpread.QuantileOfLeast([100, 90], [1, 0], 0.3), tolerance: 1e-6);
        // Two alike: that one of them lies below the middle is three in four.
        Assert.Equal(100, EnergySpread.QuantileOfLeast([100, 100], [10, 10], 0.75), tolerance: 1e-3);
    }

    [Fact]
    public void What_is_not_stated_repeats_to_one_and_a_half_percent_of_a_cell()
    {
        EnergyRequest plain = String(5, 5) with { Load = new LoadPlan.ConstantCurrent(5) };

        Assert.Equal(Of(plain with { RepeatabilityFraction = 0.015 }).Spread, Of(plain).Spread);
        Assert.Equal(0.015 / 2, EnergySpread.CapacityFractionOf(plain, plain.Groups[0] with { Parallel = 4 }), tolerance: 1e-12);
        Assert.Equal(0.05, EnergySpread.CapacityFractionOf(plain, plain.Groups[0] with { CapacitySigmaAh = 0.5 }), tolerance: 1e-12);
        Assert.Equal(0.2, EnergySpread.ResistanceFractionOf(plain.Groups[0] with { ResistanceSigmaMilliohm = 1 }), tolerance: 1e-12);
    }

    [Fact]
    public void A_group_whose_resistance_nobody_knows_takes_the_median_of_the_known()
    {
        Assert.Equal([0.01, 0.02, 0.03], new StringModel(String(10, null, 30)).ResistanceOhm!.Select(ohm => Math.Round(ohm, 9)));
        Assert.Null(new StringModel(String(null, null)).ResistanceOhm);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_capacity_that_is_none_is_a_fault_of_the_caller(double ah)
    {
        Assert.Throws<ArgumentException>(() => Of(String(5) with { Groups = [new SeriesGroup(1, ah, 5)] }));
        Assert.Throws<ArgumentException>(() => Of(String(5) with { Groups = [] }));
        Assert.Throws<ArgumentException>(() => Of(String(5) with { Groups = [new(1, 10, 5, 0.5), new(2, 10, 5)] }));
    }

    [Fact]
    public void All_draws_done_are_no_stopped_run()
    {
        EnergyDraws drawn = EnergyDraws.Of(String(5) with { Load = new LoadPlan.ConstantCurrent(5) }, 100, 1, null, TestContext.Current.CancellationToken)!;

        Assert.Equal((100, false), (drawn.Draws, drawn.WasStopped));
        Assert.Throws<ArgumentOutOfRangeException>(() => EnergyDraws.Of(String(5), 99, 1, null, TestContext.Current.CancellationToken));
    }

    // By hand: groups of 3.8 and 3.6 V, 10 milliohm each and 2 in the links. Down to 3.0 V the second gives 60 A, and 7.4 - 60 x 0.022 V; down to
    // 6.52 V the pack gives 40 A; up to 4.2 V the first takes 40 A at 7.4 + 40 x 0.022 V.
    [Fact]
    public void The_largest_power_is_set_by_the_first_limit()
    {
        double[] openV = [3.8, 3.6], ohm = [0.01, 0.01];

        Assert.Equal((60, 364.8), Rounded(PulsePower.Gives(openV, ohm, 0.002, 3.0, null)));
        Assert.Equal((40, 260.8), Rounded(PulsePower.Gives(openV, ohm, 0.002, 3.0, 6.52)));
        Assert.Equal((0, 0), Rounded(PulsePower.Gives(openV, ohm, 0.002, 3.7, null)));
        Assert.Equal((40, 331.2), Rounded(PulsePower.Takes(openV, ohm, 0.002, 4.2)));
        Assert.Equal((0, 0), Rounded(PulsePower.Takes(openV, ohm, 0.002, 3.7)));
        static (double, double) Rounded((double, double) pair) => (Math.Round(pair.Item1, 9), Math.Round(pair.Item2, 9));
    }

    // By hand: 0.2 milliohm each in four links, 3 milliohm of leads, and 2 x 0.4 milliohm of joints over 4 cells in each of five groups.
    // Tested down to 2.6 V and ridden to 3.4 V: what the curve holds between them stays in the cells; ridden as tested, all comes out.
    [Fact]
    public void A_ride_that_ends_above_the_tests_leaves_the_charge_between()
    {
        EnergyRequest tested = String(5, 5) with { TestCutoffV = 2.6, EmptyV = 3.4 };
        double left = Nmc.Curve.Between(Nmc.FullV, 2.6).FractionAt(3.4);

        Assert.InRange(left, 0.02, 0.5);
        Assert.Equal(10 * (1 - left), Of(tested).UsableAhAtRest, tolerance: 1e-6);
        Assert.Equal(10, Of(tested with { TestCutoffV = null }).UsableAhAtRest, tolerance: 1e-6);
    }

    [Fact]
    public void What_stands_beside_the_cells_adds_up()
    {
        EnergyRequest request = new() { Groups = [.. Enumerable.Range(1, 5).Select(g => new SeriesGroup(g, 10, 5, null, 4))], Chemistry = Nmc, LinkMilliohm = 0.2, LeadsMilliohm = 3, JointMilliohm = 0.4 };

        Assert.Equal(0.8 + 3 + 1.0, request.BesideCellsMilliohm, tolerance: 1e-12);
        Assert.Equal(1.8, (request with { LeadsMilliohm = null }).BesideCellsMilliohm, tolerance: 1e-12);
        Assert.Null((request with { Groups = [new(1, 10, 5)] }).JointsMilliohm);
        Assert.Equal(0.0048, new StringModel(request).LinkOhm!.Value, tolerance: 1e-12);
        Assert.Null(new StringModel(String(5)).LinkOhm);
    }

    [Theory]
    [InlineData(2, 1)]
    [InlineData(6, 5)]
    [InlineData(8, 5)]
    public void Replacements_are_followed_up_to_five_groups(int groups, int followed) =>
        Assert.Equal(followed, Of(new EnergyRequest { Groups = [.. Enumerable.Range(1, groups).Select(g => new SeriesGroup(g, 10 + g, 5))], Chemistry = Nmc }).AfterReplacement.Count);

    // Group 1 is small, group 2 has a high resistance: at rest the small one stands lowest, under load the other. Of equal groups the first is named.
    [Fact]
    public void The_group_that_ends_a_ride_is_the_lowest_as_the_ride_counts_volts()
    {
        SeriesString pack = new() { Curve = Nmc.Curve, CapacityAh = [9.8, 10], StartFraction = [1, 1], CellOhm = [0.001, 0.08] };
        int Lowest(bool underLoad) => Discharge.Run(pack, new LoadPlan.ConstantCurrent(5), new DischargeEnd(3.3, underLoad), TestContext.Current.CancellationToken).LowestGroup;

        Assert.Equal((0, 1), (Lowest(underLoad: false), Lowest(underLoad: true)));
        Assert.Equal(1, Of(String(5, 5, 5) with { Load = new LoadPlan.ConstantCurrent(5) }).EndsAtGroup);
    }

    [Fact]
    public void A_stop_is_heard_in_a_steady_ride_and_in_a_profile()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();

        Assert.ThrowsAny<OperationCanceledException>(() => EnergyBudgets.Of(String(5) with { Load = new LoadPlan.ConstantCurrent(5) }, stop.Token));
        Assert.ThrowsAny<OperationCanceledException>(() => EnergyBudgets.Of(String(5) with { Load = new LoadPlan.Profile([new LoadStep(1, 5, false)]) }, stop.Token));
    }

    [Theory]
    [InlineData(4.2, 3.0, true)]
    [InlineData(3.0, 3.0, false)]
    [InlineData(6.0, 3.0, false)]
    [InlineData(4.2, 0.1, false)]
    public void Limits_that_no_cell_of_the_chemistry_can_have_are_told(double fullV, double emptyV, bool possible)
    {
        Assert.Equal(possible, (String(5) with { FullV = fullV, EmptyV = emptyV }).HasLimitsOfItsChemistry);
        Assert.True((String(5) with { FullV = Nmc.Physics.HighestV, EmptyV = Nmc.Physics.LowestV }).HasLimitsOfItsChemistry);
    }

    // 4.19 V and 4.18 V hold no point of the curve between them.
    [Fact]
    public void A_window_too_narrow_for_the_curve_is_told_and_not_run_into()
    {
        Assert.False(Nmc.Curve.Spans(4.2, 4.19));
        Assert.True(Nmc.Curve.Spans(4.2, 2.75));
        Assert.Throws<ArgumentOutOfRangeException>(() => Nmc.Curve.Between(4.2, 4.19));
        Assert.False((String(5) with { EmptyV = 4.19 }).HasLimitsOfItsChemistry);
    }

    // 30 A over 60 milliohm take 1.8 V: the test would have ended before it began.
    [Fact]
    public void A_test_current_that_no_capacity_is_measured_with_leaves_the_capacity_as_it_was_typed()
    {
        EnergyBudget plain = Of(String(60, 60)), stated = Of(String(60, 60) with { TestCurrentA = 30 });

        Assert.Equal(plain.UsableWh, stated.UsableWh, tolerance: 1e-9);
    }

    [Theory]
    [InlineData("LFP")]
    [InlineData("NMC")]
    public void In_the_deepest_cold_some_charge_is_left(string chemistry) =>
        Assert.InRange(ColdCapacity.Fraction(Chemistries.Find(chemistry)!, -60), 0.05, 0.6);
}
