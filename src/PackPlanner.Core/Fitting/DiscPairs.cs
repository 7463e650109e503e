namespace PackPlanner.Core.Fitting;

/// <summary>
/// The pairs of discs near enough to touch soon, kept while discs move. Holds its own arrays, so that thousands of descents cost no memory.
/// </summary>
/// <param name="distance">What two centres must keep, millimetres.</param>
internal sealed class DiscPairs(double distance)
{
    private readonly DiscGrid grid = new();
    private int moving;
    private int still;
    private double[] listedAt = [];
    private double[] gridX = [];
    private double[] gridY = [];
    private int[] found = [];

    /// <summary>Pairs listed.</summary>
    internal int Count { get; private set; }

    /// <summary>The first disc of each pair: one that moves.</summary>
    internal int[] First { get; private set; } = [];

    /// <summary>The second disc of each pair; of one that stands still, the complement of its number.</summary>
    internal int[] Second { get; private set; } = [];

    /// <summary>Centres of the discs that stand still, millimetres.</summary>
    internal double[] StillX { get; private set; } = [];

    /// <summary>Centres of the discs that stand still, millimetres.</summary>
    internal double[] StillY { get; private set; } = [];

    /// <summary>Takes the count of discs that move, and those that stand still.</summary>
    internal void Load(int movingDiscs, ReadOnlySpan<double> stillX, ReadOnlySpan<double> stillY)
    {
        (moving, still) = (movingDiscs, stillX.Length);
        if (listedAt.Length < 2 * moving)
            listedAt = new double[2 * moving];
        if (StillX.Length < still)
            (StillX, StillY) = (new double[still], new double[still]);
        stillX.CopyTo(StillX);
        stillY.CopyTo(StillY);
    }

    /// <summary>Between the centres of a pair, millimetres.</summary>
    /// <param name="p">Which pair.</param>
    /// <param name="at">Centres of the discs that move, x and y in turn, millimetres.</param>
    internal double DistanceMm(int p, double[] at)
    {
        int i = First[p], j = Second[p];
        double ox = j >= 0 ? at[2 * j] : StillX[~j], oy = j >= 0 ? at[(2 * j) + 1] : StillY[~j];
        double dx = at[2 * i] - ox, dy = at[(2 * i) + 1] - oy;
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    /// <summary>Lists the pairs anew once a disc has moved so far that one may be missing.</summary>
    internal void KeepFresh(double[] at)
    {
        double limit = 0.2 * distance;
        for (int i = 0; i < moving; i++)
        {
            double dx = at[2 * i] - listedAt[2 * i], dy = at[(2 * i) + 1] - listedAt[(2 * i) + 1];
            if ((dx * dx) + (dy * dy) > limit * limit)
            {
                List(at);
                return;
            }
        }
    }

    /// <summary>Lists the pairs anew.</summary>
    internal void List(double[] at)
    {
        double reach = 1.42 * distance, reach2 = reach * reach;
        Count = 0;
        Array.Copy(at, listedAt, 2 * moving);
        int all = moving + still;
        if (gridX.Length < all)
            (gridX, gridY) = (new double[all], new double[all]);
        for (int i = 0; i < moving; i++)
            (gridX[i], gridY[i]) = (at[2 * i], at[(2 * i) + 1]);
        Array.Copy(StillX, 0, gridX, moving, still);
        Array.Copy(StillY, 0, gridY, moving, still);
        grid.Fill(gridX.AsSpan(0, all), gridY.AsSpan(0, all), reach);
        for (int i = 0; i < moving; i++)
        {
            int count = grid.Around(gridX[i], gridY[i], ref found);
            for (int f = 0; f < count; f++)
            {
                int j = found[f];
                double dx = gridX[i] - gridX[j], dy = gridY[i] - gridY[j];
                if (j <= i || (dx * dx) + (dy * dy) >= reach2)
                    continue;
                // A disc that stands still is written as the complement of its number.
                Add(i, j < moving ? j : ~(j - moving));
            }
        }
    }

    private void Add(int i, int j)
    {
        if (Count == First.Length)
        {
            int[] first = First, second = Second;
            Array.Resize(ref first, Math.Max(256, 2 * Count));
            Array.Resize(ref second, Math.Max(256, 2 * Count));
            (First, Second) = (first, second);
        }

        (First[Count], Second[Count]) = (i, j);
        Count++;
    }
}
