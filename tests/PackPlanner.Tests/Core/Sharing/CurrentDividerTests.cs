using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Tests.Core.Sharing;

public class CurrentDividerTests
{
    private static readonly Gen<ParallelCells> Groups =
        from n in Gen.Int[1, 12]
        from volts in Gen.Double[2.5, 4.2].Array[n]
        from milliohm in Gen.Double[0.2, 80].Array[n]
        from positive in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.01, 5]).Array[n - 1]
        from negative in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.01, 5]).Array[n - 1]
        from positiveAt in Gen.Int[1, n]
        from negativeAt in Gen.Int[1, n]
        select new ParallelCells(1, [.. volts.Select((v, i) => new CellBranch($"{i}", v, milliohm[i]))], positive, negative, positiveAt, negativeAt);

    [Fact]
    public void Currents_sum_to_the_load_and_every_loop_sums_to_zero()
    {
        Gen.Select(Groups, Gen.Double[-50, 50]).Sample((group, loadA) =>
        {
            GroupShare share = CurrentSharing.AtFirstInstant(group, loadA);
            Assert.Equal(loadA, share.CurrentA.Sum(), tolerance: 1e-9);
            double flowA = 0;
            for (int j = 0; j < group.Cells.Count - 1; j++)
            {
                flowA += share.CurrentA[j];
                double here = group.Cells[j].OpenCircuitV - share.CurrentA[j] * group.Cells[j].ResistanceMilliohm / 1000;
                double next = group.Cells[j + 1].OpenCircuitV - share.CurrentA[j + 1] * group.Cells[j + 1].ResistanceMilliohm / 1000;
                double alongPositive = (flowA - (j + 1 >= group.PositiveAt ? loadA : 0)) * group.PositiveLinkMilliohm[j] / 1000;
                double alongNegative = (flowA - (j + 1 >= group.NegativeAt ? loadA : 0)) * group.NegativeLinkMilliohm[j] / 1000;
                Assert.Equal(here - next, alongPositive + alongNegative, tolerance: 1e-9);
            }
        }, seed: "0000KIcCwDG2", iter: 500);
    }

    // A dense nodal solve of the same circuit by MathNet, which knows nothing of the ladder's order.
    [Fact]
    public void Agrees_with_a_dense_nodal_solve_where_no_link_is_zero()
    {
        Gen<ParallelCells> linked = Groups.Where(group => group.PositiveLinkMilliohm.Concat(group.NegativeLinkMilliohm).All(link => link > 0));
        Gen.Select(linked, Gen.Double[-50, 50]).Sample((group, loadA) =>
        {
            GroupShare share = CurrentSharing.AtFirstInstant(group, loadA);
            (double terminalV, double[] currentA) = Nodal(group, loadA);
            Assert.Equal(terminalV, share.TerminalV, tolerance: 1e-7);
            for (int i = 0; i < currentA.Length; i++)
                Assert.Equal(currentA[i], share.CurrentA[i], tolerance: 1e-4);
        }, seed: "0000KIcCwDG2", iter: 300);
    }

    [Fact]
    public void Turning_the_row_round_turns_the_answer_round()
    {
        Gen.Select(Groups, Gen.Double[-50, 50]).Sample((group, loadA) =>
        {
            int n = group.Cells.Count;
            ParallelCells turned = new(
                1, [.. group.Cells.Reverse()], [.. group.PositiveLinkMilliohm.Reverse()], [.. group.NegativeLinkMilliohm.Reverse()],
                n + 1 - group.PositiveAt, n + 1 - group.NegativeAt);
            GroupShare one = CurrentSharing.AtFirstInstant(group, loadA);
            GroupShare other = CurrentSharing.AtFirstInstant(turned, loadA);
            Assert.Equal(one.TerminalV, other.TerminalV, tolerance: 1e-9);
            for (int i = 0; i < n; i++)
                Assert.Equal(one.CurrentA[i], other.CurrentA[n - 1 - i], tolerance: 1e-8);
        }, seed: "0000KIcCwDG2", iter: 300);
    }

    // Without bar resistance each cell carries (E - V)/R with V = (sum E/R - I)/sum 1/R, whatever the number of cells.
    [Fact]
    public void A_hundred_thousand_cells_keep_their_digits()
    {
        Random random = new(11);
        CellBranch[] cells = [.. Enumerable.Range(0, 100_000).Select(i => new CellBranch($"{i}", 3.6 + random.NextDouble() * 0.01, 20 + random.NextDouble() * 20))];

        GroupShare share = CurrentSharing.AtFirstInstant(ParallelCells.Alike(1, cells, 0, 1, cells.Length), 300_000);

        double conductance = cells.Sum(cell => 1000 / cell.ResistanceMilliohm);
        double terminalV = (cells.Sum(cell => cell.OpenCircuitV * 1000 / cell.ResistanceMilliohm) - 300_000) / conductance;
        Assert.Equal(terminalV, share.TerminalV, tolerance: 1e-9);
        Assert.All(cells.Zip(share.CurrentA), pair =>
            Assert.Equal((pair.First.OpenCircuitV - terminalV) * 1000 / pair.First.ResistanceMilliohm, pair.Second, tolerance: 1e-7));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    public void A_cell_without_a_resistance_above_zero_is_a_fault_of_the_caller(double milliohm) =>
        Assert.Throws<ArgumentException>(() => CurrentSharing.AtFirstInstant(ParallelCells.Alike(1, [new("1", 3.6, milliohm)], 0, 1, 1), 10));

    private static (double TerminalV, double[] CurrentA) Nodal(ParallelCells group, double loadA)
    {
        int n = group.Cells.Count;
        Matrix<double> conductance = Matrix<double>.Build.Dense(2 * n, 2 * n);
        Vector<double> injected = Vector<double>.Build.Dense(2 * n);
        void Between(int a, int b, double ohm)
        {
            conductance[a, a] += 1 / ohm;
            conductance[b, b] += 1 / ohm;
            conductance[a, b] -= 1 / ohm;
            conductance[b, a] -= 1 / ohm;
        }

        for (int i = 0; i < n; i++)
        {
            double ohm = group.Cells[i].ResistanceMilliohm / 1000;
            Between(i, n + i, ohm);
            injected[i] += group.Cells[i].OpenCircuitV / ohm;
            injected[n + i] -= group.Cells[i].OpenCircuitV / ohm;
        }

        for (int j = 0; j < n - 1; j++)
        {
            Between(j, j + 1, group.PositiveLinkMilliohm[j] / 1000);
            Between(n + j, n + j + 1, group.NegativeLinkMilliohm[j] / 1000);
        }

        injected[group.PositiveAt - 1] -= loadA;
        injected[n + group.NegativeAt - 1] += loadA;
        // One node is ground: its row says that its volts are 0.
        int ground = n + group.NegativeAt - 1;
        conductance.ClearRow(ground);
        conductance[ground, ground] = 1;
        injected[ground] = 0;
        Vector<double> volts = conductance.Solve(injected);
        double[] currentA = [.. group.Cells.Select((cell, i) => (cell.OpenCircuitV - volts[i] + volts[n + i]) * 1000 / cell.ResistanceMilliohm)];
        return (volts[group.PositiveAt - 1] - volts[ground], currentA);
    }
}
