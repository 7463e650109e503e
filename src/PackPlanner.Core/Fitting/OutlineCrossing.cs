namespace PackPlanner.Core.Fitting;

/// <summary>Whether the sides of an outline cross or touch where they should not.</summary>
internal static class OutlineCrossing
{
    /// <summary>Two sides, each by its first corner counted from 0, that meet though they are not neighbours; null for a simple outline.</summary>
    internal static (int A, int B)? First(double[] u, double[] v)
    {
        int n = u.Length;
        for (int i = 0; i < n; i++)
        {
            for (int j = i + 1; j < n; j++)
            {
                bool next = j == i + 1, around = i == 0 && j == n - 1;
                if (next || around)
                {
                    // Neighbouring sides share a corner; folding back over one another is still wrong.
                    (int a, int b, int c) = next ? (i, j, (j + 1) % n) : (j, 0, 1);
                    if (FoldsBack(u, v, a, b, c))
                        return (i, j);
                    continue;
                }

                if (Meet(u, v, i, (i + 1) % n, j, (j + 1) % n))
                    return (i, j);
            }
        }

        return null;
    }

    private static bool FoldsBack(double[] u, double[] v, int a, int b, int c)
    {
        double px = u[b] - u[a], py = v[b] - v[a], qx = u[c] - u[b], qy = v[c] - v[b];
        return Math.Abs((px * qy) - (py * qx)) < 1e-9 * (1 + (Math.Abs(px) + Math.Abs(py)) * (Math.Abs(qx) + Math.Abs(qy)))
            && (px * qx) + (py * qy) < 0;
    }

    private static bool Meet(double[] u, double[] v, int a, int b, int c, int d)
    {
        double Cross(int o, int p, int q) => ((u[p] - u[o]) * (v[q] - v[o])) - ((v[p] - v[o]) * (u[q] - u[o]));
        double d1 = Cross(c, d, a), d2 = Cross(c, d, b), d3 = Cross(a, b, c), d4 = Cross(a, b, d);
        if (((d1 > 0 && d2 < 0) || (d1 < 0 && d2 > 0)) && ((d3 > 0 && d4 < 0) || (d3 < 0 && d4 > 0)))
            return true;
        bool On(int p, int q, int r) =>
            u[r] >= Math.Min(u[p], u[q]) && u[r] <= Math.Max(u[p], u[q]) && v[r] >= Math.Min(v[p], v[q]) && v[r] <= Math.Max(v[p], v[q]);
        return (d1 == 0 && On(c, d, a)) || (d2 == 0 && On(c, d, b)) || (d3 == 0 && On(a, b, c)) || (d4 == 0 && On(a, b, d));
    }
}
