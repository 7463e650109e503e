namespace PackPlanner.Core.Fitting;

/// <summary>
/// Packs rectangles into a rectangle completely: the lowest, leftmost free corner is either the corner of a box or wasted, and no more may be
/// wasted than the wanted count leaves. Any layout can be pushed down and left into one that this finds, so a search that ends without an
/// answer proves that there is none.
/// </summary>
/// <remarks>Source: [Silva2016] on normal patterns; the accounting of waste is worked by hand. Skylines seen before with as many boxes are
/// not looked at again; they are told apart by 128 bits.</remarks>
internal sealed class RectanglePacker
{
    private readonly double[] xs;
    private readonly double[] ys;
    private readonly double[][] size;
    private readonly int[,] endX;
    private readonly int[,] endY;
    private readonly double area;
    private readonly ulong[,] codeA;
    private readonly ulong[,] codeB;
    private readonly int[] level;
    private readonly double[,] lackX;
    private readonly double[] lackY;
    private readonly Stack<(int Kind, int Column, int Row)> placed = new();
    private readonly Dictionary<(ulong, ulong), int> seen = [];
    private int target;
    private double slack;
    private long steps;
    private bool spent;

    /// <param name="width">Of the container, millimetres.</param>
    /// <param name="height">Of the container, millimetres.</param>
    /// <param name="kinds">For each kind of rectangle its size, and how far it must at least stay from the four sides.</param>
    internal RectanglePacker(double width, double height, IReadOnlyList<(double W, double H, double Left, double Right, double Down, double Up)> kinds)
    {
        size = [.. kinds.Select(k => new[] { k.W, k.H })];
        area = kinds.Min(k => k.W * k.H);
        xs = NormalPatterns.Grid(width, [.. kinds.Select(k => (k.W, k.Left, k.Right))]);
        ys = NormalPatterns.Grid(height, [.. kinds.Select(k => (k.H, k.Down, k.Up))]);
        endX = NormalPatterns.Ends(xs, width, [.. kinds.Select(k => (k.W, k.Left, k.Right))]);
        endY = NormalPatterns.Ends(ys, height, [.. kinds.Select(k => (k.H, k.Down, k.Up))]);
        level = new int[xs.Length - 1];
        lackX = new double[xs.Length, xs.Length];
        double[] sumsX = NormalPatterns.Sums(width, [.. kinds.Select(k => k.W)]), sumsY = NormalPatterns.Sums(height, [.. kinds.Select(k => k.H)]);
        for (int i = 0; i < xs.Length; i++)
        {
            for (int j = i + 1; j < xs.Length; j++)
                lackX[i, j] = NormalPatterns.Lack(sumsX, xs[j] - xs[i]);
        }

        lackY = [.. ys.Select(y => NormalPatterns.Lack(sumsY, height - y))];
        (codeA, codeB) = (new ulong[level.Length, ys.Length], new ulong[level.Length, ys.Length]);
        Random random = new(20251);
        for (int c = 0; c < level.Length; c++)
        {
            for (int r = 0; r < ys.Length; r++)
                (codeA[c, r], codeB[c, r]) = ((ulong)random.NextInt64(), (ulong)random.NextInt64());
        }
    }

    /// <summary>Rectangles that area alone allows.</summary>
    internal int AreaBound => (int)Math.Floor((xs[^1] * ys[^1] / area) + 1e-9);

    /// <summary>Looks for a layout of so many rectangles.</summary>
    /// <param name="wanted">How many.</param>
    /// <param name="most">Steps at most.</param>
    /// <param name="cancel">Stops the search.</param>
    /// <param name="found">Kind and low corner of each; null when there is none, or none was found in time.</param>
    /// <returns>True when the search was complete.</returns>
    internal bool Search(int wanted, long most, CancellationToken cancel, out (int Kind, double X, double Y)[]? found)
    {
        (target, steps, spent) = (wanted, most, false);
        slack = (xs[^1] * ys[^1]) - (wanted * area) + 1e-6;
        Array.Clear(level);
        placed.Clear();
        seen.Clear();
        found = null;
        if (slack < 0)
            return true;
        ulong a = 0, b = 0;
        for (int c = 0; c < level.Length; c++)
            (a, b) = (a ^ codeA[c, 0], b ^ codeB[c, 0]);
        if (Go(slack, a, b, cancel))
            found = [.. placed.Select(p => (p.Kind, xs[p.Column], ys[p.Row])).Reverse()];
        return !spent;
    }

    private bool Go(double left, ulong a, ulong b, CancellationToken cancel)
    {
        if (placed.Count >= target)
            return true;
        if (--steps < 0 || cancel.IsCancellationRequested)
        {
            spent = true;
            return false;
        }

        if (LeastWaste() > left || WasSeen(a, b))
            return false;
        (int column, int row, int wide) = Lowest();
        if (row >= ys.Length - 1)
            return false;
        for (int kind = 0; kind < size.Length; kind++)
        {
            int toX = endX[kind, column], toY = endY[kind, row];
            if (toX < 0 || toY < 0 || toX > wide)
                continue;
            double over = (size[kind][0] * size[kind][1]) - area;
            if (over > left)
                continue;
            (ulong a2, ulong b2) = Raise(column, toX, toY, a, b);
            placed.Push((kind, column, row));
            bool done = Go(left - over, a2, b2, cancel);
            if (done)
                return true;
            placed.Pop();
            Array.Fill(level, row, column, toX - column);
            if (spent)
                return false;
        }

        // Nothing starts here: this square of the grid stays empty.
        double waste = (xs[column + 1] - xs[column]) * (ys[row + 1] - ys[row]);
        if (waste > left)
            return false;
        (ulong a3, ulong b3) = Raise(column, column + 1, row + 1, a, b);
        bool answered = Go(left - waste, a3, b3, cancel);
        if (!answered)
            level[column] = row;
        return answered;
    }

    /// <summary>Whether this skyline was met with as many rectangles or more under it; it is remembered when it was not.</summary>
    private bool WasSeen(ulong a, ulong b)
    {
        if (seen.TryGetValue((a, b), out int best) && best >= placed.Count)
            return true;
        if (seen.Count < 2_000_000)
            seen[(a, b)] = placed.Count;
        return false;
    }

    /// <summary>Where the skyline is lowest, from the left: its first column, its row, and the column after its last.</summary>
    private (int Column, int Row, int Wide) Lowest()
    {
        int column = 0;
        for (int c = 1; c < level.Length; c++)
            column = level[c] < level[column] ? c : column;
        int row = level[column], wide = column;
        while (wide < level.Length && level[wide] == row)
            wide++;
        return (column, row, wide);
    }

    /// <summary>
    /// What must stay empty whatever comes: along every line across, a free stretch holds only a sum of widths, and along every
    /// line upward the free height above the skyline holds only a sum of heights. The larger of the two.
    /// </summary>
    private double LeastWaste()
    {
        double upward = 0, across = 0;
        for (int c = 0; c < level.Length; c++)
            upward += (xs[c + 1] - xs[c]) * lackY[level[c]];
        int row = level.Min();
        while (row < ys.Length - 1)
        {
            int next = ys.Length - 1, from = -1;
            double lack = 0;
            for (int c = 0; c <= level.Length; c++)
            {
                bool free = c < level.Length && level[c] <= row;
                if (c < level.Length && level[c] > row)
                    next = Math.Min(next, level[c]);
                if (free && from < 0)
                    from = c;
                if (free || from < 0)
                    continue;
                lack += lackX[from, c];
                from = -1;
            }

            across += lack * (ys[next] - ys[row]);
            row = next;
        }

        return Math.Max(upward, across);
    }

    private (ulong A, ulong B) Raise(int from, int to, int row, ulong a, ulong b)
    {
        for (int c = from; c < to; c++)
        {
            a ^= codeA[c, level[c]] ^ codeA[c, row];
            b ^= codeB[c, level[c]] ^ codeB[c, row];
            level[c] = row;
        }

        return (a, b);
    }
}
