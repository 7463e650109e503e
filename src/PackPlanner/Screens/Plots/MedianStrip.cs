using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Plots;

/// <summary>
/// How far each of many lies from the middle of all: a row for each that stands out, the farthest first, and one last row
/// for all others. The same for 4 groups as for 96.
/// </summary>
internal static class MedianStrip
{
    private const int StripAt = 19;

    // Farther than three usual spreads, but not what is small against the farthest: nearly equal ones would all stand out.
    private const double SpreadsApart = 3;
    private const double LeastShare = 0.1;

    /// <summary>Draws the strip.</summary>
    /// <param name="area">Where; the first row is the scale.</param>
    /// <param name="apart">Value less the median, one for each; NaN where there is no reading.</param>
    /// <param name="unit">Of the values.</param>
    /// <param name="always">Numbers, from 1, that have a row of their own whatever they read.</param>
    internal static void Paint(Area area, IReadOnlyList<double> apart, string unit, IReadOnlyCollection<int> always)
    {
        int half = (area.Width - StripAt - 2) / 2;
        int[] known = [.. Enumerable.Range(1, apart.Count).Where(number => double.IsFinite(apart[number - 1]))];
        if (area.Height < 3 || half < 4 || known.Length == 0)
            return;
        double Of(int number) => apart[number - 1];
        double farthest = known.Max(number => Math.Abs(Of(number)));
        double step = farthest > 0 ? Ticks.StepOf(farthest / half) : 1;
        double limit = Math.Max(SpreadsApart * Spread(known.Select(Of)), LeastShare * farthest);
        int[] wanted = [.. known.Where(number => always.Contains(number) || (farthest > 0 && Math.Abs(Of(number)) > limit)).OrderByDescending(number => Math.Abs(Of(number)))];
        int rows = Math.Min(wanted.Length, area.Height - 2);
        area.Write(3, 0, area.Look.Of($"{TickText(area.Look, step)} {unit} a dot"));
        area.Write(StripAt, 0, TextWidth.Fit("less", half) + "m" + TextWidth.Fit("more", half, right: true));
        for (int i = 0; i < rows; i++)
            Row(area, 1 + i, wanted[i], Of(wanted[i]), step, half, always.Contains(wanted[i]), unit);
        Others(area, 1 + rows, rows > 0, [.. known.Except(wanted.Take(rows)).Select(Of)], apart.Count - known.Length, step, unit);
    }

    private static void Row(Area area, int y, int number, double value, double step, int half, bool isChosen, string unit)
    {
        Ink ink = isChosen ? Ink.Bold : Ink.Plain;
        int dots = Math.Clamp((int)Math.Round(value / step), -half, half);
        char[] strip = [.. new string('.', (2 * half) + 1)];
        for (int x = Math.Min(0, dots); x <= Math.Max(0, dots); x++)
            strip[half + x] = '-';
        strip[half] = 'm';
        if (dots != 0)
            strip[half + dots] = '#';
        area.Write(1, y, TextWidth.Fit(number.ToString(CultureInfo.InvariantCulture), 4, right: true), ink);
        area.Write(6, y, TextWidth.Fit($"{(dots > 0 ? "+" : "")}{TickText(area.Look, value, step)} {unit}", 12, right: true), ink);
        area.Write(StripAt, y, new string(strip), ink);
    }

    private static void Others(Area area, int y, bool wasAny, double[] others, int unread, double step, string unit)
    {
        List<string> words = [];
        if (others.Length > 0)
        {
            double within = others.Max(Math.Abs);
            // Without a row above there is nothing that they are other than.
            words.Add($"{(wasAny ? $"{others.Length} others" : others.Length > 1 ? $"all {others.Length}" : "the only one")} {(within < step / 100 ? "at the median" : $"within {TickText(area.Look, within, within)} {unit}")}");
        }

        if (unread > 0)
            words.Add($"{unread} without a reading");
        area.Write(3, y, TextWidth.Cut(area.Look.Of(string.Join("; ", words)), area.Width - 4));
    }

    // 1.4826 makes the middle of the distances a standard deviation where they are spread normally.
    private static double Spread(IEnumerable<double> values) => 1.4826 * Robust.UpperMedian(values.Select(Math.Abs));

    // As many decimals as tell two dots apart.
    private static string TickText(Look look, double value, double? step = null) =>
        look.Figure(value, Math.Clamp(-(int)Math.Floor(Math.Log10(Math.Max(1e-9, Math.Abs(step ?? value))) + 1e-9), 0, 6));
}
