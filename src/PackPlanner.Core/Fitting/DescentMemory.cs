namespace PackPlanner.Core.Fitting;

/// <summary>
/// The last steps of a descent and how the gradient turned over each: from them the next direction. Holds its own arrays, so that thousands
/// of descents cost no memory.
/// </summary>
/// <remarks>Source: [NocedalWright2006] algorithms 7.4 and 7.5.</remarks>
internal sealed class DescentMemory
{
    private const int Most = 8;

    // Without a step to go by: the energy of two discs curves by 4 where both give way, so a quarter of the gradient parts them.
    private const double FirstFactor = 0.25;

    private readonly double[] scale = new double[Most];
    private readonly double[] alpha = new double[Most];
    private double[][] steps = [];
    private double[][] turns = [];
    private int stored;
    private int newest = -1;

    /// <summary>True before a step is remembered.</summary>
    internal bool IsEmpty => stored == 0;

    /// <summary>Forgets all steps and makes room for <paramref name="n"/> coordinates.</summary>
    internal void Clear(int n)
    {
        (stored, newest) = (0, -1);
        if (steps.Length > 0 && steps[0].Length >= n)
            return;
        steps = [.. Enumerable.Range(0, Most).Select(_ => new double[n])];
        turns = [.. Enumerable.Range(0, Most).Select(_ => new double[n])];
    }

    /// <summary>Writes the next direction: downhill, turned and stretched by what was remembered.</summary>
    internal void Turn(double[] gradient, double[] direction, int n)
    {
        for (int i = 0; i < n; i++)
            direction[i] = -gradient[i];
        for (int k = 0; k < stored; k++)
        {
            int m = (newest - k + Most) % Most;
            alpha[m] = scale[m] * Dot(steps[m], direction, n);
            Add(direction, turns[m], -alpha[m], n);
        }

        double factor = stored > 0 ? 1 / (scale[newest] * Dot(turns[newest], turns[newest], n)) : FirstFactor;
        for (int i = 0; i < n; i++)
            direction[i] *= factor;
        for (int k = stored - 1; k >= 0; k--)
        {
            int m = (newest - k + Most) % Most;
            double beta = scale[m] * Dot(turns[m], direction, n);
            Add(direction, steps[m], alpha[m] - beta, n);
        }
    }

    /// <summary>Remembers a step, unless the energy does not curve upward along it.</summary>
    internal void Remember(double[] from, double[] to, double[] gradientFrom, double[] gradientTo, int n)
    {
        int slot = (newest + 1) % Most;
        double curve = 0;
        for (int i = 0; i < n; i++)
        {
            double s = to[i] - from[i], y = gradientTo[i] - gradientFrom[i];
            (steps[slot][i], turns[slot][i]) = (s, y);
            curve += s * y;
        }

        if (!(curve > 1e-300))
            return;
        scale[slot] = 1 / curve;
        newest = slot;
        stored = Math.Min(stored + 1, Most);
    }

    /// <summary>Summed in order: the vector units of different machines would add in different orders.</summary>
    internal static double Dot(double[] a, double[] b, int n)
    {
        double sum = 0;
        for (int i = 0; i < n; i++)
            sum += a[i] * b[i];
        return sum;
    }

    private static void Add(double[] a, double[] b, double factor, int n)
    {
        for (int i = 0; i < n; i++)
            a[i] += factor * b[i];
    }
}
