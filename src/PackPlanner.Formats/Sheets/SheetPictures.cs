using PackPlanner.Formats.Pictures;

namespace PackPlanner.Formats.Sheets;

/// <summary>Pictures as a page of a sheet.</summary>
internal static class SheetPictures
{
    // A page is 186 mm wide: on so few pixels the smallest type, 19, is 12 points high. A picture by itself may be wider and is looked at closely.
    private const int PageWidthPx = 800;
    private const int PageHeightPx = 1020;
    private const int HalfAPagePx = 560;
    // Two of them, their strips and the title stand on Letter, which is 18 mm shorter than A4.
    private const int FlatPx = 460;

    /// <summary>Pages with those pictures that can be drawn, in their order; none when none can.</summary>
    /// <param name="input">The job.</param>
    /// <param name="title">What they show together.</param>
    /// <param name="cautions">Codes that stand in the pages.</param>
    /// <param name="names">Names of <see cref="PictureCatalogue"/>.</param>
    internal static IEnumerable<SheetPage> Page(SheetInput input, string title, IReadOnlyList<string> cautions, params string[] names)
    {
        List<SheetBlock> page = [];
        int heightPx = 0;
        foreach ((string name, Chart chart) in names.Select(name => PictureCatalogue.All.Single(picture => picture.Name == name))
            .Where(picture => picture.WhyNot(input) is null).SelectMany(picture => picture.Charts(input)))
        {
            FitToPaper(chart);
            if (page.Count > 0 && heightPx + chart.HeightPx > PageHeightPx)
            {
                yield return new SheetPage(title, "", [.. page], cautions);
                (page, heightPx) = ([], 0);
            }

            page.Add(new SheetBlock($"<div class=\"picture\">{Inline(chart.Svg(name))}</div>\n", chart.HeightPx > HalfAPagePx));
            heightPx += chart.HeightPx;
        }

        if (page.Count > 0)
            yield return new SheetPage(title, "", page, cautions);
    }

    private static void FitToPaper(Chart chart)
    {
        // What is wide by itself, as a ride is, may be flatter on paper.
        if (chart.HeightPx == Chart.UsualHeightPx)
            chart.HeightPx = FlatPx;
        chart.HeightPx = Math.Min(chart.HeightPx, PageHeightPx);
        chart.WidthPx = PageWidthPx;
    }

    // Inside HTML the name space goes without saying.
    private static string Inline(string svg) => svg
        .Replace(" xmlns=\"http://www.w3.org/2000/svg\"", "", StringComparison.Ordinal)
        .Replace(" xmlns:xlink=\"http://www.w3.org/1999/xlink\"", "", StringComparison.Ordinal);
}
