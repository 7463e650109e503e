namespace PackPlanner.Core.Fitting;

/// <summary>
/// Looks for one disc more than it has: shakes the discs in a window, puts one more into the widest hole, and relaxes; if they will not
/// settle it takes out the most crowded one and keeps the new arrangement, so that free room wanders and gathers.
/// </summary>
internal sealed class DiscPacker
{
    private readonly DiscRegion region;
    private readonly double distance;
    private readonly DiscRelaxer relaxer;
    private readonly Random random;
    private readonly List<double> xs = [];
    private readonly List<double> ys = [];
    private readonly List<int> window = [];
    private double[] movingX = [];
    private double[] movingY = [];
    private double[] stillX = [];
    private double[] stillY = [];
    private bool[] inWindow = [];

    internal DiscPacker(DiscRegion region, double distance, int seed)
    {
        (this.region, this.distance) = (region, distance);
        relaxer = new DiscRelaxer(region, distance);
        random = new Random(seed);
    }

    internal int Count => xs.Count;

    internal (double X, double Y)[] Places => [.. xs.Zip(ys)];

    /// <summary>Starts again from an arrangement that keeps every rule.</summary>
    internal void Adopt(IReadOnlyList<(double X, double Y)> places)
    {
        xs.Clear();
        ys.Clear();
        foreach ((double x, double y) in places)
        {
            xs.Add(x);
            ys.Add(y);
        }
    }

    /// <summary>Works until the budget of evaluated terms is spent, or <paramref name="enough"/> discs are in.</summary>
    internal void Improve(long work, int enough, CancellationToken cancel)
    {
        long end = relaxer.Work + work;
        while (relaxer.Work < end && xs.Count < enough && !cancel.IsCancellationRequested)
        {
            long before = relaxer.Work;
            if (xs.Count < 70 && random.Next(3) == 0)
                Afresh();
            else
                OneMore();
            // A trial that had nothing to do must still come to an end.
            if (relaxer.Work == before)
                end -= 1000;
        }
    }

    /// <summary>One disc more than now, from nothing: at random, or from a lattice a little too dense, turned and shifted.</summary>
    private void Afresh()
    {
        int n = xs.Count + 1;
        Size(n, 0);
        bool scattered = random.Next(2) == 0 || !FillTurned(n);
        if (scattered)
        {
            for (int i = 0; i < n; i++)
                (movingX[i], movingY[i]) = AnyPlace();
        }

        Span<double> mx = movingX.AsSpan(0, n), my = movingY.AsSpan(0, n);
        if (!relaxer.Relax(mx, my, [], [], 400))
            return;
        xs.Clear();
        ys.Clear();
        for (int i = 0; i < n; i++)
        {
            xs.Add(mx[i]);
            ys.Add(my[i]);
        }
    }

    private bool FillTurned(int n)
    {
        bool staggered = random.Next(4) != 0;
        double angle = random.NextDouble() * Math.PI;
        (double sin, double cos) = Math.SinCos(angle);
        double cx = (region.MinX + region.MaxX) / 2, cy = (region.MinY + region.MaxY) / 2;
        double reach = Math.Max(region.MaxX - region.MinX, region.MaxY - region.MinY) + distance;
        double shiftX = random.NextDouble() * distance, shiftY = random.NextDouble() * distance;
        for (double shrink = 1; shrink > 0.8; shrink -= 0.01)
        {
            double pitch = distance * shrink, row = staggered ? pitch * Math.Sqrt(0.75) : pitch;
            int rows = (int)(reach / row), columns = (int)(reach / pitch), found = 0;
            for (int j = -rows; j <= rows && found < n; j++)
            {
                for (int i = -columns; i <= columns && found < n; i++)
                {
                    double a = ((i + (staggered && (j & 1) != 0 ? 0.5 : 0)) * pitch) + shiftX, c = (j * row) + shiftY;
                    double px = cx + (a * cos) - (c * sin), py = cy + (a * sin) + (c * cos);
                    if (region.Margin(px, py) >= -0.12 * distance)
                        (movingX[found], movingY[found++]) = (px, py);
                }
            }

            if (found == n)
                return true;
        }

        return false;
    }

    private void OneMore()
    {
        int size = xs.Count <= 40 ? xs.Count : Math.Min(xs.Count, 18 + random.Next(60));
        (double cx, double cy) = xs.Count > 0 && random.Next(2) == 0 ? AnyPlace() : SparsePlace();
        Choose(cx, cy, size);
        int n = window.Count;
        Size(n + 1, xs.Count - n);
        double shake = random.Next(4) switch { 0 => 0.02, 1 => 0.08, 2 => 0.2, _ => 0.4 } * distance;
        for (int i = 0; i < n; i++)
        {
            movingX[i] = xs[window[i]] + (shake * Gaussian());
            movingY[i] = ys[window[i]] + (shake * Gaussian());
        }

        int still = 0;
        for (int i = 0; i < xs.Count; i++)
        {
            if (!inWindow[i])
                (stillX[still], stillY[still++]) = (xs[i], ys[i]);
        }

        (movingX[n], movingY[n]) = WidestHole(cx, cy, n, still, size);
        Span<double> mx = movingX.AsSpan(0, n + 1), my = movingY.AsSpan(0, n + 1);
        ReadOnlySpan<double> sx = stillX.AsSpan(0, still), sy = stillY.AsSpan(0, still);
        if (relaxer.Relax(mx, my, sx, sy, 250))
        {
            Take(n);
            xs.Add(mx[n]);
            ys.Add(my[n]);
            return;
        }

        int worst = Enumerable.Range(0, n + 1).MaxBy(relaxer.LackOf);
        (movingX[worst], movingY[worst]) = (movingX[n], movingY[n]);
        if (n > 0 && relaxer.Relax(movingX.AsSpan(0, n), movingY.AsSpan(0, n), sx, sy, 250))
            Take(n);
    }

    private void Take(int n)
    {
        for (int i = 0; i < n; i++)
            (xs[window[i]], ys[window[i]]) = (movingX[i], movingY[i]);
    }

    /// <summary>The discs nearest to a place.</summary>
    private void Choose(double cx, double cy, int size)
    {
        if (inWindow.Length < xs.Count)
            inWindow = new bool[xs.Count + 64];
        Array.Clear(inWindow);
        window.Clear();
        foreach (int i in Enumerable.Range(0, xs.Count).OrderBy(i => Square(xs[i] - cx) + Square(ys[i] - cy)).Take(size))
        {
            window.Add(i);
            inWindow[i] = true;
        }
    }

    private (double X, double Y) WidestHole(double cx, double cy, int n, int still, int size)
    {
        double reach = distance * (0.5 + Math.Sqrt(size * 0.4)), best = double.NegativeInfinity;
        (double X, double Y) place = (cx, cy);
        for (int k = 0; k < 60; k++)
        {
            (double x, double y) = size >= xs.Count && k % 2 == 0
                ? AnyPlace()
                : (cx + (reach * ((2 * random.NextDouble()) - 1)), cy + (reach * ((2 * random.NextDouble()) - 1)));
            double margin = region.Margin(x, y), free = margin < 0 ? distance + (2 * margin) : distance;
            free = Nearest(x, y, movingX, movingY, n, free);
            free = Nearest(x, y, stillX, stillY, still, free);
            free += 1e-3 * random.NextDouble();
            if (free > best)
                (best, place) = (free, (x, y));
        }

        return place;
    }

    private static double Nearest(double x, double y, double[] xs, double[] ys, int n, double start)
    {
        double best = start * Math.Abs(start);
        for (int i = 0; i < n; i++)
            best = Math.Min(best, Square(xs[i] - x) + Square(ys[i] - y));
        return best < 0 ? -Math.Sqrt(-best) : Math.Sqrt(best);
    }

    /// <summary>A place with few discs round it: of a handful of tries, the one with most room.</summary>
    private (double X, double Y) SparsePlace()
    {
        double best = double.NegativeInfinity;
        (double X, double Y) place = AnyPlace();
        for (int k = 0; k < 12; k++)
        {
            (double x, double y) = AnyPlace();
            double free = distance * distance;
            for (int i = 0; i < xs.Count; i++)
                free = Math.Min(free, Square(xs[i] - x) + Square(ys[i] - y));
            if (free > best)
                (best, place) = (free, (x, y));
        }

        return place;
    }

    private (double X, double Y) AnyPlace()
    {
        for (int k = 0; k < 200; k++)
        {
            double x = region.MinX + (random.NextDouble() * (region.MaxX - region.MinX));
            double y = region.MinY + (random.NextDouble() * (region.MaxY - region.MinY));
            if (region.Margin(x, y) >= 0)
                return (x, y);
        }

        return ((region.MinX + region.MaxX) / 2, (region.MinY + region.MaxY) / 2);
    }

    private double Gaussian() =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private void Size(int n, int still)
    {
        if (movingX.Length < n)
            (movingX, movingY) = (new double[n + 64], new double[n + 64]);
        if (stillX.Length < still)
            (stillX, stillY) = (new double[still + 64], new double[still + 64]);
    }

    private static double Square(double value) => value * value;
}
