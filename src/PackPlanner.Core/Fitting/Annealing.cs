namespace PackPlanner.Core.Fitting;

/// <summary>Worse steps are taken less and less often, so that a search can leave a dead end.</summary>
/// <remarks>Source: [Kirkpatrick1983].</remarks>
internal static class Annealing
{
    /// <summary>What a worse step may cost about: it falls evenly, on a logarithmic scale, to a hundredth of what it was at first.</summary>
    internal static double Heat(double first, int move, int moves) => first * Math.Pow(0.01, (double)move / moves);

    /// <summary>Whether a step that makes the answer longer by so much is taken.</summary>
    internal static bool Takes(double change, double heat, Random random) => change <= 0 || random.NextDouble() < Math.Exp(-change / heat);
}
