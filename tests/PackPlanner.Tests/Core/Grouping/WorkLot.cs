using System.Globalization;
using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>A made-up lot of which the work of a search is counted.</summary>
/// <param name="Kind">How its capacities lie: <c>used</c>, <c>narrow</c>, <c>coarse</c> (many alike), <c>outliers</c> or <c>planted</c> (a perfect split exists).</param>
/// <param name="Series">Groups.</param>
/// <param name="Parallel">Cells in each.</param>
/// <param name="Spares">Cells beyond those.</param>
/// <param name="Locks">Cells pinned at most.</param>
/// <param name="Seed">Draws it.</param>
internal sealed record WorkLot(string Kind, int Series, int Parallel, int Spares, int Locks, int Seed)
{
    internal static readonly string[] Kinds = ["used", "narrow", "coarse", "outliers", "planted"];

    internal long[] Cells()
    {
        int count = (Series * Parallel) + Spares;
        Random random = new(Seed);
        return Kind switch
        {
            "used" => Lots.Used(count, Seed),
            "narrow" => Lots.Used(count, Seed, 215, 6),
            "coarse" => Lots.Downwards(Enumerable.Range(0, count).Select(_ => (long)random.Next(180, 190))),
            "outliers" => Lots.Downwards(Enumerable.Range(0, count).Select(_ => (long)(random.Next(5) == 0 ? random.Next(600, 1800) : random.Next(2000, 2400)))),
            _ => Lots.Downwards([.. Lots.Planted(Series, Parallel, 2150L * Parallel, Seed), .. Enumerable.Repeat(1900L, Spares)]),
        };
    }

    internal GroupingProblem Problem()
    {
        long[] cells = Cells();
        int[] pin = Pins(cells.Length);
        return Locks == 0 ? GroupingProblem.Free(cells, Series, Parallel) : Enumeration.Pinned(cells, Series, Parallel, pin);
    }

    /// <summary>How many groupings of the free cells there are, as the logarithm to the base of ten; locked cells fill groups of their own.</summary>
    internal double GroupingsLog10()
    {
        int count = (Series * Parallel) + Spares;
        return Factorial(count) - Factorial(Spares) - (Series * Factorial(Parallel)) - Factorial(Series);
        static double Factorial(int n) => Enumerable.Range(1, n).Sum(k => Math.Log10(k));
    }

    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Kind,-8} {Series}s{Parallel}p +{Spares} locks {Locks} seed {Seed}");

    private int[] Pins(int count)
    {
        Random random = new(Seed + 77);
        int[] pin = [.. Enumerable.Repeat(-1, count)];
        for (int k = 0; k < Locks; k++)
        {
            (int cell, int group) = (random.Next(count), random.Next(Series));
            if (pin[cell] < 0 && pin.Count(g => g == group) < Parallel)
                pin[cell] = group;
        }

        return pin;
    }
}
