namespace PackPlanner.Core.Fitting;

/// <summary>Which cells a link plate can join.</summary>
internal sealed class NeighbourGraph
{
    private NeighbourGraph(IReadOnlyList<Body> bodies, int[][] near)
    {
        Bodies = bodies;
        Near = near;
        double least = double.PositiveInfinity;
        for (int i = 0; i < near.Length; i++)
        {
            foreach (int j in near[i])
                least = Math.Min(least, Distance(i, j));
        }

        SmallestMm = double.IsInfinity(least) ? null : least;
    }

    internal IReadOnlyList<Body> Bodies { get; }

    internal int[][] Near { get; }

    internal int Count => Near.Length;

    /// <summary>Distance between the centres of the nearest neighbours, millimetres; null when there are none.</summary>
    internal double? SmallestMm { get; }

    /// <summary>Distance between two centres, millimetres.</summary>
    internal double Distance(int i, int j)
    {
        PointMm a = Bodies[i].Centre, b = Bodies[j].Centre;
        double dx = a.X - b.X, dy = a.Y - b.Y, dz = a.Z - b.Z;
        return Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz));
    }

    internal static NeighbourGraph Of(IReadOnlyList<Body> bodies, Clearances clearances, double reachMm)
    {
        if (bodies.Count == 0)
            return new NeighbourGraph(bodies, []);
        BodyGrid grid = new(bodies, BodyGrid.Reach([.. bodies.Select(b => b.Attitude).Distinct()], reachMm));
        int[][] near = new int[bodies.Count][];
        for (int i = 0; i < near.Length; i++)
        {
            Body body = bodies[i];
            near[i] = [.. grid.Near(body.Centre).Where(j => j != i && PairRules.Neighbours(body, bodies[j], clearances, reachMm)).Order()];
        }

        return new NeighbourGraph(bodies, near);
    }

    /// <summary>The number of the connected piece that each allowed cell belongs to, and the size of each piece.</summary>
    internal (int[] Piece, List<int> Sizes) Pieces(Func<int, bool> allowed)
    {
        int[] piece = new int[Count];
        Array.Fill(piece, -1);
        List<int> sizes = [];
        Stack<int> todo = [];
        for (int start = 0; start < Count; start++)
        {
            if (piece[start] >= 0 || !allowed(start))
                continue;
            int size = 0;
            piece[start] = sizes.Count;
            todo.Push(start);
            while (todo.TryPop(out int i))
            {
                size++;
                foreach (int j in Near[i])
                {
                    if (piece[j] >= 0 || !allowed(j))
                        continue;
                    piece[j] = sizes.Count;
                    todo.Push(j);
                }
            }

            sizes.Add(size);
        }

        return (piece, sizes);
    }
}
