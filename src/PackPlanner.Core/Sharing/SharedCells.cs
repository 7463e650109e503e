using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Sharing;

/// <summary>One parallel group on its way down: the charge left in each cell, and one step of it.</summary>
internal sealed class SharedCells
{
    private readonly int group;
    private readonly OpenCircuitCurve curve;
    private readonly NetworkArrays network;
    private readonly double[] capacityAh;
    private readonly double[] sourceV;
    private readonly double[] behindOhm;

    internal SharedCells(ParallelCells group, OpenCircuitCurve curve)
    {
        this.group = group.Number;
        this.curve = curve;
        network = NetworkArrays.Of(group);
        capacityAh = [.. group.Cells.Select(cell => cell.CapacityAh!.Value)];
        Fraction = [.. group.Cells.Select(cell => curve.FractionAt(cell.OpenCircuitV))];
        sourceV = new double[capacityAh.Length];
        behindOhm = new double[capacityAh.Length];
    }

    /// <summary>State of charge of each cell, 0..1.</summary>
    internal double[] Fraction { get; }

    /// <summary>Volts between the take-off points at the present charge.</summary>
    internal double TerminalV(double loadA)
    {
        for (int i = 0; i < sourceV.Length; i++)
            sourceV[i] = curve.VoltsAt(Fraction[i]);
        return network.Solve(sourceV, network.ResistanceOhm, loadA);
    }

    /// <summary>The division of the load at the present charge.</summary>
    internal GroupShare Share(double loadA)
    {
        double terminalV = TerminalV(loadA);
        double[] currentA = [.. network.CurrentA];
        network.Solve(sourceV, network.ResistanceOhm, 0);
        return CurrentSharing.Share(group, terminalV, currentA, loadA, network.CurrentA.Where(current => current > 0).Sum());
    }

    /// <summary>Moves every cell's charge by one step of the implicit midpoint rule.</summary>
    internal void Step(double stepH, double loadA)
    {
        for (int pass = 0; pass < 2; pass++)
        {
            for (int i = 0; i < sourceV.Length; i++)
            {
                double moved = pass == 0 ? 0 : network.CurrentA[i] * stepH / 2 / capacityAh[i];
                double slope = curve.SlopeAt(Fraction[i] - moved);
                sourceV[i] = curve.VoltsAt(Fraction[i] - moved) + slope * moved;
                behindOhm[i] = network.ResistanceOhm[i] + slope * stepH / 2 / capacityAh[i];
            }

            network.Solve(sourceV, behindOhm, loadA);
        }

        for (int i = 0; i < Fraction.Length; i++)
            Fraction[i] -= network.CurrentA[i] * stepH / capacityAh[i];
    }
}
