using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Tests.Core.Sharing;

public class JoiningCheckTests
{
    private static readonly Chemistry Nmc = Chemistries.NickelManganeseCobalt;

    [Theory]
    [InlineData(3.66, null)]
    [InlineData(3.70, SignalWord.Warning)]
    [InlineData(4.20, SignalWord.Danger)]
    public void The_current_is_graded_by_amperes(double restV, SignalWord? expected)
    {
        // 60 mΩ between them, 2.5 Ah each: 0.5C is 1.25 A or 0.075 V, 2C is 5 A or 0.3 V.
        JoinPlan plan = Plan([new("1", 3.6, 30, 2.5, false), new("2", restV, 30, 2.5, false)]);

        Assert.Equal(expected, plan.Cautions.FirstOrDefault(caution => caution.Code == "caution-07" && caution.Where == "cell 2")?.Signal);
        Assert.Equal(restV > 3.675, plan.Cells[1].InrushA > 1.25);
    }

    [Fact]
    public void A_warning_begins_just_above_the_limit()
    {
        Assert.DoesNotContain(Plan([new("1", 3.6, 30, 2.5, false), new("2", 3.6749, 30, 2.5, false)]).Cautions, caution => caution.Code == "caution-07");
        Assert.Contains(Plan([new("1", 3.6, 30, 2.5, false), new("2", 3.6751, 30, 2.5, false)]).Cautions, caution => caution.Code == "caution-07");
    }

    // Cells of 2.5 Ah, 60 mΩ between them: 2C is 5 A, 0.3 V apart.
    [Theory]
    [InlineData(3.8999, SignalWord.Warning)]
    [InlineData(3.9001, SignalWord.Danger)]
    public void A_danger_begins_just_above_twice_the_capacity(double restV, SignalWord expected) =>
        Assert.Equal(expected, Plan([new("1", 3.6, 30, 2.5, false), new("2", restV, 30, 2.5, false)]).Cautions.First(caution => caution.Code == "caution-07").Signal);

    // Large cells, so that 2C is far off: 50 A and 1 V must both be passed. 20 mΩ between them: 1 V is 50 A; 19 mΩ and 0.99 V are 52 A.
    [Theory]
    [InlineData(3.0, 4.0, 10, SignalWord.Warning)]
    [InlineData(3.0, 4.001, 10, SignalWord.Danger)]
    [InlineData(3.0, 3.99, 9.5, SignalWord.Warning)]
    public void Fifty_amperes_alone_and_a_volt_alone_are_no_danger(double lowV, double highV, double milliohm, SignalWord expected) =>
        Assert.Equal(expected, Plan([new("1", lowV, milliohm, 60, false), new("2", highV, milliohm, 60, false)]).Cautions.First(caution => caution.Code == "caution-07").Signal);

    [Fact]
    public void The_receivers_charge_rating_and_the_givers_discharge_rating_are_told_apart()
    {
        JoinCell[] cells = [new("low", 3.5, 30, 2.5, false), new("high", 3.7, 30, 2.5, false)];
        JoinRequest request = new(1, cells, 0, ChargeRatingA: 4, DischargeRatingA: 20, Nmc);

        Assert.Equal(4, JoiningCheck.Plan(request).Cells[0].LimitA!.Value, tolerance: 1e-9);
        Assert.Equal(2, JoiningCheck.Plan(request with { DischargeRatingA = 2 }).Cells[0].LimitA!.Value, tolerance: 1e-9);
    }

    [Fact]
    public void Brought_to_the_stated_volts_a_cell_may_be_joined()
    {
        JoinCell[] cells = [.. Enumerable.Range(1, 8).Select(i => new JoinCell($"T{i}", 3.63 + 0.001 * i, 30.8, 4.3, false)), new("T113", 3.317, 30.4, 4.3, false)];
        JoinPlan before = Plan(cells, 1.8);

        JoinPlan after = Plan([.. cells.Select(cell => cell.Label == "T113" ? cell with { RestV = before.Cells[8].BringToV } : cell)], 1.8);

        Assert.InRange(before.Cells[8].BringToV!.Value, 3.63, 3.64);
        Assert.Equal("T113", before.Order[^1]);
        Assert.Equal(9, before.Cells[8].Place);
        Assert.True(before.Cells[8].Within!.Value.LowV > 3.317);
        Assert.DoesNotContain(after.Cautions, caution => caution.Code == "caution-07");
    }

    [Fact]
    public void The_resistor_holds_the_current_to_the_limit_and_the_time_is_that_of_an_exponential()
    {
        // A straight curve of 1.2 V: each cell is a capacitor of 2.5 Ah / 1.2 V.
        Chemistry straight = Nmc with { Curve = new OpenCircuitCurve([0, 0.25, 0.5, 0.75, 1], [3.0, 3.3, 3.6, 3.9, 4.2], Standing.Assumed, "by hand") };
        JoinPlan plan = JoiningCheck.Plan(new JoinRequest(1, [new("1", 3.4, 30, 2.5, false), new("2", 3.8, 30, 2.5, false)], 0, null, null, straight));

        JoinStep step = plan.Cells[0];
        Assert.Equal(0.4 / 1.25, step.ResistorOhm!.Value + 0.060, tolerance: 1e-9);
        // Source: by hand: tau = R C with two capacitors in series; until 1.25 A flow through 60 mΩ alone, 0.075 V.
        double tauH = 0.32 * (2.5 / 1.2) / 2;
        Assert.Equal(tauH * Math.Log(0.4 / 0.075), step.Hours!.Value, tolerance: 0.02 * step.Hours.Value);
    }

    [Fact]
    public void What_must_not_be_charged_gets_neither_volts_nor_a_place()
    {
        JoinPlan plan = Plan([new("1", 3.6, 30, 2.5, false), new("2", 3.6, 30, 2.5, false), new("bad", 1.9, 30, 2.5, true)]);

        Assert.Null(plan.Cells[2].BringToV);
        Assert.Null(plan.Cells[2].Place);
        Assert.Null(plan.Cells[2].ResistorOhm);
        Assert.Equal("not-to-be-charged", plan.Cells[2].Reason);
        Assert.DoesNotContain("bad", plan.Order);
        Assert.Equal(0, plan.Cells[0].InrushA!.Value, tolerance: 1e-9);
    }

    [Theory]
    [InlineData(3.6500, false)]
    [InlineData(3.6510, true)]
    public void An_unknown_resistance_matters_above_five_hundredths_of_a_volt(double restV, bool raised)
    {
        JoinPlan plan = Plan([new("1", 3.6, 30, 2.5, false), new("2", restV, null, 2.5, false)]);

        Assert.Null(plan.Cells[1].InrushA);
        Assert.Equal(raised, plan.Cautions.Any(caution => caution is { Code: "caution-08", Signal: SignalWord.Caution, Where: "cell 2" }));
    }

    // Nobody's resistance is known: each is brought to what those within 0.05 V of one another have, never just to its own volts.
    [Fact]
    public void Without_any_resistance_there_are_still_volts_to_bring_each_to()
    {
        JoinPlan plan = Plan([new("1", 3.60, null, 2.5, false), new("2", 3.61, null, 2.5, false), new("3", 3.70, null, 2.5, false)]);

        Assert.All(plan.Cells, cell => Assert.Equal(3.605, cell.BringToV!.Value, tolerance: 1e-9));
    }

    [Fact]
    public void Fifty_amperes_and_a_volt_apart_is_a_danger_whatever_the_size()
    {
        JoinPlan plan = JoiningCheck.Plan(new JoinRequest(1, [new("1", 3.0, 5, null, false), new("2", 4.1, 5, null, false)], 0, null, null, Nmc));

        Assert.Equal(SignalWord.Danger, plan.Cautions.First(caution => caution.Code == "caution-07").Signal);
        Assert.Null(plan.Cells[0].LimitA);
    }

    [Fact]
    public void Iron_phosphate_is_told_that_equal_volts_are_not_equal_charge_and_gets_no_time()
    {
        JoinPlan plan = JoiningCheck.Plan(new JoinRequest(
            1, [new("1", 3.28, 2, 10, false), new("2", 3.33, 2, 10, false)], 0, null, null, Chemistries.LithiumIronPhosphate));

        Assert.Contains(plan.Cautions, caution => caution is { Code: "caution-08", Signal: SignalWord.Notice });
        Assert.Null(plan.Cells[0].Hours);
    }

    [Fact]
    public void A_single_cell_needs_nothing()
    {
        JoinPlan plan = Plan([new("1", 3.6, 30, 2.5, false)]);

        Assert.Equal(["1"], plan.Order);
        Assert.Null(plan.Cells[0].InrushA);
        Assert.Empty(plan.Cautions);
    }

    private static JoinPlan Plan(JoinCell[] cells, double linkMilliohm = 0) =>
        JoiningCheck.Plan(new JoinRequest(1, cells, linkMilliohm, null, null, Nmc));
}
