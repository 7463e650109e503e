using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Tests.Screens;

/// <summary>What step 2 advises for cells that are held fits the reason of holding.</summary>
public class HeldAdviceTests
{
    [Fact]
    public void A_cell_near_its_limit_is_to_be_repeated() =>
        Assert.StartsWith("Repeat the 1 held in another slot; or ", Next(row => row with { CapacityAh = 3.98 }));

    [Fact]
    public void A_cell_that_loses_charge_is_not_to_be_repeated_but_left_out()
    {
        string next = Next(row => row with { SelfDischargeMillivoltPerDay = 9 });

        Assert.StartsWith("Leave out the 1 held: it loses charge; ", next);
        Assert.DoesNotContain("slot", next);
    }

    [Fact]
    public void A_leaking_cell_near_its_limit_is_not_to_be_repeated_either() =>
        Assert.StartsWith("Leave out the 1 held", Next(row => row with { SelfDischargeMillivoltPerDay = 9, CapacityAh = 3.98 }));

    [Fact]
    public void A_cell_without_a_capacity_is_to_be_tested() =>
        Assert.StartsWith("Test the 1 held to the cut-off; or ", Next(row => row with { CapacityAh = null }));

    [Fact]
    public void A_cell_that_rests_under_its_cut_off_is_not_to_be_charged() =>
        Assert.StartsWith("Charge none of the 1 held: ! says why", Next(row => row with { RestV = 2.4 }));

    [Fact]
    public void Of_two_kinds_the_one_that_a_test_can_settle_is_said_with_its_number()
    {
        using Bench bench = Lot((2, row => row with { CapacityAh = 3.98 }), (3, row => row with { SelfDischargeMillivoltPerDay = 9 }));

        Assert.StartsWith("Repeat 1 of the 2 held in another slot; or ", bench.Desk.Step.Picture.Next);
    }

    private static string Next(Func<CellRow, CellRow> change)
    {
        using Bench bench = Lot((2, change));
        return bench.Desk.Step.Picture.Next;
    }

    private static Bench Lot(params (int At, Func<CellRow, CellRow> Change)[] changes)
    {
        Bench bench = new();
        Assert.True(bench.Desk.Store.New("Held"));
        CellRow[] rows = [.. Enumerable.Range(1, 12).Select(i => new CellRow
        {
            Label = $"T{i:000}",
            CapacityAh = 4.4 + (0.01 * i),
            CapacityStepAh = 0.001,
            ResistanceMilliohm = 30 + (0.1 * i),
            ResistanceKind = ResistanceKind.Dc,
            RestV = 3.6,
            SelfDischargeMillivoltPerDay = 0.1 + (0.01 * (i % 3)),
        })];
        foreach ((int at, Func<CellRow, CellRow> change) in changes)
            rows[at] = change(rows[at]);
        bench.Desk.Do(JobChanges.AddTable(new JobTable(new JobSource("s1", "cells.csv", new string('0', 64), SourceKind.Cells, ["invented"]), rows, 0)));
        bench.Set("chemistry", new JobValue.Word("NMC"));
        bench.Set("ratedAh", new JobValue.Number(5.0));
        bench.Press("2");
        return bench;
    }
}
