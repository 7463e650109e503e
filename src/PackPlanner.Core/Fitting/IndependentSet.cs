using System.Numerics;

namespace PackPlanner.Core.Fitting;

/// <summary>Largest set of candidates of which no two clash: greedy in many orders, then insertions of two for one with random kicks.</summary>
/// <remarks>Source: [Andrade2012] for the local search.</remarks>
internal sealed class IndependentSet
{
    private readonly int count;
    private readonly int words;
    private readonly ulong[] clashBits;
    private readonly ulong[] singleBits;
    private readonly int[] tight;
    private readonly bool[] inside;
    private readonly long[] lastOut;
    private readonly Random random;
    private int size;

    /// <summary>A search among candidates, none chosen yet.</summary>
    /// <param name="clashBits">One row of bits for each candidate, itself included, as <see cref="ClashBits"/> gives them: who does not
    /// clash with it is found 64 at a time.</param>
    /// <param name="count">Candidates, at least 1.</param>
    /// <param name="seed">Of the kicks.</param>
    internal IndependentSet(ulong[] clashBits, int count, int seed)
    {
        (this.clashBits, this.count, random) = (clashBits, count, new Random(seed));
        words = ClashBits.Words(count);
        (tight, inside, lastOut, singleBits) = (new int[count], new bool[count], new long[count], new ulong[words]);
    }

    /// <summary>The largest set found within a number of steps, or one that reaches <paramref name="enough"/>.</summary>
    internal int[] Search(IReadOnlyList<int[]> orders, int steps, int enough, CancellationToken cancel)
    {
        int[] best = [];
        foreach (int[] order in orders)
        {
            Empty();
            foreach (int i in order)
            {
                if (!inside[i] && tight[i] == 0)
                    Insert(i);
            }

            Improve();
            if (size > best.Length)
                best = Members();
        }

        Empty();
        foreach (int i in best)
            Insert(i);
        int current = best.Length, sinceBest = 0;
        for (int step = 1; step <= steps && best.Length < enough && !cancel.IsCancellationRequested; step++)
        {
            int[] before = Members();
            Kick(step);
            Improve();
            sinceBest++;
            if (size > best.Length)
                (best, sinceBest) = (Members(), 0);
            // Mostly uphill; now and then a step down is kept, and after long vain search the best is taken up again.
            if (size < current && random.Next(1 + ((current - size) * (best.Length - size) * 4)) != 0)
                Restore(before);
            else
                current = size;
            if (sinceBest > 4000)
            {
                Restore(best);
                (current, sinceBest) = (best.Length, 0);
            }
        }

        return best;
    }

    private void Kick(int step)
    {
        int forced = random.Next(2 * Math.Max(1, size)) == 0 ? 2 + random.Next(3) : 1;
        for (int k = 0; k < forced; k++)
        {
            // Of a few at random, the one longest out: it has the best chance to be new.
            int pick = -1;
            for (int t = 0; t < 4; t++)
            {
                int i = random.Next(count);
                if (!inside[i] && (pick < 0 || lastOut[i] < lastOut[pick]))
                    pick = i;
            }

            if (pick < 0)
                continue;
            ReadOnlySpan<ulong> row = Row(pick);
            for (int w = 0; w < words; w++)
            {
                for (ulong bits = row[w]; bits != 0; bits &= bits - 1)
                {
                    int j = (64 * w) + BitOperations.TrailingZeroCount(bits);
                    if (inside[j])
                        Remove(j, step);
                }
            }

            Insert(pick);
        }

        FillFree();
    }

    private void FillFree()
    {
        int offset = random.Next(count);
        FillFree(offset, count);
        FillFree(0, offset);
    }

    private void FillFree(int from, int to)
    {
        for (int i = from; i < to; i++)
        {
            if (tight[i] == 0 && !inside[i])
                Insert(i);
        }
    }

    /// <summary>Takes one out wherever two that clash only with it, and not with each other, can come in.</summary>
    private void Improve()
    {
        bool improved = true;
        List<int> single = [];
        while (improved)
        {
            improved = false;
            for (int x = 0; x < count && !improved; x++)
            {
                if (!inside[x])
                    continue;
                single.Clear();
                ReadOnlySpan<ulong> row = Row(x);
                for (int w = 0; w < words; w++)
                {
                    for (ulong bits = row[w]; bits != 0; bits &= bits - 1)
                    {
                        int j = (64 * w) + BitOperations.TrailingZeroCount(bits);
                        if (tight[j] == 1 && j != x)
                            single.Add(j);
                    }
                }

                improved = single.Count >= 2 && TwoForOne(x, single);
            }
        }
    }

    private bool TwoForOne(int x, List<int> single)
    {
        Array.Clear(singleBits);
        foreach (int i in single)
            Set(singleBits, i);
        foreach (int a in single)
        {
            ReadOnlySpan<ulong> row = Row(a);
            for (int w = 0; w < words; w++)
            {
                ulong together = singleBits[w] & ~row[w];
                if (together == 0)
                    continue;
                Remove(x, 0);
                Insert(a);
                Insert((64 * w) + BitOperations.TrailingZeroCount(together));
                FillFree();
                return true;
            }
        }

        return false;
    }

    private void Insert(int i)
    {
        inside[i] = true;
        size++;
        Tighten(i, 1);
    }

    private void Remove(int i, long step)
    {
        inside[i] = false;
        size--;
        lastOut[i] = step;
        Tighten(i, -1);
    }

    /// <summary>Counts one more or one less chosen candidate for all that clash with it, itself apart.</summary>
    private void Tighten(int i, int by)
    {
        ReadOnlySpan<ulong> row = Row(i);
        for (int w = 0; w < words; w++)
        {
            for (ulong bits = row[w]; bits != 0; bits &= bits - 1)
                tight[(64 * w) + BitOperations.TrailingZeroCount(bits)] += by;
        }

        tight[i] -= by;
    }

    private ReadOnlySpan<ulong> Row(int i) => clashBits.AsSpan(i * words, words);

    private static void Set(Span<ulong> bits, int i) => bits[i >> 6] |= 1UL << (i & 63);

    private void Empty()
    {
        size = 0;
        Array.Clear(inside);
        Array.Clear(tight);
    }

    private void Restore(int[] members)
    {
        Empty();
        foreach (int i in members)
            Insert(i);
    }

    private int[] Members()
    {
        int[] members = new int[size];
        for (int i = 0, k = 0; k < size; i++)
        {
            if (inside[i])
                members[k++] = i;
        }

        return members;
    }
}
