using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Tests.Core.Sharing;

/// <summary>Currents on joining against the node that all cells meet at, cell by cell.</summary>
public class JoiningPropertiesTests
{
    private static readonly Gen<JoinRequest> Requests = Drawn().Where(request => request.Cells.Select(cell => cell.RestV).Distinct().Count() == request.Cells.Count);

    private static Gen<JoinRequest> Drawn() =>
        from n in Gen.Int[2, 8]
        from volts in Gen.Double[3.3, 4.1].Array[n]
        from milliohm in Gen.Double[5, 80].Array[n]
        from ah in Gen.Double[1, 5].Array[n]
        from link in Gen.Double[0, 3]
        from charge in Gen.OneOf(Gen.Const((double?)null), Gen.Double[1, 6].Select(a => (double?)a))
        from discharge in Gen.OneOf(Gen.Const((double?)null), Gen.Double[1, 20].Select(a => (double?)a))
        select new JoinRequest(
            1, [.. volts.Select((v, i) => new JoinCell($"K{i}", v, milliohm[i], ah[i], false))], link, charge, discharge, Chemistries.NickelManganeseCobalt);

    // The others are joined and at rest with one another; one wire with the link's resistance brings the cell to them. Unknowns: their node, and the current of the wire.
    private static (double InrushA, double[] OthersA, double RestingV) Join(JoinCell cell, JoinCell[] others, double linkOhm)
    {
        double[] ohm = [.. others.Select(other => other.ResistanceMilliohm!.Value / 1000)];
        Matrix<double> rows = Matrix<double>.Build.Dense(2, 2);
        rows[0, 0] = ohm.Sum(r => 1 / r);
        rows[0, 1] = 1;
        rows[1, 0] = 1;
        rows[1, 1] = -(cell.ResistanceMilliohm!.Value / 1000 + linkOhm);
        Vector<double> right = Vector<double>.Build.Dense([others.Zip(ohm, (other, r) => other.RestV!.Value / r).Sum(), cell.RestV!.Value]);
        Vector<double> solved = rows.LU().Solve(right);
        double restingV = right[0] / rows[0, 0];
        return (solved[1], [.. others.Select((_, i) => (restingV - solved[0]) / ohm[i])], restingV);
    }

    [Fact]
    public void Each_current_is_that_of_the_circuit_and_each_limit_the_first_that_any_cell_reaches()
    {
        Requests.Sample(request =>
        {
            JoinPlan plan = JoiningCheck.Plan(request);
            for (int i = 0; i < request.Cells.Count; i++)
            {
                JoinCell cell = request.Cells[i];
                JoinStep step = plan.Cells[i];
                JoinCell[] others = [.. request.Cells.Where((_, k) => k != i)];
                (double amps, double[] othersA, double restingV) = Join(cell, others, request.LinkMilliohm / 1000);
                Assert.Equal(Math.Abs(amps), step.InrushA!.Value, tolerance: 1e-7);
                if (Math.Abs(amps) < 1e-9)
                    continue;
                Assert.Equal(amps > 0, step.Receives!.Value);

                // The current at which the first of them reaches its rating, or half its ampere-hours.
                double? Rating(JoinCell one, bool receives) => (receives ? request.ChargeRatingA : request.DischargeRatingA) ?? one.CapacityAh / 2;
                double Limit(bool receives) => Math.Min(Rating(cell, receives)!.Value, others.Select((other, k) => Rating(other, !receives)!.Value * Math.Abs(amps / othersA[k])).Min());
                double limit = Limit(amps > 0);
                Assert.Equal(limit, step.LimitA!.Value, tolerance: 1e-6 * limit);

                double pathOhm = Math.Abs((restingV - cell.RestV!.Value) / amps);
                // Below the others it would be charged, above them it would give; and no cell is charged past full or drawn past empty for it.
                double target = plan.Cells[0].BringToV!.Value;
                Assert.Equal(Math.Max(2.75, target - Limit(receives: true) * pathOhm), step.Within!.Value.LowV, tolerance: 1e-6);
                Assert.Equal(Math.Min(4.2, target + Limit(receives: false) * pathOhm), step.Within.Value.HighV, tolerance: 1e-6);
                Assert.Equal(Math.Min(Limit(true), Limit(false)) * pathOhm, step.ApartV!.Value, tolerance: 1e-6);
                // Through the resistor no more than the limit flows.
                Assert.Equal(Math.Min(Math.Abs(amps), limit), Math.Abs(restingV - cell.RestV.Value) / (pathOhm + step.ResistorOhm!.Value), tolerance: 1e-6 * limit);
            }
        }, seed: "0000KIcCwDG2", iter: 1000);
    }

    [Fact]
    public void The_order_goes_outwards_from_the_middle_and_each_joins_those_before_it_that_are_not_late()
    {
        Requests.Sample(request =>
        {
            JoinPlan plan = JoiningCheck.Plan(request);
            double[] sorted = [.. request.Cells.Select(cell => cell.RestV!.Value).Order()];
            double middle = (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
            JoinCell[] order = [.. plan.Order.Select(label => request.Cells.Single(cell => cell.Label == label))];
            Assert.Equal(request.Cells.Count, order.Length);
            for (int place = 0; place < order.Length; place++)
            {
                JoinStep step = plan.Cells.Single(one => one.Label == order[place].Label);
                Assert.Equal(place + 1, step.Place);
                if (place == 0)
                {
                    Assert.Null(step.InOrderA);
                    continue;
                }

                Assert.True(Math.Abs(order[place].RestV!.Value - middle) >= Math.Abs(order[place - 1].RestV!.Value - middle) - 1e-9);
                JoinCell[] before = [.. order[..place].Where(cell => plan.Cells.Single(one => one.Label == cell.Label) is { } early && !(early.InrushA > early.LimitA))];
                if (before.Length == 0)
                    Assert.Null(step.InOrderA);
                else
                    Assert.Equal(Math.Abs(Join(order[place], before, request.LinkMilliohm / 1000).InrushA), step.InOrderA!.Value, tolerance: 1e-7);
            }
        }, seed: "0000KIcCwDG2", iter: 500);
    }

    [Fact]
    public void The_worst_pair_is_the_worst_of_all_pairs()
    {
        Requests.Sample(request =>
        {
            JoinPair worst = JoiningCheck.Plan(request).WorstPair!;
            double most = request.Cells.SelectMany(a => request.Cells.Select(b => (a.RestV!.Value - b.RestV!.Value) * 1000 / (a.ResistanceMilliohm!.Value + b.ResistanceMilliohm!.Value + request.LinkMilliohm))).Max();
            JoinCell giver = request.Cells.Single(cell => cell.Label == worst.Giver), receiver = request.Cells.Single(cell => cell.Label == worst.Receiver);
            Assert.Equal(most, worst.InrushA, tolerance: 1e-9 * most);
            Assert.True(giver.RestV >= receiver.RestV);
        }, seed: "0000KIcCwDG2", iter: 500);
    }

    // By hand: 3.6 and 3.8 V make 3.7; 20 and 30 milliohm side by side 12; 2 and 3 Ah 5.
    [Fact]
    public void A_row_of_cells_joined_beforehand_is_one_cell()
    {
        JoinCell[] cells = [new("a", 3.6, 20, 2, false), new("b", 3.8, 30, 3, true)];

        JoinCell row = JoinCell.Together("row", cells);
        JoinCell unknown = JoinCell.Together("row", [.. cells, new JoinCell("c", null, null, null, false)]);

        Assert.Equal(("row", 3.7, 5.0, true), (row.Label, Math.Round(row.RestV!.Value, 12), row.CapacityAh!.Value, row.NotToBeCharged));
        Assert.Equal(12, row.ResistanceMilliohm!.Value, tolerance: 1e-12);
        Assert.Equal((null, null, null), (unknown.RestV, unknown.ResistanceMilliohm, unknown.CapacityAh));
    }

    // By hand: 3.60 and 3.61 V within their limits settle at (3 x 3.60 + 3.61) / 4; a third far off is no part of that. A cell of
    // unknown resistance is taken as low as the lowest known, 60 milliohm here: 0.01 V over 120 milliohm.
    [Fact]
    public void The_volts_to_bring_each_to_are_those_at_which_the_cells_in_the_middle_settle()
    {
        JoinPlan plan = JoiningCheck.Plan(new(1, [new("a", 3.60, 20, 2.5, false), new("b", 3.61, 60, 2.5, false), new("c", 3.9, 20, 2.5, false)], 0, null, null, null));
        JoinPlan unknown = JoiningCheck.Plan(new(1, [new("a", 3.60, 60, 2.5, false), new("b", 3.61, null, 2.5, false)], 0, null, null, null));

        Assert.Equal([3.6025, 3.6025, 3.6025], plan.Cells.Select(cell => Math.Round(cell.BringToV!.Value, 9)));
        Assert.Equal(0.01 / 0.120, unknown.Cells[0].InrushA!.Value, tolerance: 1e-9);
        Assert.Null(unknown.Cells[1].InrushA);
    }

    [Fact]
    public void Of_cells_that_stand_alike_the_label_decides() =>
        Assert.Equal(["a", "b", "c"], JoiningCheck.Plan(new(1, [new("c", 3.6, 20, 2, false), new("a", 3.6, 20, 2, false), new("b", 3.6, 20, 2, false)], 0, null, null, null)).Order);
}
