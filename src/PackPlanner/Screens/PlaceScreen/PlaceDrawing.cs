using System.Globalization;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Screening;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>The cells of one layer from above or, mirrored, from below: sign of the end that faces you, then the group.</summary>
internal static class PlaceDrawing
{
    /// <summary>Signs alone.</summary>
    internal const int Farthest = -1;

    /// <summary>Sign, group, label and Ah of each cell.</summary>
    internal const int Nearest = 2;

    // Usual steps of one cell in columns: signs alone, sign and group, with the label beside, with label and Ah below.
    private static readonly int[] Columns = [2, 4, 11, 9];

    /// <summary>Rows of a layer from the back to the front, each from left to right as seen.</summary>
    internal static IReadOnlyList<IReadOnlyList<PlacedCell>> Rows(IReadOnlyList<PlacedCell> layer, bool fromBelow) =>
    [
        .. layer.GroupBy(cell => Math.Round(cell.Centre.Y)).OrderByDescending(row => row.Key)
            .Select(row => (IReadOnlyList<PlacedCell>)[.. fromBelow ? row.OrderByDescending(c => c.Centre.X) : row.OrderBy(c => c.Centre.X)]),
    ];

    /// <summary>How many rows of signs a layer takes when all of it is drawn.</summary>
    internal static int RowsWanted(IReadOnlyList<PlacedCell> layer, int zoom) =>
        layer.Select(cell => Math.Round(cell.Centre.Y)).Distinct().Count() * Height(zoom);

    /// <summary>How many columns of signs a layer takes when all of it is drawn.</summary>
    internal static int ColumnsWanted(IReadOnlyList<PlacedCell> layer, int zoom)
    {
        double perColumn = Pitch(Rows(layer, fromBelow: false)) / Columns[zoom - Farthest];
        return (int)Math.Round((layer.Max(cell => cell.Centre.X) - layer.Min(cell => cell.Centre.X)) / perColumn) + Columns[zoom - Farthest];
    }

    /// <summary>Draws the layer; the view follows the cursor.</summary>
    /// <returns>Which rows are in view, with arrows where more lies beside; empty when all is in view.</returns>
    internal static string Paint(
        Area area, PlacedPack pack, int layer, bool fromBelow, (int Row, int Column) cursor, int zoom, bool focused, Look look)
    {
        IReadOnlyList<IReadOnlyList<PlacedCell>> rows = Rows(pack.Layers[layer], fromBelow);
        double low = pack.Layers[layer].Min(cell => cell.Centre.X);
        double high = pack.Layers[layer].Max(cell => cell.Centre.X);
        double perColumn = Pitch(rows) / Columns[zoom - Farthest];
        int height = Height(zoom);
        int Column(PlacedCell cell) => (int)Math.Round((fromBelow ? high - cell.Centre.X : cell.Centre.X - low) / perColumn);
        int page = Math.Max(1, area.Height / height);
        int firstRow = Math.Max(0, Math.Min(cursor.Row - (page / 2), rows.Count - page));
        PlacedCell under = rows[cursor.Row][Math.Min(cursor.Column, rows[cursor.Row].Count - 1)];
        int shift = Math.Max(0, Column(under) - area.Width + (2 * Columns[zoom - Farthest]));
        bool moreRight = false;
        PlaceLabels labels = new([.. pack.Layers.SelectMany(cells => cells).Select(cell => pack.CellAt(cell)?.Label).OfType<string>()]);
        for (int i = 0; i < page && firstRow + i < rows.Count; i++)
        {
            foreach (PlacedCell cell in rows[firstRow + i])
            {
                (int x, int y) = (1 + Column(cell) - shift, i * height);
                bool here = cell.Cell == under.Cell;
                // Half a sign says something else than the whole.
                moreRight |= x + SignWidth(zoom) > area.Width;
                if (x >= 0 && x + SignWidth(zoom) <= area.Width)
                    Write(area, x, y, pack, cell, fromBelow, zoom, labels, here ? Ink.Reverse : Ink.Plain, look);
                if (here && focused)
                    area.Cursor(Math.Max(0, x), y);
            }
        }

        string inView = rows.Count > page ? $"rows {firstRow + 1}-{firstRow + page} of {rows.Count}" : "";
        return $"{inView}{(shift > 0 ? " ←" : "")}{(moreRight ? " →" : "")}".TrimStart();
    }

    internal static string Sign(PlacedPack pack, PlacedCell cell, bool fromBelow)
    {
        if (pack.SeatOf(cell) is not { } seat)
            return " ..";
        return Facing(pack, cell, fromBelow) + seat.ToString("00", CultureInfo.InvariantCulture);
    }

    private static string Facing(PlacedPack pack, PlacedCell cell, bool fromBelow) =>
        pack.SeatOf(cell) is null ? "." : pack.IsPlusUp(cell) is not { } up ? "o" : up != fromBelow ? "+" : "-";

    private static void Write(Area area, int x, int y, PlacedPack pack, PlacedCell cell, bool fromBelow, int zoom, PlaceLabels labels, Ink ink, Look look)
    {
        ScreenedCell? known = pack.CellAt(cell);
        string label = labels.Short(known?.Label ?? "", zoom == 1 ? 6 : 8);
        switch (zoom)
        {
            case Farthest:
                area.Write(x, y, Facing(pack, cell, fromBelow), ink);
                break;
            case 1:
                area.Write(x, y, $"{Sign(pack, cell, fromBelow)} {label}", ink);
                break;
            case Nearest:
                area.Write(x, y, Sign(pack, cell, fromBelow), ink);
                area.Write(x, y + 1, label, ink);
                area.Write(x, y + 2, known is null ? "" : look.Figure(known.CapacityAh, 3), ink);
                break;
            default:
                area.Write(x, y, Sign(pack, cell, fromBelow), ink);
                break;
        }
    }

    private static int SignWidth(int zoom) => zoom switch { Farthest => 1, 1 => 10, Nearest => 8, _ => 3 };

    private static int Height(int zoom) => zoom == Nearest ? 4 : 1;

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
