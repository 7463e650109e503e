namespace PackPlanner.Core.Diagnosis;

/// <summary>Damped Gauss-Newton steps: the diagonal is raised until a step makes things better, and lowered after each that does.</summary>
internal static class DampedSteps
{
    private const double First = 1e-3, Least = 1e-9, AfterFailure = 1e-4, Most = 1e6, Up = 8, Down = 6, Rounding = 1e-9;

    /// <summary>Goes on until it is enough, a count of steps is used up or no damping helps.</summary>
    /// <param name="start">Where to start.</param>
    /// <param name="steps">Most steps, those that failed counted.</param>
    /// <param name="assemble">Forms the normal equations at a point and gives its cost.</param>
    /// <param name="solve">Solves them with a damping for a move.</param>
    /// <param name="cost">Cost at a point.</param>
    /// <param name="enough">Whether a step of this number and gain is the last.</param>
    /// <param name="moved">Told of every step made, before the next is formed.</param>
    /// <returns>The best point and its cost.</returns>
    internal static (double[] X, double Cost) Run(
        double[] start, int steps, Func<double[], double> assemble, Func<double, double[]> solve, Func<double[], double> cost,
        Func<int, double, bool> enough, Action<int, double[]>? moved = null)
    {
        double[] x = start;
        double damping = First, now = assemble(x);
        for (int step = 0; step < steps; step++)
        {
            double[] move = solve(damping);
            double[] next = [.. x.Select((value, i) => value + move[i])];
            double there = cost(next);
            if (!(there <= now + Rounding))
            {
                damping = Math.Max(AfterFailure, damping * Up);
                if (damping >= Most)
                    break;
                continue;
            }
            double gain = now - there;
            (x, damping, now) = (next, Math.Max(Least, damping / Down), there);
            moved?.Invoke(step, x);
            if (enough(step, gain))
                break;
            now = assemble(x);
        }
        return (x, now);
    }
}
