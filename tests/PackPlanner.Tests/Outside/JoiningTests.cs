using PackPlanner.Core.Balancing;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Tests.Outside;

/// <summary>Joining and balancing against sums that fit on paper and one bench note.</summary>
public class JoiningTests
{
    // Source: [Kirchhoff], by hand: 0.1 V / 60 mΩ = 1.67 A; into eight such cells 0.1 / (30 + 3.75) mΩ = 2.96 A.
    [Theory]
    [InlineData(2, 1.6667)]
    [InlineData(9, 2.9630)]
    public void A_tenth_of_a_volt_between_cells_of_30_milliohm(int cells, double expectedA)
    {
        JoinPlan plan = JoiningCheck.Plan(new JoinRequest(
            1, [new("low", 3.60, 30, 2.5, false), .. Enumerable.Range(1, cells - 1).Select(i => new JoinCell($"{i}", 3.70, 30, 2.5, false))], 0, null, null, null));

        Assert.Equal(expectedA, plan.Cells[0].InrushA!.Value, tolerance: 1e-4);
    }

    // Source: [Kirchhoff], by hand: 0.1 V / (0.25 + 0.25 + 0.1) mΩ = 166.67 A.
    [Fact]
    public void A_tenth_of_a_volt_between_two_large_cells_is_167_amperes()
    {
        JoinPlan plan = JoiningCheck.Plan(new JoinRequest(
            1, [new("1", 3.40, 0.25, 280, false), new("2", 3.30, 0.25, 280, false)], 0.1, null, null, Chemistries.LithiumIronPhosphate));

        Assert.All(plan.Cells, step => Assert.Equal(166.667, step.InrushA!.Value, tolerance: 1e-3));
        Assert.Equal(166.667, plan.WorstPair!.InrushA, tolerance: 1e-3);
    }

    // Source: [BenchJoin]: 4.193 V (25 mΩ) onto 2.097 V (85 mΩ) through 0.8 mΩ; the bound is 18.917 A, a clamp meter saw 6.5 A.
    [Fact]
    public void The_bound_stands_above_what_was_measured_on_one_abused_cell()
    {
        JoinPlan plan = JoiningCheck.Plan(new JoinRequest(
            1, [new("full", 4.193, 25, 2.5, false), new("flat", 2.097, 85, 2.5, true)], 0.8, null, null, Chemistries.NickelManganeseCobalt));

        Assert.Equal(18.917, plan.Cells[1].InrushA!.Value, tolerance: 1e-3);
        Assert.True(plan.Cells[1].InrushA > 6.5);
    }

    // Source: by hand: 5 Ah at 0.1 A is 50 h, at half duty 100 h; 4 Ah at 60 mA is 66.7 h.
    [Theory]
    [InlineData(0.95, 0.1, 1.0, 50)]
    [InlineData(0.95, 0.1, 0.5, 100)]
    [InlineData(0.96, 0.06, 1.0, 66.667)]
    public void Hours_of_bleeding_are_charge_over_current_and_duty(double lowest, double bleedA, double duty, double hours)
    {
        BalancingPlan plan = Balancer.Plan(new BalancingRequest([new(1, 100, 1.0), new(2, 100, lowest)], bleedA, duty, null, AtTop: true));

        Assert.Equal(hours, plan.BleedHours!.Value, tolerance: 1e-3);
        Assert.True(plan.ByBleeding);
    }

    // Source: by hand: 4 x 280 Ah x 0.6 = 672 Ah, 67.2 h at 10 A; a tenth of 10 A is less than 0.02 x 1120 Ah.
    [Fact]
    public void Four_large_cells_side_by_side_from_40_percent()
    {
        BalancingPlan plan = Balancer.Plan(new BalancingRequest([.. Enumerable.Range(1, 4).Select(g => new GroupCharge(g, 280, 0.40))], null, 1, 10, AtTop: true));

        Assert.Equal(672, plan.Parallel!.ChargeAh, tolerance: 1e-9);
        Assert.Equal(67.2, plan.Parallel.LeastHours!.Value, tolerance: 1e-9);
        Assert.Equal(1.0, plan.Parallel.StopBelowA!.Value, tolerance: 1e-9);
    }
}
