using System.Globalization;
using PackPlanner.Core.Fitting;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>The cells of one layer from above or, mirrored, from below: sign of the end that faces you, then the group.</summary>
internal static class PlaceDrawing
{
    /// <summary>Rows of a layer from the back to the front, each from left to right as seen.</summary>
    internal static IReadOnlyList<IReadOnlyList<PlacedCell>> Rows(IReadOnlyList<PlacedCell> layer, bool fromBelow) =>
    [
        .. layer.GroupBy(cell => Math.Round(cell.Centre.Y)).OrderByDescending(row => row.Key)
            .Select(row => (IReadOnlyList<PlacedCell>)[.. fromBelow ? row.OrderByDescending(c => c.Centre.X) : row.OrderBy(c => c.Centre.X)]),
    ];

    /// <summary>Draws the layer; the view follows the cursor.</summary>
    internal static void Paint(Area area, PlacedPack pack, int layer, bool fromBelow, (int Row, int Column) cursor, bool focused)
    {
        IReadOnlyList<IReadOnlyList<PlacedCell>> rows = Rows(pack.Layers[layer], fromBelow);
        double low = pack.Layers[layer].Min(cell => cell.Centre.X);
        double high = pack.Layers[layer].Max(cell => cell.Centre.X);
        double pitch = Pitch(rows);
        double perColumn = pitch / 4;
        int Column(PlacedCell cell) => (int)Math.Round((fromBelow ? high - cell.Centre.X : cell.Centre.X - low) / perColumn);
        int firstRow = Math.Max(0, Math.Min(cursor.Row - (area.Height / 2), rows.Count - area.Height));
        PlacedCell under = rows[cursor.Row][Math.Min(cursor.Column, rows[cursor.Row].Count - 1)];
        int shift = Math.Max(0, Column(under) - area.Width + 8);
        for (int y = 0; y < area.Height && firstRow + y < rows.Count; y++)
        {
            foreach (PlacedCell cell in rows[firstRow + y])
            {
                int x = 1 + Column(cell) - shift;
                bool here = cell.Cell == under.Cell;
                if (x >= 0)
                    area.Write(x, y, Sign(pack, cell, fromBelow), here ? Ink.Reverse : Ink.Plain);
                if (here && focused)
                    area.Cursor(Math.Max(0, x), y);
            }
        }
    }

    internal static string Sign(PlacedPack pack, PlacedCell cell, bool fromBelow)
    {
        if (pack.SeatOf(cell) is not { } seat)
            return " ..";
        string sign = pack.IsPlusUp(cell) is not { } up ? " " : up != fromBelow ? "+" : "-";
        return sign + seat.ToString("00", CultureInfo.InvariantCulture);
    }

    private static double Pitch(IReadOnlyList<IReadOnlyList<PlacedCell>> rows)
    {
        double least = double.PositiveInfinity;
        foreach (IReadOnlyList<PlacedCell> row in rows)
        {
            for (int i = 1; i < row.Count; i++)
                least = Math.Min(least, Math.Abs(row[i].Centre.X - row[i - 1].Centre.X));
        }

        return double.IsFinite(least) && least > 0.5 ? least : 20;
    }
}
