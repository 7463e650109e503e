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

    // Each node and each piece of bar has a row of one dense matrix, solved by MathNet's LU, which knows nothing of the ladder's order;
    // a piece of bar is an unknown current, so that one of 0 ohm is a row like any other.
    [Fact]
    public void Agrees_with_a_dense_solve_of_every_node_and_link()
    {
        Gen.Select(Groups, Gen.Double[-50, 50]).Sample((group, loadA) =>
        {
            GroupShare share = CurrentSharing.AtFirstInstant(group, loadA);
            (double terminalV, double[] currentA) = Nodal(group, loadA);
            double[] idleA = Nodal(group, 0).CurrentA;
            Assert.Equal(terminalV, share.TerminalV, tolerance: 1e-9);
            Assert.Equal(idleA.Where(a => a > 0).Sum(), share.CirculatingA, tolerance: 1e-6);
            Assert.Equal(currentA.Max(Math.Abs), Math.Abs(currentA[share.WorstCell]), tolerance: 1e-6);
            Assert.Equal(loadA == 0, share.TimesEqual is null);
            Assert.Equal(currentA[share.WorstCell], (share.TimesEqual ?? 0) * loadA / currentA.Length + (loadA == 0 ? currentA[share.WorstCell] : 0), tolerance: 1e-6);
            for (int i = 0; i < currentA.Length; i++)
                Assert.Equal(currentA[i], share.CurrentA[i], tolerance: 1e-6);
        }, seed: "0000KIcCwDG2", iter: 4000);
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
        int unknowns = 2 * n + 2 * (n - 1);
        Matrix<double> rows = Matrix<double>.Build.Dense(unknowns, unknowns);
        Vector<double> right = Vector<double>.Build.Dense(unknowns);
        for (int i = 0; i < n; i++)
        {
            // Into the positive node flows (E - V+ + V-) / R, out of the negative one the same.
            double siemens = 1000 / group.Cells[i].ResistanceMilliohm;
            foreach ((int node, int sign) in new[] { (i, 1), (n + i, -1) })
            {
                rows[node, i] += sign * siemens;
                rows[node, n + i] -= sign * siemens;
                right[node] += sign * siemens * group.Cells[i].OpenCircuitV;
            }
        }

        for (int j = 0; j < n - 1; j++)
        {
            Link(j, j + 1, 2 * n + j, group.PositiveLinkMilliohm[j] / 1000);
            Link(n + j, n + j + 1, 3 * n - 1 + j, group.NegativeLinkMilliohm[j] / 1000);
        }

        right[group.PositiveAt - 1] -= loadA;
        // The negative take-off is ground: its row says that its volts are 0.
        int ground = n + group.NegativeAt - 1;
        rows.ClearRow(ground);
        rows[ground, ground] = 1;
        right[ground] = 0;
        Vector<double> solved = rows.LU().Solve(right);
        double[] currentA = [.. group.Cells.Select((cell, i) => (cell.OpenCircuitV - solved[i] + solved[n + i]) * 1000 / cell.ResistanceMilliohm)];
        return (solved[group.PositiveAt - 1], currentA);

        void Link(int from, int to, int current, double ohm)
        {
            rows[from, current] += 1;
            rows[to, current] -= 1;
            (rows[current, from], rows[current, to], rows[current, current]) = (1, -1, -ohm);
        }
    }
}
