using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Sharing;

/// <summary>Currents of cells in parallel from their present charge until a group is near empty.</summary>
/// <remarks>
/// Each step is the implicit midpoint rule, with one correction by Newton's method: a cell's voltage in the middle of
/// the step depends on the current that the step itself draws, so a source with slope U' looks like a source behind
/// R + U' h / (2 Q), and the same network solve serves. The rule is of second order and stays stable however fast
/// two cells of little resistance level out, where an explicit rule would need steps of seconds.
/// </remarks>
public static class SharedDischarge
{
    /// <summary>Steps that one full discharge is divided into.</summary>
    internal const int Steps = 2000;

    /// <summary>Up to this many cells the currents are kept at every twentieth of the capacity, above it at the two ends and the middle.</summary>
    public const int ManyCells = 5000;

    /// <summary>Discharges groups in series, each with cells in parallel, until the first group meets its cut-off.</summary>
    /// <param name="groups">The groups; each cell has a capacity above zero, and its resting volts say how full it is.</param>
    /// <param name="chemistry">One for all cells.</param>
    /// <param name="cutoffV">Volts between a group's take-off points at which the discharge ends.</param>
    /// <param name="loadA">Amperes, above zero.</param>
    /// <param name="stopped">Ends the work early.</param>
    /// <returns>The currents at rising ampere-hours.</returns>
    /// <exception cref="ArgumentException">A capacity is missing, or the load is not a discharge.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SharedDischargeRun Run(
        IReadOnlyList<ParallelCells> groups, Chemistry chemistry, double cutoffV, double loadA, CancellationToken stopped)
    {
        if (!(loadA > 0) || groups.Count == 0 || groups.Any(group => group.Cells.Any(cell => cell.CapacityAh is not > 0)))
            throw new ArgumentException("A shared discharge needs a load above zero and a capacity for each cell.");
        bool many = groups.Sum(group => group.Cells.Count) > ManyCells;
        return Run(groups, chemistry, cutoffV, loadA, many ? Steps / 10 : Steps, many ? 2 : 20, stopped);
    }

    internal static SharedDischargeRun Run(
        IReadOnlyList<ParallelCells> groups, Chemistry chemistry, double cutoffV, double loadA, int steps, int pieces, CancellationToken stopped)
    {
        SharedCells[] states = [.. groups.Select(group => new SharedCells(group, chemistry.Curve))];
        double leastAh = groups.Min(group => group.Cells.Sum(cell => cell.CapacityAh!.Value));
        double stepH = leastAh / loadA / steps;
        List<SharedMoment> through = [Moment(states, 0, loadA)];
        SharedMoment last = through[0];
        double hours = 0;
        for (int step = 1; Ends(last, cutoffV) is null && step <= 2 * steps; step++)
        {
            stopped.ThrowIfCancellationRequested();
            double takenH = StepUntilCutOff(states, stepH, loadA, cutoffV);
            hours += takenH;
            last = Moment(states, hours * loadA, loadA);
            if (takenH < stepH || step % (steps / pieces) == 0)
                through.Add(last);
            if (takenH < stepH)
                break;
        }

        if (!ReferenceEquals(through[^1], last))
            through.Add(last);
        return new SharedDischargeRun(through, EndedBy(last));
    }

    // Takes the whole step, or the part of it (to a millionth) after which the first group stands at its cut-off.
    private static double StepUntilCutOff(SharedCells[] states, double stepH, double loadA, double cutoffV)
    {
        double[][] before = [.. states.Select(state => state.Fraction.ToArray())];
        double LowestAfter(double h)
        {
            double lowest = double.PositiveInfinity;
            for (int g = 0; g < states.Length; g++)
            {
                before[g].CopyTo(states[g].Fraction, 0);
                states[g].Step(h, loadA);
                lowest = Math.Min(lowest, states[g].TerminalV(loadA));
            }

            return lowest;
        }

        if (LowestAfter(stepH) > cutoffV)
            return stepH;
        double done = 0;
        double over = stepH;
        for (int halving = 0; halving < 20; halving++)
        {
            double middle = (done + over) / 2;
            if (LowestAfter(middle) > cutoffV)
                done = middle;
            else
                over = middle;
        }

        LowestAfter(done);
        return done;
    }

    private static int? Ends(SharedMoment moment, double cutoffV) =>
        moment.Groups.FirstOrDefault(group => group.TerminalV <= cutoffV)?.Group;

    private static int EndedBy(SharedMoment moment) => moment.Groups.MinBy(group => group.TerminalV)!.Group;

    private static SharedMoment Moment(SharedCells[] states, double atAh, double loadA) =>
        new(atAh, [.. states.Select(state => state.Share(loadA))]);
}
