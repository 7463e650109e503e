namespace PackPlanner.Core.Fitting;

/// <summary>Finds the cells near a cell without looking at all of them.</summary>
internal sealed class BodyGrid
{
    private readonly Dictionary<(int, int, int), List<int>> cubes = [];
    private readonly double side;

    internal BodyGrid(IReadOnlyList<Body> bodies, double side)
    {
        this.side = side;
        for (int i = 0; i < bodies.Count; i++)
        {
            (int, int, int) key = Key(bodies[i].Centre);
            if (!cubes.TryGetValue(key, out List<int>? list))
                cubes[key] = list = [];
            list.Add(i);
        }
    }

    /// <summary>The largest distance between two centres at which a pair can matter, millimetres: the longest side, the widest gap, the reach.</summary>
    internal static double Reach(IReadOnlyList<Attitude> attitudes, double extra)
    {
        double longest = attitudes.Max(a => Axes3.All.Max(a.Size)), widest = attitudes.Max(a => Enumerable.Range(0, 6).Max(a.Want));
        return longest + widest + extra + 0.1;
    }

    internal IEnumerable<int> Near(PointMm place)
    {
        (int x, int y, int z) = Key(place);
        for (int i = x - 1; i <= x + 1; i++)
        {
            for (int j = y - 1; j <= y + 1; j++)
            {
                for (int k = z - 1; k <= z + 1; k++)
                {
                    if (!cubes.TryGetValue((i, j, k), out List<int>? list))
                        continue;
                    foreach (int b in list)
                        yield return b;
                }
            }
        }
    }

    private (int, int, int) Key(PointMm p) =>
        ((int)Math.Floor(p.X / side), (int)Math.Floor(p.Y / side), (int)Math.Floor(p.Z / side));
}
