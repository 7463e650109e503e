using System.Globalization;
using PackPlanner.Core.Fitting;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>The cavity from above, to scale: walls as they run, what must stay free, ways in, weighed parts and the cells of one layer.</summary>
internal sealed class FloorDrawing
{
    private readonly Area area;
    private readonly SightLines sight;
    private readonly double scale;
    private readonly double left;
    private readonly double back;
    // Signs that are no free floor: outside, wall, or what must stay free.
    private readonly bool[,] closed;

    private FloorDrawing(Area area, FitCase fitCase, FloorView view)
    {
        this.area = area;
        closed = new bool[area.Width, area.Height];
        sight = new SightLines(fitCase);
        ((double lowX, double highX), (double lowY, double highY)) = (sight.Extent(Axis.X), sight.Extent(Axis.Y));
        double near = Math.Pow(2, view.Zoom);
        // A sign is about twice as high as it is wide.
        scale = near * Math.Min((area.Width - 2) / (highX - lowX), 2 * (area.Height - 2) / (highY - lowY));
        left = view.Zoom == 0 ? lowX - (1 / scale) : ((lowX + highX) / 2) + view.AcrossMm - (area.Width / 2.0 / scale);
        back = view.Zoom == 0 ? highY + (2 / scale) : ((lowY + highY) / 2) + view.BackMm + (area.Height / scale);
    }

    /// <summary>Cells of each layer, from the floor up; cells whose middles are within a millimetre in height stand together.</summary>
    internal static IReadOnlyList<IReadOnlyList<PlacedCell>> Layers(FitAnswer answer) =>
        [.. answer.Cells.GroupBy(cell => Math.Round(cell.Centre.Z)).OrderBy(layer => layer.Key).Select(layer => (IReadOnlyList<PlacedCell>)[.. layer])];

    /// <summary>Draws one layer.</summary>
    /// <param name="area">Where.</param>
    /// <param name="fitCase">The case.</param>
    /// <param name="shown">The cells of the layer; empty while there are none.</param>
    /// <param name="view">Which part of the floor.</param>
    /// <returns>False where the signs are too coarse for the cells: then none is drawn, rather than one over a wall or another cell.</returns>
    internal static bool Paint(Area area, FitCase fitCase, IReadOnlyList<PlacedCell> shown, FloorView view)
    {
        if (area.Width < 4 || area.Height < 3)
            return true;
        FloorDrawing drawing = new(area, fitCase, view);
        (double low, double high) = shown.Count > 0
            ? (shown.Min(cell => cell.Centre.Z - (cell.SizeMm.Z / 2)), shown.Max(cell => cell.Centre.Z + (cell.SizeMm.Z / 2)))
            : drawing.sight.Extent(Axis.Z);
        drawing.Ground(low, high);
        foreach (Opening opening in fitCase.Openings ?? [])
            drawing.WayIn(opening);
        bool drawn = drawing.Cells(shown, inRows: view.Zoom == 0 && fitCase.KeepOuts.Count == 0 && fitCase.Cavity.Count == 1);
        foreach (WeighedPart part in fitCase.Parts ?? [])
        {
            if (part.At is { } at)
                area.Write(drawing.Column(at.X), drawing.Row(at.Y), "w", Ink.Bold);
        }

        return drawn;
    }

    private double X(double column) => left + (column / scale);

    private double Y(double row) => back - (2 * row / scale);

    private int Column(double x) => (int)Math.Floor((x - left) * scale);

    private int Row(double y) => (int)Math.Floor((back - y) * scale / 2);

    // Walls run outside of what they hold: a sign that is not inside, beside one that is.
    private void Ground(double low, double high)
    {
        bool[,] inside = new bool[area.Width + 2, area.Height + 2];
        for (int y = -1; y <= area.Height; y++)
        {
            for (int x = -1; x <= area.Width; x++)
            {
                inside[x + 1, y + 1] = sight.At(Axis.Z, X(x + 0.5), Y(y + 0.5), low, high).Inside;
                if (x < 0 || y < 0 || x >= area.Width || y >= area.Height)
                    continue;
                closed[x, y] = !inside[x + 1, y + 1] || IsBlocked(x, y, low, high);
                if (closed[x, y] && inside[x + 1, y + 1])
                    area.Write(x, y, "#");
            }
        }

        bool IsWall(int x, int y) => x >= 0 && y >= 0 && x < area.Width && y < area.Height && !inside[x + 1, y + 1] && Beside(inside, x + 1, y + 1);
        for (int y = 0; y < area.Height; y++)
        {
            for (int x = 0; x < area.Width; x++)
            {
                if (IsWall(x, y))
                    area.Write(x, y, Line(IsWall(x, y - 1), IsWall(x, y + 1), IsWall(x - 1, y), IsWall(x + 1, y)));
            }
        }
    }

    // A sign is blocked where its middle is. A bar so thin that it passes between two middles shows where it touches a sign at all.
    private bool IsBlocked(int x, int y, double low, double high)
    {
        bool At(double down) => sight.At(Axis.Z, X(x + 0.5), Y(y + down), low, high).Blocked;
        return At(0.5) || ((At(0.25) || At(0.75)) && !At(-0.5) && !At(1.5));
    }

    private static bool Beside(bool[,] inside, int x, int y)
    {
        for (int dy = -1; dy <= 1; dy++)
        {
            for (int dx = -1; dx <= 1; dx++)
            {
                if (x + dx >= 0 && y + dy >= 0 && x + dx < inside.GetLength(0) && y + dy < inside.GetLength(1) && inside[x + dx, y + dy])
                    return true;
            }
        }

        return false;
    }

    private static string Line(bool up, bool down, bool west, bool east) => (up, down, west, east) switch
    {
        (true, true, false, false) or (true, false, false, false) or (false, true, false, false) => "│",
        (false, false, _, _) => "─",
        (false, true, false, true) => "┌",
        (false, true, true, false) => "┐",
        (true, false, false, true) => "└",
        (true, false, true, false) => "┘",
        (true, true, false, true) => "├",
        (true, true, true, false) => "┤",
        (false, true, true, true) => "┬",
        (true, false, true, true) => "┴",
        _ => "┼",
    };

    // On a side: the wall is drawn open. On top or below: nothing, the list tells it.
    private void WayIn(Opening opening)
    {
        if (opening.Across == Axis.Z || opening.Positive is not { } positive)
            return;
        (double low, double high) = sight.Extent(opening.Across);
        double wall = positive ? high : low;
        (double from, double to) = (Math.Min(opening.From.U, opening.To.U), Math.Max(opening.From.U, opening.To.U));
        if (opening.Across == Axis.Y)
        {
            int y = positive ? Row(wall) - (Row(wall) == Row(wall - (1 / scale)) ? 1 : 0) : Row(wall + 0.001) + 1;
            for (int x = Column(from); x <= Column(to - 0.001); x++)
                area.Write(x, Math.Clamp(y, 0, area.Height - 1), "=", Ink.Bold);
            return;
        }

        int column = positive ? Column(wall - 0.001) + 1 : Column(wall + 0.001) - 1;
        for (int y = Row(to - 0.001); y <= Row(from); y++)
            area.Write(column, y, "=", Ink.Bold);
    }

    private bool Cells(IReadOnlyList<PlacedCell> shown, bool inRows)
    {
        double[] depths = [.. shown.Select(cell => Math.Round(cell.Centre.Y)).Distinct().OrderDescending()];
        int first = depths.Length > 0 ? Row(sight.Extent(Axis.Y).High - 0.001) : 0;
        // Rows that would fall together are drawn one below the other instead, where nothing else gives the scale.
        bool byRank = inRows && depths.Select(Row).Distinct().Count() < depths.Length && depths.Length <= area.Height - 2;
        HashSet<(int X, int Y)> taken = [];
        List<(int X, int Y, string Sign)> signs = [];
        List<(PlacedCell Cell, int From, int To)> bodies = [];
        foreach (PlacedCell cell in shown.OrderBy(cell => cell.Centre.Y))
        {
            (int x, int y) = (Column(cell.Centre.X), byRank ? first + Array.IndexOf(depths, Math.Round(cell.Centre.Y)) : Row(cell.Centre.Y));
            (int from, int to) = (Column(cell.Centre.X - (cell.SizeMm.X / 2)), Column(cell.Centre.X + (cell.SizeMm.X / 2) - 0.001));
            if (!byRank && cell.SizeMm.X * scale >= 3)
                bodies.Add((cell, from, to));
            else if (FreeRow(x, y) is { } free)
                signs.Add((x, free, cell.Group is null ? "·" : "o"));
            else
                return false;
        }

        foreach ((int x, int y, string sign) in signs)
            area.Write(x, y, sign);
        HashSet<(int X, int Y)> walls = [];
        foreach ((PlacedCell cell, int from, int to) in bodies)
            Body(cell, from, to, Row(cell.Centre.Y), walls);
        return true;

        // Two cells that fall on one sign stand one above the other, as they do in the space; none stands on a wall. What is out of view takes no sign.
        int? FreeRow(int x, int y)
        {
            if (x < 0 || y < 0 || x >= area.Width || y >= area.Height)
                return y;
            foreach (int row in new[] { y, y - 1, y + 1 })
            {
                if (row >= 0 && row < area.Height && !closed[x, row] && taken.Add((x, row)))
                    return row;
            }

            return null;
        }
    }

    // From near, a cell shows its width and its group.
    private void Body(PlacedCell cell, int from, int to, int y, HashSet<(int X, int Y)> walls)
    {
        (int top, int bottom) = (Row(cell.Centre.Y + (cell.SizeMm.Y / 2) - 0.001), Row(cell.Centre.Y - (cell.SizeMm.Y / 2)));
        (string open, string shut) = cell.RoundAlong == Axis.Z ? ("(", ")") : ("[", "]");
        for (int row = top; row <= bottom; row++)
        {
            // A round cell is narrower at its ends.
            double off = (Y(row + 0.5) - cell.Centre.Y) / (cell.SizeMm.Y / 2);
            int shorter = cell.RoundAlong == Axis.Z ? (int)Math.Round((1 - Math.Sqrt(Math.Max(0, 1 - (off * off)))) * (to - from) / 2) : 0;
            if (to - shorter <= from + shorter)
                continue;
            // Where two flat cells touch on one sign it is the wall of both.
            area.Write(from + shorter, row, walls.Add((from + shorter, row)) || open == "(" ? open : "|");
            area.Write(to - shorter, row, walls.Add((to - shorter, row)) || open == "(" ? shut : "|");
        }

        string group = cell.Group?.ToString(CultureInfo.InvariantCulture) ?? "·";
        area.Write(((from + to) / 2) - ((group.Length - 1) / 2), y, group, cell.Group is null ? Ink.Plain : Ink.Bold);
    }
}
