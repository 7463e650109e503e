namespace PackPlanner.Core.Fitting;

/// <summary>Volume of the cavity: of all its parts together, less the keep-outs.</summary>
internal static class CavityVolume
{
    /// <summary>Cubic millimetres: exact for one part without keep-outs, else counted on a grid of about a million points.</summary>
    internal static double OfMm3(Scene scene)
    {
        if (scene.Parts.Length == 1 && scene.Blocks.Length == 0 && scene.Tubes.Length == 0)
            return scene.Parts[0].VolumeMm3;
        double[] low = [.. Axes3.All.Select(a => scene.Parts.Min(p => p.Extent(a).Low))];
        double[] size = [.. Axes3.All.Select((a, i) => scene.Parts.Max(p => p.Extent(a).High) - low[i])];
        double step = Math.Cbrt(size[0] * size[1] * size[2] / 1e6);
        int[] n = [.. size.Select(s => Math.Max(1, (int)Math.Round(s / step)))];
        long[] inside = new long[n[0]];
        Parallel.For(0, n[0], i =>
        {
            for (int j = 0; j < n[1]; j++)
            {
                for (int k = 0; k < n[2]; k++)
                {
                    PointMm p = new(low[0] + ((i + 0.5) * size[0] / n[0]), low[1] + ((j + 0.5) * size[1] / n[1]), low[2] + ((k + 0.5) * size[2] / n[2]));
                    if (scene.Parts.Any(part => Holds(part, p)) && !scene.Blocks.Any(b => Holds(b, p)) && !scene.Tubes.Any(t => t.Holds(p)))
                        inside[i]++;
                }
            }
        });
        return inside.Sum() * (size[0] / n[0]) * (size[1] / n[1]) * (size[2] / n[2]);
    }

    private static bool Holds(Prism3 part, PointMm p) =>
        p[part.Extrusion] >= part.Low && p[part.Extrusion] <= part.High && Geometry2.Contains(part.U, part.V, p[part.First], p[part.Second]);
}
