using System.Globalization;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Plots;

/// <summary>A strip of bars, one for each group, up and down from zero, with the group's number below.</summary>
internal static class GroupBars
{
    private const string Blocks = " ▁▂▃▄▅▆▇█";

    /// <summary>Draws the bars; groups that do not fit are left out at the right, and that is said.</summary>
    /// <param name="area">Where.</param>
    /// <param name="values">One for each group; NaN leaves a gap.</param>
    /// <param name="unit">Of the values.</param>
    /// <param name="bold">Numbers of the groups to stand out, from 1.</param>
    internal static void Paint(Area area, IReadOnlyList<double> values, string unit, IReadOnlyCollection<int> bold)
    {
        double[] known = [.. values.Where(double.IsFinite)];
        if (area.Height < 4 || area.Width < 24 || known.Length == 0)
            return;
        (double low, double high) = (Math.Min(0, known.Min()), Math.Max(0, known.Max()));
        if (high - low < 1e-12)
            high = low + 1;
        PlotFrame frame = new(area, 0, values.Count, low, high);
        Area inside = frame.Inside;
        Axis(area, frame, inside, unit);
        int pitch = Math.Max(1, inside.Width / values.Count), shown = Math.Min(values.Count, inside.Width / pitch);
        for (int k = 0; k < shown; k++)
            Bar(inside, frame, k * pitch, Math.Max(1, pitch - 1), values[k], bold.Contains(k + 1) ? Ink.Accent | Ink.Bold : Ink.Plain);
        int free = 0;
        for (int k = 0; k < shown; k++)
        {
            string number = (k + 1).ToString(CultureInfo.InvariantCulture);
            int x = PlotFrame.Left + (k * pitch);
            if (x >= free && (pitch > number.Length || (k + 1) % 5 == 0 || k == 0))
                free = area.Write(x, inside.Height + 1, number, bold.Contains(k + 1) ? Ink.Bold : Ink.Plain) + 1;
        }
        if (shown < values.Count)
            area.WriteRight(inside.Height + 1, $"{values.Count - shown} more ");
    }

    private static void Axis(Area area, PlotFrame frame, Area inside, string unit)
    {
        IReadOnlyList<double> ticks = Ticks.Between(frame.LowY, frame.HighY, Math.Max(1, inside.Height / 2));
        int decimals = Ticks.Decimals(ticks);
        for (int y = 0; y < inside.Height; y++)
            area.Write(PlotFrame.Left - 1, y, "│");
        foreach (double tick in ticks)
            area.Write(0, (int)Math.Round(frame.RowOf(tick)), TextWidth.Fit(Ticks.Text(tick, decimals), PlotFrame.Left - 2, right: true));
        area.Write(PlotFrame.Left - 1, inside.Height, "└" + new string('─', inside.Width));
        area.Write(0, inside.Height, area.Look.Of(unit));
    }

    // Eighths of a row upwards; downwards whole rows, since the blocks grow from below only.
    private static void Bar(Area inside, PlotFrame frame, int x, int width, double value, Ink ink)
    {
        if (!double.IsFinite(value))
            return;
        double scale = inside.Height / (frame.HighY - frame.LowY), zero = frame.HighY * scale, tip = (frame.HighY - value) * scale;
        for (int y = 0; y < inside.Height; y++)
        {
            double share = value >= 0 ? Math.Min(y + 1, zero) - Math.Max(y, tip) : Math.Min(y + 1, tip) - Math.Max(y, zero);
            int eighths = value >= 0 ? (int)Math.Round(Math.Clamp(share, 0, 1) * 8) : share >= 0.5 ? 8 : 0;
            if (eighths > 0)
                inside.Write(x, y, new string(inside.Look.Ascii ? (eighths > 3 ? '#' : '_') : Blocks[eighths], width), ink);
        }
    }
}
