using System.Globalization;
using System.Text.RegularExpressions;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace PackPlanner.Formats.Pictures;

/// <summary>A sheet of plot with the house's type and greys. Everything is drawn in black and greys: ink, shape and words tell things apart.</summary>
internal sealed partial class Chart
{
    /// <summary>Size of type on axes and marks, pixels: ten at half size.</summary>
    internal const float Type = 20;

    internal static readonly Color Ink = Color.FromHex("#000000");
    internal static readonly Color Dark = Color.FromHex("#4d4d4d");
    internal static readonly Color Middle = Color.FromHex("#a0a0a0");
    internal static readonly Color Light = Color.FromHex("#dcdcdc");
    internal static readonly Color Paper = Color.FromHex("#ffffff");

    internal const int UsualHeightPx = 600;

    private const int MostOfATitle = 48;
    private const int MostOfAName = 22;

    internal Chart(SheetInput input, string title, string xLabel, string yLabel)
    {
        PictureFont.Use();
        Plot = new Plot();
        Plot.Font.Set(PictureFont.Family);
        Plot.FigureBackground.Color = Paper;
        Plot.DataBackground.Color = Paper;
        Plot.Grid.MajorLineColor = Light;
        Plot.Grid.MajorLineWidth = 1;
        Plot.Title($"{title}\n{JobName(input)}", Type + 2);
        Plot.Axes.Title.Label.Font = PictureFont.Bold;
        // Over the whole figure: beside long names the plot alone is too narrow for it.
        Plot.Axes.Title.FullFigureCenter = true;
        Plot.XLabel(xLabel, Type);
        Plot.YLabel(yLabel, Type);
        Plot.Axes.Bottom.TickGenerator = new NumericAutomatic { LabelFormatter = Ungrouped };
        Plot.Axes.Left.TickGenerator = new NumericAutomatic { LabelFormatter = Ungrouped };
        Plot.Axes.Bottom.TickLabelStyle.FontSize = Type;
        Plot.Axes.Left.TickLabelStyle.FontSize = Type;
        Plot.Legend.FontSize = Type - 1;
        Plot.Legend.ShadowColor = Colors.Transparent;
        Plot.Legend.OutlineWidth = 0;
    }

    internal Plot Plot { get; }

    internal int WidthPx { get; set; } = 960;

    internal int HeightPx { get; set; } = UsualHeightPx;

    /// <summary>A difference in whole units with its sign; nothing is neither gained nor lost.</summary>
    internal static string Signed(double difference) => Figures.Fixed(Math.Abs(difference), 0) is var size && size == "0" ? "0" : $"{(difference > 0 ? "+" : "−")}{size}";

    /// <summary>Words at a point of the plot.</summary>
    internal ScottPlot.Plottables.Text Words(string text, double x, double y, Alignment alignment, float size = Type, bool bold = false)
    {
        ScottPlot.Plottables.Text words = Plot.Add.Text(text, x, y);
        words.LabelFontName = PictureFont.Family;
        if (bold)
            words.LabelStyle.Font = PictureFont.Bold;
        words.LabelFontSize = size;
        words.LabelFontColor = Ink;
        words.LabelAlignment = alignment;
        return words;
    }

    /// <summary>Bars, upright or lying.</summary>
    internal void Bars(IEnumerable<Bar> bars, bool lying = false)
    {
        Bar[] all = [.. bars];
        foreach (Bar bar in all)
            (bar.LineColor, bar.LineWidth) = (Ink, 1.5f);
        Plot.Add.Bars(all).Horizontal = lying;
    }

    /// <summary>Whole numbers on the bottom axis, one at each place; of very many only each second, fifth, tenth.</summary>
    internal void Numbers(int last)
    {
        int step = last switch { <= 24 => 1, <= 48 => 2, <= 120 => 5, <= 240 => 10, _ => 50 };
        int[] shown = [.. Enumerable.Range(1, last).Where(number => number == 1 || number % step == 0)];
        Plot.Axes.Bottom.TickGenerator = new NumericManual(
            [.. shown.Select(number => (double)number)], [.. shown.Select(number => Figures.Fixed(number, 0))]);
    }

    /// <summary>Names down the left axis, the first at the top, at -1, -2 and so on; long ones in lines under one another.</summary>
    /// <param name="names">The names.</param>
    /// <param name="linePx">Height of a line of type in a row.</param>
    internal void Names(IReadOnlyList<string> names, int linePx = 26)
    {
        string[] folded = [.. names.Select(Folded)];
        HeightPx = 190 + (names.Count * ((folded.Max(name => name.Count(mark => mark == '\n') + 1) * linePx) + 8));
        Plot.Axes.Left.TickGenerator = new NumericManual([.. folded.Select((_, i) => -(double)(i + 1))], folded);
        Plot.Axes.Left.MajorTickStyle.Length = 0;
        Plot.Grid.YAxisStyle.IsVisible = false;
    }

    internal byte[] Png() => Plot.GetImage(WidthPx, HeightPx).GetImageBytes(ImageFormat.Png);

    /// <summary>The picture as SVG that names no font of ours, says what it shows, and can stand beside others in one page.</summary>
    internal string Svg(string name)
    {
        string svg = Plot.GetSvgXml(WidthPx, HeightPx);
        svg = svg[svg.IndexOf("<svg", StringComparison.Ordinal)..].TrimEnd();
        svg = FamilyMark().Replace(svg, "font-family=\"DejaVu Sans, Verdana, Arial, sans-serif\"");
        // Ids are counted through a whole process: numbered anew they are the same each time, and belong to this picture alone.
        Dictionary<string, string> ids = new(StringComparer.Ordinal);
        svg = IdMark().Replace(svg, mark =>
        {
            string id = mark.Groups[2].Value;
            ids.TryAdd(id, string.Create(CultureInfo.InvariantCulture, $"{name}-{ids.Count + 1}"));
            return mark.Groups[1].Value + ids[id];
        });
        return SvgMark().Replace(svg, $"<svg viewBox=\"0 0 {WidthPx} {HeightPx}\" role=\"img\" aria-label=\"{Html.Text(name)}\" ", 1);
    }

    // No mark between thousands: a comma there is a decimal mark to half of the readers.
    private static string Ungrouped(double value) => Math.Round(value, 9).ToString(CultureInfo.InvariantCulture).Replace('-', '−');

    private static string Folded(string name)
    {
        List<string> lines = [""];
        foreach (string word in name.Split(' '))
        {
            if (lines[^1].Length > 0 && lines[^1].Length + word.Length >= MostOfAName)
                lines.Add("");
            lines[^1] += lines[^1].Length == 0 ? word : " " + word;
        }

        return string.Join('\n', lines);
    }

    private static string JobName(SheetInput input)
    {
        string title = OneLine.Of(input.Job.Title);
        if (title.Length > MostOfATitle)
            title = string.Concat(title.EnumerateRunes().Take(MostOfATitle - 1)) + "…";
        return $"{title}{(input.Job.IsDemo ? " (invented data)" : "")}, rev {input.Revision}";
    }

    [GeneratedRegex("font-family=\"[^\"]*\"")]
    private static partial Regex FamilyMark();

    [GeneratedRegex("(id=\"|url\\(#)([^\")]+)")]
    private static partial Regex IdMark();

    [GeneratedRegex("<svg ")]
    private static partial Regex SvgMark();
}
