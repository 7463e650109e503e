namespace PackPlanner.Core.Fitting;

/// <summary>
/// Squares of a region in which every place is allowed, or none: margins change by at most 1 mm per mm, so one look at the middle
/// of a square often decides for all of it. Only the squares on the border need the exact test.
/// </summary>
internal sealed class RegionRaster
{
    private const byte Mixed = 0, All = 1, None = 2;
    private readonly byte[] squares;
    private readonly double minX;
    private readonly double minY;
    private readonly double side;
    private readonly int columns;
    private readonly int rows;

    internal RegionRaster(DiscRegion region, double distance)
    {
        double width = Math.Max(0, region.MaxX - region.MinX), height = Math.Max(0, region.MaxY - region.MinY);
        // A sixteenth of a cell leaves few squares undecided; the limit keeps memory in proportion in a hall-sized cavity.
        side = Math.Max(distance / 16, Math.Sqrt(width * height / 400_000));
        (minX, minY) = (region.MinX, region.MinY);
        columns = (int)(width / side) + 1;
        rows = (int)(height / side) + 1;
        squares = new byte[columns * rows];
        double reach = side * Math.Sqrt(0.5);
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < columns; c++)
            {
                double margin = region.Margin(minX + ((c + 0.5) * side), minY + ((r + 0.5) * side));
                squares[(r * columns) + c] = margin > reach ? All : margin < -reach - Geometry2.RoundingMm ? None : Mixed;
            }
        }
    }

    internal bool Allows(DiscRegion region, double x, double y)
    {
        int c = (int)((x - minX) / side), r = (int)((y - minY) / side);
        byte known = x >= minX && y >= minY && c < columns && r < rows ? squares[(r * columns) + c] : Mixed;
        return known switch
        {
            All => true,
            None => false,
            _ => region.Margin(x, y) >= -Geometry2.RoundingMm / 10,
        };
    }

    /// <summary>Squares that are wholly or partly allowed, as a share of one: the area of the region, roughly.</summary>
    internal double AreaMm2()
    {
        double sum = 0;
        foreach (byte square in squares)
            sum += square == All ? 1 : square == Mixed ? 0.5 : 0;
        return sum * side * side;
    }
}
