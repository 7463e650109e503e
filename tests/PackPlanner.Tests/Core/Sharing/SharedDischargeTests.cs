using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Tests.Core.Sharing;

public class SharedDischargeTests
{
    private static readonly Chemistry Nmc = Chemistries.NickelManganeseCobalt;

    [Fact]
    public void Like_cells_share_alike_all_the_way_down()
    {
        CellBranch[] cells = [new("1", 4.2, 30, 2.5), new("2", 4.2, 30, 2.5)];

        SharedDischargeRun run = Run(ParallelCells.Alike(1, cells, 0, 1, 1), 5);

        Assert.All(run.Through, moment => Assert.Equal(1.0, moment.Groups[0].TimesEqual!.Value, tolerance: 1e-9));
        Assert.Equal(Nmc.CutoffV, run.Through[^1].Groups[0].TerminalV, tolerance: 1e-3);
        Assert.InRange(run.Through[^1].AtAh, 4.5, 5.0);
    }

    [Fact]
    public void Sharing_begins_by_resistance_and_drifts_towards_capacity()
    {
        // The small cell has the lower resistance: it leads at first and must fall behind, because it runs out sooner.
        CellBranch[] cells = [new("large", 4.2, 40, 3.0), new("small", 4.2, 25, 2.0)];

        SharedDischargeRun run = Run(ParallelCells.Alike(1, cells, 0, 1, 1), 5);

        Assert.Equal(1, run.Through[0].Groups[0].WorstCell);
        Assert.Equal(0, run.Through[run.Through.Count / 2].Groups[0].WorstCell);
        Assert.Equal(5.0, run.Through[^1].Groups[0].CurrentA.Sum(), tolerance: 1e-9);
    }

    [Fact]
    public void Halving_the_step_quarters_the_error()
    {
        double[] fraction = [.. Enumerable.Range(0, 401).Select(i => i / 400.0)];
        OpenCircuitCurve smooth = new(fraction, [.. fraction.Select(z => 3 + z * z)], Standing.Assumed, "by hand");
        CellBranch[] cells = [new("1", 4.0, 40, 2.5), new("2", 4.0, 20, 1.8)];
        double After(int steps)
        {
            SharedCells state = new(ParallelCells.Alike(1, cells, 0, 1, 1), smooth);
            for (int step = 0; step < steps; step++)
                state.Step(0.4 / steps, 6);
            return state.Fraction[1];
        }

        double exact = After(12800);

        // The curve's even grid adds a floor of about 1e-9, so coarse steps show the order.
        double order = Math.Log2(Math.Abs(After(10) - exact) / Math.Abs(After(20) - exact));
        Assert.InRange(order, 1.7, 2.3);
    }

    [Fact]
    public void The_first_group_at_its_cut_off_ends_it()
    {
        CellBranch[] good = [new("1", 4.2, 30, 2.5), new("2", 4.2, 30, 2.5)];
        CellBranch[] weak = [new("3", 4.2, 30, 2.5), new("4", 4.2, 30, 1.9)];

        SharedDischargeRun run = SharedDischarge.Run(
            [ParallelCells.Alike(1, good, 0, 1, 1), ParallelCells.Alike(2, weak, 0, 1, 1)], Nmc, Nmc.CutoffV, 5, TestContext.Current.CancellationToken);

        Assert.Equal(2, run.EndedByGroup);
        Assert.InRange(run.Through[^1].AtAh, 4.0, 4.4);
    }

    [Fact]
    public void A_stop_is_heard()
    {
        CellBranch[] cells = [new("1", 4.2, 30, 2.5)];
        using CancellationTokenSource stop = new();
        stop.Cancel();

        Assert.Throws<OperationCanceledException>(() =>
            SharedDischarge.Run([ParallelCells.Alike(1, cells, 0, 1, 1)], Nmc, Nmc.CutoffV, 5, stop.Token));
    }

    private static SharedDischargeRun Run(ParallelCells group, double loadA) =>
        SharedDischarge.Run([group], Nmc, Nmc.CutoffV, loadA, TestContext.Current.CancellationToken);
}
