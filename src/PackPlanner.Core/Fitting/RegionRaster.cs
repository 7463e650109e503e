using System.Numerics;

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
        int across = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(columns, rows));
        Fill(region, 0, 0, across);
    }

    /// <summary>Decides a block of squares at once where its middle tells, else its four quarters.</summary>
    private void Fill(DiscRegion region, int column, int row, int across)
    {
        if (column >= columns || row >= rows)
            return;
        double reach = across * side * Math.Sqrt(0.5);
        double margin = region.Margin(minX + ((column + (across / 2.0)) * side), minY + ((row + (across / 2.0)) * side));
        byte known = margin > reach ? All : margin < -reach - Geometry2.RoundingMm ? None : Mixed;
        if (known == Mixed && across > 1)
        {
            int half = across / 2;
            Fill(region, column, row, half);
            Fill(region, column + half, row, half);
            Fill(region, column, row + half, half);
            Fill(region, column + half, row + half, half);
            return;
        }

        int wide = Math.Min(across, columns - column), to = Math.Min(row + across, rows);
        for (int r = row; r < to; r++)
            squares.AsSpan((r * columns) + column, wide).Fill(known);
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
