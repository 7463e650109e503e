using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Plots;

/// <summary>Axes of a plot in text: figures on the left, a line below with its figures and unit.</summary>
/// <param name="Area">The whole plot.</param>
/// <param name="LowX">Left end of the bottom axis.</param>
/// <param name="HighX">Right end.</param>
/// <param name="LowY">Lower end of the left axis.</param>
/// <param name="HighY">Upper end.</param>
internal sealed record PlotFrame(Area Area, double LowX, double HighX, double LowY, double HighY)
{
    /// <summary>Columns taken by the figures on the left and the axis itself.</summary>
    internal const int Left = 6;

    /// <summary>Where points go: above the axis and its figures.</summary>
    internal Area Inside => Area.Part(Left, 0, Area.Width - Left - 1, Area.Height - 2);

    internal double ColumnOf(double x) => (x - LowX) / (HighX - LowX) * Math.Max(1, Inside.Width - 1);

    internal double RowOf(double y) => (HighY - y) / (HighY - LowY) * Math.Max(1, Inside.Height - 1);

    /// <summary>A range with a little room at both ends, never empty.</summary>
    internal static (double Low, double High) Range(IEnumerable<double> values)
    {
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        foreach (double value in values.Where(double.IsFinite))
        {
            low = Math.Min(low, value);
            high = Math.Max(high, value);
        }

        if (low > high)
            return (0, 1);
        // A line at nought has no size to take the scale from.
        double room = high > low ? (high - low) * 0.03 : high == 0 ? 1 : Math.Max(1e-3, Math.Abs(high) * 0.05);
        return (low - room, high + room);
    }

    internal void PaintAxes(string unitX)
    {
        Area inside = Inside;
        IReadOnlyList<double> rows = Ticks.Between(LowY, HighY, Math.Max(1, inside.Height / 2));
        // One figure tells no scale.
        for (int most = 1; rows.Count < 2 && most <= inside.Height && inside.Height > 2; most++)
            rows = Ticks.Between(LowY, HighY, most);
        int decimals = Ticks.Decimals(rows);
        for (int y = 0; y < inside.Height; y++)
            Area.Write(Left - 1, y, "│");
        foreach (double tick in rows)
        {
            int y = (int)Math.Round(RowOf(tick));
            Area.Write(0, y, TextWidth.Fit(Label(tick, decimals), Left - 2, right: true));
            Area.Write(Left - 1, y, "┤");
        }

        PaintBottom(unitX, inside);
    }

    // A figure that is cut is another figure: the nought before the point goes first; then only whole ones stay.
    private string Label(double tick, int decimals)
    {
        string figure = Area.Look.Figure(tick, Math.Abs(tick - Math.Round(tick)) < 1e-9 && Area.Look.Figure(tick, decimals).Length > Left - 2 ? 0 : decimals);
        string text = figure.Length <= Left - 2 ? figure : figure.StartsWith('0') ? figure[1..] : figure.StartsWith("-0", StringComparison.Ordinal) ? "-" + figure[2..] : figure;
        return text.Length <= Left - 2 ? text : "";
    }

    private void PaintBottom(string unitX, Area inside)
    {
        Area.Write(Left - 1, inside.Height, "└" + new string('─', inside.Width));
        IReadOnlyList<double> columns = Ticks.Between(LowX, HighX, Math.Max(1, inside.Width / 12));
        int decimals = Ticks.Decimals(columns);
        string unit = Area.Look.Of(unitX);
        int last = Area.Width - TextWidth.Of(unit) - 1;
        int free = 0;
        foreach (double tick in columns)
        {
            string text = Area.Look.Figure(tick, decimals);
            int x = Left + (int)Math.Round(ColumnOf(tick));
            Area.Write(x, inside.Height, "┬");
            int start = Math.Max(free, x - (text.Length / 2));
            if (start + text.Length < last)
                free = Area.Write(start, inside.Height + 1, text) + 1;
        }

        Area.Write(last, inside.Height + 1, unit);
    }
}
