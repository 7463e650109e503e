namespace PackPlanner.Core.Fitting;

/// <summary>
/// Shortens a path with one cell in each group: ends slide on, turn back into the path, stretches are reversed, spares take the place of
/// members. Worse steps are taken less and less often (annealing), so that a path can leave a dead end.
/// </summary>
/// <remarks>Source: [Kirkpatrick1983] for the annealing; turning an end back into the path is the way in which paths that visit every
/// site of a lattice are drawn at random (common practice, no source).</remarks>
internal static class PathPolish
{
    /// <summary>The shortest path found, of as many cells; never longer than the one given. Breaks bridged by cable stay where they are.</summary>
    /// <param name="graph">Which cells a plate can join.</param>
    /// <param name="path">Cells in series order.</param>
    /// <param name="seed">Of the chance moves.</param>
    /// <param name="moves">Moves tried.</param>
    internal static int[] Shorten(NeighbourGraph graph, int[] path, int seed, int moves)
    {
        bool[] used = new bool[graph.Count];
        foreach (int cell in path)
            used[cell] = true;
        int[] shorter = [.. path];
        Random random = new(seed);
        for (int from = 0; from < path.Length;)
        {
            int to = from + 1;
            while (to < path.Length && IsLink(graph, path[to - 1], path[to]))
                to++;
            Stretch stretch = new(graph, shorter[from..to], used, random);
            stretch.Anneal(moves / path.Length * (to - from));
            stretch.Best.CopyTo(shorter, from);
            from = to;
        }

        return shorter;
    }

    /// <summary>Length of the links of a path, cables left out, millimetres.</summary>
    internal static double Length(NeighbourGraph graph, int[] path)
    {
        double sum = 0;
        for (int k = 1; k < path.Length; k++)
            sum += IsLink(graph, path[k - 1], path[k]) ? graph.Distance(path[k - 1], path[k]) : 0;
        return sum;
    }

    private static bool IsLink(NeighbourGraph graph, int a, int b) => Array.BinarySearch(graph.Near[a], b) >= 0;

    /// <summary>A part of the path without a break.</summary>
    private sealed class Stretch(NeighbourGraph graph, int[] path, bool[] used, Random random)
    {
        private double length = Length(graph, path);
        private double heat;

        internal int[] Best { get; private set; } = [.. path];

        internal void Anneal(int moves)
        {
            if (path.Length < 2)
                return;
            double step = graph.SmallestMm ?? 1, best = length;
            for (int move = 0; move < moves; move++)
            {
                heat = Annealing.Heat(step * 0.6, move, moves);
                switch (random.Next(4))
                {
                    case 0:
                        Replace(random.Next(path.Length));
                        break;
                    case 1:
                        SlideOn();
                        break;
                    case 2:
                        TurnBack();
                        break;
                    default:
                        Reverse(random.Next(path.Length), random.Next(path.Length));
                        break;
                }

                if (length < best - 1e-9)
                {
                    best = length;
                    Best = [.. path];
                }
            }

            // What lies outside of the best path is free for the stretches that follow.
            foreach (int cell in path)
                used[cell] = false;
            foreach (int cell in Best)
                used[cell] = true;
        }

        private bool Taken(double change) => Annealing.Takes(change, heat, random);

        /// <summary>A spare beside both of a member's neighbours in the path takes its place.</summary>
        private void Replace(int at)
        {
            int anchor = at > 0 ? path[at - 1] : path[1], spare = Any(anchor);
            if (used[spare] || (at > 0 && at < path.Length - 1 && !IsLink(graph, spare, path[at + 1])))
                return;
            double change = 0;
            if (at > 0)
                change += graph.Distance(path[at - 1], spare) - graph.Distance(path[at - 1], path[at]);
            if (at < path.Length - 1)
                change += graph.Distance(spare, path[at + 1]) - graph.Distance(path[at], path[at + 1]);
            if (!Taken(change))
                return;
            (used[path[at]], used[spare]) = (false, true);
            path[at] = spare;
            length += change;
        }

        /// <summary>The path grows by a spare at one end and loses the cell at the other.</summary>
        private void SlideOn()
        {
            if (random.Next(2) == 0)
                Array.Reverse(path);
            int spare = Any(path[^1]);
            if (used[spare])
                return;
            double change = graph.Distance(path[^1], spare) - graph.Distance(path[0], path[1]);
            if (!Taken(change))
                return;
            (used[path[0]], used[spare]) = (false, true);
            Array.Copy(path, 1, path, 0, path.Length - 1);
            path[^1] = spare;
            length += change;
        }

        /// <summary>The last cell is linked to a member beside it, whose link onward is cut: what followed runs the other way.</summary>
        private void TurnBack()
        {
            if (random.Next(2) == 0)
                Array.Reverse(path);
            int at = Array.IndexOf(path, Any(path[^1]));
            if (at < 0 || at >= path.Length - 2)
                return;
            double change = graph.Distance(path[^1], path[at]) - graph.Distance(path[at], path[at + 1]);
            if (!Taken(change))
                return;
            Array.Reverse(path, at + 1, path.Length - at - 1);
            length += change;
        }

        private void Reverse(int from, int to)
        {
            if (from > to)
                (from, to) = (to, from);
            double change = 0;
            if (from > 0)
            {
                if (!IsLink(graph, path[from - 1], path[to]))
                    return;
                change += graph.Distance(path[from - 1], path[to]) - graph.Distance(path[from - 1], path[from]);
            }

            if (to < path.Length - 1)
            {
                if (!IsLink(graph, path[from], path[to + 1]))
                    return;
                change += graph.Distance(path[from], path[to + 1]) - graph.Distance(path[to], path[to + 1]);
            }

            if (!Taken(change))
                return;
            Array.Reverse(path, from, to - from + 1);
            length += change;
        }

        private int Any(int cell) => graph.Near[cell][random.Next(graph.Near[cell].Length)];
    }
}
