namespace PackPlanner.Core.Sharing;

/// <summary>A group as the kernel wants it: arrays in ohms, and room for the answer.</summary>
internal sealed class NetworkArrays
{
    private readonly double[] scratch;

    private NetworkArrays(ParallelCells group)
    {
        int n = group.Cells.Count;
        OpenCircuitV = [.. group.Cells.Select(cell => cell.OpenCircuitV)];
        ResistanceOhm = [.. group.Cells.Select(cell => cell.ResistanceMilliohm / 1000)];
        PositiveLinkOhm = [.. group.PositiveLinkMilliohm.Select(link => link / 1000)];
        NegativeLinkOhm = [.. group.NegativeLinkMilliohm.Select(link => link / 1000)];
        PositiveAt = group.PositiveAt - 1;
        NegativeAt = group.NegativeAt - 1;
        CurrentA = new double[n];
        scratch = new double[CurrentDivider.ScratchLength(n)];
    }

    internal double[] OpenCircuitV { get; }

    internal double[] ResistanceOhm { get; }

    internal double[] PositiveLinkOhm { get; }

    internal double[] NegativeLinkOhm { get; }

    internal int PositiveAt { get; }

    internal int NegativeAt { get; }

    /// <summary>Amperes of each cell, filled by <see cref="Solve(double)"/>.</summary>
    internal double[] CurrentA { get; }

    internal static NetworkArrays Of(ParallelCells group)
    {
        Check(group);
        return new NetworkArrays(group);
    }

    /// <summary>Refuses what no network is.</summary>
    /// <exception cref="ArgumentException">A resistance is not above zero, a voltage is not finite, or a link is negative.</exception>
    internal static void Check(ParallelCells group)
    {
        if (group.Cells.Any(cell => !(cell.ResistanceMilliohm > 0 && double.IsFinite(cell.ResistanceMilliohm)) || !double.IsFinite(cell.OpenCircuitV)))
            throw new ArgumentException("Each cell needs finite volts and a resistance above zero.", nameof(group));
        if (group.PositiveLinkMilliohm.Concat(group.NegativeLinkMilliohm).Any(link => !(link >= 0 && double.IsFinite(link))))
            throw new ArgumentException("A link's resistance is zero or above.", nameof(group));
    }

    /// <summary>Solves with the network's own volts and resistances.</summary>
    internal double Solve(double loadA) => Solve(OpenCircuitV, ResistanceOhm, loadA);

    /// <summary>Solves with other volts and resistances behind the same bars.</summary>
    internal double Solve(double[] openCircuitV, double[] resistanceOhm, double loadA) => CurrentDivider.Solve(
        openCircuitV, resistanceOhm, PositiveLinkOhm, NegativeLinkOhm, PositiveAt, NegativeAt, loadA, CurrentA, scratch);
}
