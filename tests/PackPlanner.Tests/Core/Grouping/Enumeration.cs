using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>Looks at every grouping there is: slow, and so plain that it can be trusted.</summary>
internal static class Enumeration
{
    internal static (long Smallest, long Spread) Best(long[] cells, int series, int parallel, int[]? pin = null)
    {
        (long smallest, long spread) = (long.MinValue, 0);
        long[] sum = new long[series];
        int[] count = new int[series];
        Place(0, 0);
        return (smallest, spread);

        void Place(int cell, int placed)
        {
            if (cells.Length - cell < (series * parallel) - placed)
                return;
            if (cell == cells.Length)
            {
                (long least, long most) = (sum.Min(), sum.Max());
                if (least > smallest || (least == smallest && most - least < spread))
                    (smallest, spread) = (least, most - least);
                return;
            }

            bool triedAnEmptyOne = false;
            for (int g = 0; g < series; g++)
            {
                if (count[g] == parallel || (pin is not null && pin[cell] >= 0 && pin[cell] != g))
                    continue;
                if (pin is null && count[g] == 0)
                {
                    // Empty groups are alike while nothing is pinned.
                    if (triedAnEmptyOne)
                        continue;
                    triedAnEmptyOne = true;
                }

                count[g]++;
                sum[g] += cells[cell];
                Place(cell + 1, placed + 1);
                count[g]--;
                sum[g] -= cells[cell];
            }

            if (pin is null || pin[cell] < 0)
                Place(cell + 1, placed);
        }
    }

    /// <summary>Every way to fill these places with so many cells; -1 for a cell that is left out. Each way is a new list.</summary>
    internal static IEnumerable<int[]> All(int cells, int[] places)
    {
        int[] groupOf = new int[cells];
        int[] open = [.. places];
        return From(0, open.Sum());

        IEnumerable<int[]> From(int cell, int wanted)
        {
            if (cells - cell < wanted)
                yield break;
            if (cell == cells)
            {
                yield return [.. groupOf];
                yield break;
            }

            for (int g = -1; g < open.Length; g++)
            {
                if (g >= 0 && open[g] == 0)
                    continue;
                groupOf[cell] = g;
                if (g >= 0)
                    open[g]--;
                foreach (int[] found in From(cell + 1, wanted - (g >= 0 ? 1 : 0)))
                    yield return found;
                if (g >= 0)
                    open[g]++;
            }
        }
    }

    /// <summary>The problem in which some cells are pinned; -1 means free.</summary>
    internal static GroupingProblem Pinned(long[] cells, int series, int parallel, int[] pin)
    {
        long[] sum = new long[series];
        int[] places = [.. Enumerable.Repeat(parallel, series)];
        for (int i = 0; i < cells.Length; i++)
        {
            if (pin[i] < 0)
                continue;
            sum[pin[i]] += cells[i];
            places[pin[i]]--;
        }

        return new GroupingProblem(
            [.. cells.Where((_, i) => pin[i] < 0)], parallel, sum, places, [.. cells.Where((_, i) => pin[i] >= 0)]);
    }
}
