using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Plots;

/// <summary>Curves in braille dots, two by four to a sign; a letter at its end tells each one, and dotting, never colour alone.</summary>
internal static class BrailleCurves
{
    // Bits of the dots of one braille sign: column 0 then column 1, from above.
    private static readonly int[,] Bits = { { 0x01, 0x08 }, { 0x02, 0x10 }, { 0x04, 0x20 }, { 0x40, 0x80 } };

    /// <summary>One curve.</summary>
    /// <param name="Name">Written at its end.</param>
    /// <param name="X">Rising or not, same length as Y; NaN breaks the line.</param>
    /// <param name="Y">The values.</param>
    /// <param name="IsDotted">Every other dot is left out.</param>
    internal sealed record Curve(string Name, IReadOnlyList<double> X, IReadOnlyList<double> Y, bool IsDotted = false);

    /// <summary>Draws axes and curves.</summary>
    internal static void Paint(Area area, IReadOnlyList<Curve> curves, string unitX)
    {
        if (area.Height < 4 || area.Width < 24 || curves.All(c => c.X.Count == 0))
            return;
        (double lowX, double highX) = PlotFrame.Range(curves.SelectMany(c => c.X));
        (double lowY, double highY) = PlotFrame.Range(curves.SelectMany(c => c.Y));
        PlotFrame frame = new(area, lowX, highX, lowY, highY);
        frame.PaintAxes(unitX);
        Area inside = frame.Inside;
        int[,] dots = new int[inside.Height, inside.Width];
        foreach (Curve curve in curves)
            Draw(curve, frame, dots);
        for (int y = 0; y < inside.Height; y++)
        {
            for (int x = 0; x < inside.Width; x++)
            {
                if (dots[y, x] != 0)
                    inside.Write(x, y, area.Look.Ascii ? AsciiDot(dots[y, x]) : ((char)(0x2800 + dots[y, x])).ToString());
            }
        }

        foreach (Curve curve in curves)
            WriteName(curve, frame, inside);
    }

    private static void Draw(Curve curve, PlotFrame frame, int[,] dots)
    {
        int height = dots.GetLength(0) * 4;
        int width = dots.GetLength(1) * 2;
        int? lastX = null;
        int lastY = 0;
        for (int i = 0; i < curve.X.Count; i++)
        {
            if (!double.IsFinite(curve.X[i]) || !double.IsFinite(curve.Y[i]))
            {
                lastX = null;
                continue;
            }

            int x = (int)Math.Round((curve.X[i] - frame.LowX) / (frame.HighX - frame.LowX) * (width - 1));
            int y = (int)Math.Round((frame.HighY - curve.Y[i]) / (frame.HighY - frame.LowY) * (height - 1));
            Line(dots, lastX ?? x, lastX is null ? y : lastY, x, y, curve.IsDotted);
            (lastX, lastY) = (x, y);
        }
    }

    // Steep parts fall apart into dots unless neighbouring points are joined.
    private static void Line(int[,] dots, int x0, int y0, int x1, int y1, bool dotted)
    {
        int steps = Math.Max(1, Math.Max(Math.Abs(x1 - x0), Math.Abs(y1 - y0)));
        for (int i = 0; i <= steps; i++)
        {
            int x = x0 + ((x1 - x0) * i / steps);
            int y = y0 + ((y1 - y0) * i / steps);
            if (dotted && (x + y) % 3 == 0)
                continue;
            if (x >= 0 && y >= 0 && x / 2 < dots.GetLength(1) && y / 4 < dots.GetLength(0))
                dots[y / 4, x / 2] |= Bits[y % 4, x % 2];
        }
    }

    private static string AsciiDot(int dots) => int.PopCount(dots) > 3 ? ":" : ".";

    private static void WriteName(Curve curve, PlotFrame frame, Area inside)
    {
        for (int i = curve.X.Count - 1; i >= 0; i--)
        {
            if (!double.IsFinite(curve.X[i]) || !double.IsFinite(curve.Y[i]))
                continue;
            int x = Math.Min((int)Math.Round(frame.ColumnOf(curve.X[i])) + 1, inside.Width - curve.Name.Length);
            inside.Write(x, (int)Math.Round(frame.RowOf(curve.Y[i])), curve.Name, Ink.Bold);
            return;
        }
    }
}
