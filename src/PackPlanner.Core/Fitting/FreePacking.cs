namespace PackPlanner.Core.Fitting;

/// <summary>Improves one layer of round cells beyond the best regular nest; four searches side by side, whatever the number of cores.</summary>
internal static class FreePacking
{
    private const int Searches = 4;

    /// <summary>The fullest arrangement found; never emptier than the fullest start.</summary>
    /// <param name="region">Where centres may be.</param>
    /// <param name="distance">Centre to centre, millimetres.</param>
    /// <param name="starts">Arrangements to start from, the fullest first; at least one.</param>
    /// <param name="work">Evaluated terms that may be spent in all.</param>
    /// <param name="enough">Ends when so many are in: the proven bound.</param>
    /// <param name="better">Told whenever a fuller arrangement was found.</param>
    /// <param name="cancel">Stops the search; the best so far is kept.</param>
    internal static (double X, double Y)[] Improve(
        DiscRegion region,
        double distance,
        IReadOnlyList<IReadOnlyList<(double X, double Y)>> starts,
        long work,
        int enough,
        Action<int>? better,
        CancellationToken cancel)
    {
        DiscPacker[] packers = [.. Enumerable.Range(0, Searches).Select(s => new DiscPacker(region, distance, seed: 7919 * (s + 1)))];
        for (int s = 0; s < Searches; s++)
            packers[s].Adopt(starts[s % starts.Count]);
        (double X, double Y)[] best = [.. starts[0]];
        const int Rounds = 16, Patience = 7;
        int idle = 0;
        for (int round = 0; round < Rounds && idle < Patience && best.Length < enough && !cancel.IsCancellationRequested; round++)
        {
            Parallel.For(0, Searches, s => packers[s].Improve(work / Rounds / Searches, enough, cancel));
            DiscPacker fullest = packers.MaxBy(p => p.Count)!;
            idle++;
            if (fullest.Count > best.Length)
            {
                (best, idle) = (fullest.Places, 0);
                better?.Invoke(best.Length);
            }

            // One search goes on alone, so that not all sit in the same valley.
            for (int s = 0; s < Searches - 1; s++)
            {
                if (packers[s].Count < best.Length)
                    packers[s].Adopt(best);
            }
        }

        return best;
    }
}
