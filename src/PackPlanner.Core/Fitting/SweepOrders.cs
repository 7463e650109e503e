namespace PackPlanner.Core.Fitting;

/// <summary>Orders in which a plate could run through the cells: to and fro in bands, at several angles, layer after layer or through all layers.</summary>
internal static class SweepOrders
{
    /// <summary>Ranks for every order tried; the smaller rank comes first.</summary>
    internal static IEnumerable<double[]> Of(IReadOnlyList<Body> bodies, IReadOnlyList<double> anglesRad)
    {
        foreach (Axis up in Axes3.All)
        {
            if (bodies[0].Attitude.RoundAlong is Axis axis && axis != up)
                continue;
            int[] layer = LayerOf(bodies, up);
            bool layered = layer.Max() > 0;
            foreach (double angle in anglesRad)
            {
                foreach (int bands in (int[])[1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 20, 24])
                {
                    double[]? flat = Bands(bodies, up, angle, bands, out double span);
                    if (flat is null)
                        break;
                    double[] upper = Through(flat, layer, 1e-3);
                    yield return upper;
                    yield return [.. upper.Select(r => -r)];
                    if (!layered)
                        continue;
                    double[] stacked = Layered(flat, layer, span);
                    yield return stacked;
                    yield return [.. stacked.Select(r => -r)];
                }
            }
        }
    }

    private static double[]? Bands(IReadOnlyList<Body> bodies, Axis up, double angle, int bands, out double span)
    {
        (Axis first, Axis second) = Axes3.Others(up);
        (double sin, double cos) = Math.SinCos(angle);
        double[] along = [.. bodies.Select(b => (b.Centre[first] * cos) + (b.Centre[second] * sin))];
        double[] across = [.. bodies.Select(b => (b.Centre[second] * cos) - (b.Centre[first] * sin))];
        double a0 = along.Min(), a1 = along.Max(), c0 = across.Min(), c1 = across.Max();
        double thick = bodies.Min(b => Math.Min(b.Attitude.Size(first), b.Attitude.Size(second)));
        double width = (c1 - c0 + 1e-3) / bands, length = a1 - a0 + thick;
        span = (bands + 1) * length;
        // Bands narrower than a row would be the rows again.
        if (bands > 1 && width < 0.8 * thick)
            return null;
        double[] rank = new double[bodies.Count];
        for (int i = 0; i < rank.Length; i++)
        {
            int band = (int)((across[i] - c0) / width);
            double t = (band & 1) == 0 ? along[i] - a0 : a1 - along[i];
            rank[i] = (band * length) + t + (1e-4 * (across[i] - c0));
        }

        return rank;
    }

    private static double[] Through(double[] flat, int[] layer, double step) => [.. flat.Select((r, i) => r + (step * layer[i]))];

    private static double[] Layered(double[] flat, int[] layer, double span) =>
        [.. flat.Select((r, i) => (layer[i] * 2 * span) + ((layer[i] & 1) == 0 ? r : span - r))];

    private static int[] LayerOf(IReadOnlyList<Body> bodies, Axis up)
    {
        int[] layer = new int[bodies.Count];
        int number = 0;
        double last = double.NaN;
        foreach (int i in Enumerable.Range(0, bodies.Count).OrderBy(i => bodies[i].Centre[up]).ThenBy(i => i))
        {
            double at = bodies[i].Centre[up];
            if (at - last > bodies[i].Attitude.Size(up) / 2)
                (number, last) = (number + 1, at);
            else if (double.IsNaN(last))
                last = at;
            layer[i] = number;
        }

        return layer;
    }
}
