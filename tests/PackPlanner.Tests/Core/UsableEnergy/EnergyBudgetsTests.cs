using CsCheck;
using PackPlanner.Core.Cells;
using PackPlanner.Core.UsableEnergy;
using UnitsNet;

namespace PackPlanner.Tests.Core.UsableEnergy;

public class EnergyBudgetsTests
{
    // By hand: 2 x 10 Ah x 3.6 V = 72 Wh; weakest: 9 Ah, where group 1 gives 9 x (4.2 + 3.12)/2 = 32.94 and group 2
    // 9 x 3.6 = 32.4 Wh; heat 5 A x 20 mΩ x 9 Ah = 0.9 Wh less what the larger group's R saves by not being emptied.
    [Fact]
    public void A_constant_current_agrees_with_a_sum_by_hand()
    {
        EnergyBudget budget = Of(StraightCells.Request([10, 9]) with { RatedAh = 10, Load = new LoadPlan.ConstantCurrent(5) });

        Dictionary<string, double?> steps = budget.Losses.ToDictionary(step => step.Name, step => step.Wh);
        Assert.Equal(72, budget.NominalWh, tolerance: 1e-9);
        Assert.Equal(0, steps["curve's mean volts against nominal"]!.Value, tolerance: 1e-6);
        Assert.Equal(-3.6, steps["ageing"]!.Value, tolerance: 1e-6);
        Assert.Equal(32.94 + 32.4 - 68.4, steps["weakest group"]!.Value, tolerance: 1e-5);
        Assert.Equal(0, steps["charge offsets"]!.Value, tolerance: 1e-9);
        Assert.InRange(steps["heat in cells"]!.Value, -0.9, -0.86);
        Assert.Equal(5 * 5 * 0.020, budget.Heat.Riding!.CellsW!.Value, tolerance: 1e-9);
    }

    // A full discharge at constant current: I R t whatever the shape of the resistance over charge, because its mean is 1.
    [Fact]
    public void Heat_of_a_full_discharge_is_the_current_squared_times_the_resistance_given()
    {
        EnergyBudget budget = Of(StraightCells.Request([10]) with { Load = new LoadPlan.ConstantCurrent(5) });

        Assert.Equal(-5 * 0.010 * 10, budget.Losses.Single(step => step.Name == "heat in cells").Wh!.Value, tolerance: 1e-4);
    }

    [Fact]
    public void The_list_adds_up_and_each_remedy_is_no_worse_than_now()
    {
        Gen<EnergyRequest> requests =
            from n in Gen.Int[1, 8]
            from ah in Gen.Double[5, 50].Array[n]
            from milliohm in Gen.Double[0.3, 8].Array[n]
            from charge in Gen.Double[0.2, 0.9].Array[n]
            from load in Gen.OneOf<LoadPlan>(
                Gen.Double[0.5, 20].Select(a => (LoadPlan)new LoadPlan.ConstantCurrent(a)),
                Gen.Double[5, 60].Select(w => (LoadPlan)new LoadPlan.ConstantPower(w * n)),
                Gen.Double[2, 30].Select(a => (LoadPlan)new LoadPlan.Profile([new LoadStep(20, a, false), new LoadStep(10, a * 10, true), new LoadStep(5, -a / 4, false)])))
            from chemistry in Gen.Int[0, Chemistries.All.Count - 1].Select(i => Chemistries.All[i])
            from reserve in Gen.Int[0, 1].Select(i => i * 0.1)
            from degC in Gen.Int[0, 2].Select(i => i == 0 ? null : (double?)(i == 1 ? 5 : 30))
            select new EnergyRequest
            {
                Groups = [.. ah.Select((q, g) => new SeriesGroup(g + 1, q, milliohm[g], charge[g]))],
                Chemistry = chemistry,
                Load = load,
                RatedAh = 50,
                LinkMilliohm = 0.1,
                ReserveFraction = reserve,
                TemperatureDegC = degC,
                PackEmptyV = n * (chemistry.CutoffV + 0.1),
            };

        requests.Sample(request =>
        {
            EnergyBudget budget = Of(request);
            Assert.Equal(budget.UsableWh, budget.NominalWh + budget.Losses.Sum(step => step.Wh!.Value), tolerance: 1e-6);
            Assert.True(budget.AfterBalance.UsableWh >= budget.UsableWh - 1e-6);
            Assert.True(budget.UsableAh <= budget.UsableAhAtRest + 1e-6);
            Assert.True(budget.Spread.LowWh <= budget.Spread.HighWh);
        }, seed: "0000KIcCwDG2", iter: 40);
    }

    [Fact]
    public void The_controllers_limit_ends_it_when_it_comes_first()
    {
        EnergyRequest request = StraightCells.Request([10, 10, 10]) with { Load = new LoadPlan.ConstantCurrent(5) };

        EnergyBudget byCell = Of(request with { PackEmptyV = 9.0 });
        EnergyBudget byController = Of(request with { PackEmptyV = 9.6 });

        Assert.False(byCell.EndedByController);
        Assert.True(byController.EndedByController);
        Assert.Equal(9.6, byController.EndPackV, tolerance: 1e-6);
        Assert.True(byController.Losses.Single(step => step.Name == "controller's low-voltage limit").Wh < -1);
        Assert.Null(byController.AfterBalance.NextBottleneck);
    }

    [Fact]
    public void Without_resistances_heat_and_sag_are_unknown_and_not_zero()
    {
        EnergyBudget budget = Of(new EnergyRequest
        {
            Groups = [new(1, 10, null), new(2, 9, null)],
            Chemistry = StraightCells.Chemistry,
            Load = new LoadPlan.ConstantCurrent(5),
        });

        Assert.Null(budget.Losses.Single(step => step.Name == "heat in cells").Wh);
        Assert.Null(budget.Losses.Single(step => step.Name == "cut-off under load").Wh);
        Assert.Null(budget.Heat.Riding!.CellsW);
        Assert.Null(StringShortCircuit.Of(StraightCells.Request([10]) with { Groups = [new(1, 10, null)] }, false).ProspectiveA);
        Assert.Equal(budget.UsableWh, budget.NominalWh + budget.Losses.Sum(step => step.Wh ?? 0), tolerance: 1e-6);
    }

    [Fact]
    public void A_test_at_the_same_load_books_no_charge_left_in_the_cells()
    {
        EnergyRequest request = StraightCells.Request([10]) with { Load = new LoadPlan.ConstantCurrent(8), TestCurrentA = 8 };

        Assert.Equal(10, Of(request).UsableAh, tolerance: 1e-6);
        Assert.True(Of(request with { TestCurrentA = null }).UsableAh < 9.95);
    }

    [Fact]
    public void A_reserve_keeps_back_its_part_of_the_energy()
    {
        EnergyRequest request = StraightCells.Request([10, 9]) with { Load = new LoadPlan.ConstantPower(30) };

        Assert.Equal(0.9 * Of(request).UsableWh, Of(request with { ReserveFraction = 0.1 }).UsableWh, tolerance: 1e-6);
    }

    [Fact]
    public void A_steady_profile_is_the_steady_load()
    {
        EnergyRequest request = StraightCells.Request([10, 9]);

        EnergyBudget steady = Of(request with { Load = new LoadPlan.ConstantCurrent(5) });
        EnergyBudget profile = Of(request with { Load = new LoadPlan.Profile([new LoadStep(7, 5, false), new LoadStep(11, 5, false)]) });
        EnergyBudget steadyW = Of(request with { Load = new LoadPlan.ConstantPower(35) });
        EnergyBudget profileW = Of(request with { Load = new LoadPlan.Profile([new LoadStep(13, 35, true)]) });

        Assert.Equal(steady.UsableAh, profile.UsableAh, tolerance: 1e-5);
        Assert.Equal(steady.UsableWh, profile.UsableWh, tolerance: 1e-4);
        Assert.Equal(steadyW.UsableAh, profileW.UsableAh, tolerance: 1e-4);
        Assert.Equal(steadyW.UsableWh, profileW.UsableWh, tolerance: 1e-3);
    }

    [Fact]
    public void A_profile_that_never_empties_the_pack_is_refused() =>
        Assert.Throws<EndlessLoadException>(() => Of(StraightCells.Request([10]) with { Load = new LoadPlan.Profile([new LoadStep(10, 5, false), new LoadStep(10, -5, false)]) }));

    [Fact]
    public void Replacing_the_weakest_pays_down_to_the_second_weakest()
    {
        EnergyBudget budget = Of(StraightCells.Request([71.2, 95.2, 96, 97, 98]) with { Load = null });

        Assert.Equal(71.2, budget.UsableAh, tolerance: 1e-6);
        Assert.Equal([1], budget.AfterReplacement[0].Groups);
        Assert.Equal(95.2, budget.AfterReplacement[0].UsableAh, tolerance: 1e-6);
        Assert.Equal(2, budget.AfterReplacement[0].NextBottleneck);
    }

    [Fact]
    public void Halving_the_step_quarters_the_error()
    {
        SeriesString pack = new()
        {
            Curve = Chemistries.LithiumIronPhosphate.Curve,
            CapacityAh = [10],
            StartFraction = [0.9],
            CellOhm = [0.01],
        };
        // Ends by energy inside the smooth part of the curve, so that the end itself adds no error of its own.
        double After(int steps) => Discharge.Run(
            pack, new LoadPlan.ConstantPower(30), new DischargeEnd(3.22, UnderLoad: false), TestContext.Current.CancellationToken, steps).DeliveredWh;

        double exact = After(64_000);

        double order = Math.Log2(Math.Abs(After(50) - exact) / Math.Abs(After(100) - exact));
        Assert.InRange(order, 1.5, 2.6);
    }

    // The energy of a constant power is exact by itself; the charge that it takes is what the step can get wrong.
    [Fact]
    public void Halving_the_step_of_a_profile_in_watts_quarters_the_error()
    {
        SeriesString pack = new()
        {
            Curve = StraightCells.Chemistry.Curve,
            CapacityAh = [10],
            StartFraction = [0.95],
            CellOhm = [0.02],
        };
        double After(double seconds) => Discharge.Run(
            pack, new LoadPlan.Profile([new LoadStep(seconds, 60, true)]), new DischargeEnd(3.0, UnderLoad: false, AfterWh: 20),
            TestContext.Current.CancellationToken, steps: 1).TakenAh;

        double exact = After(0.25);

        double order = Math.Log2(Math.Abs(After(40) - exact) / Math.Abs(After(20) - exact));
        Assert.InRange(order, 1.7, 2.4);
    }

    private static EnergyBudget Of(EnergyRequest request) => EnergyBudgets.Of(request, TestContext.Current.CancellationToken);
}
