using PackPlanner.Formats.Pictures;

namespace PackPlanner.Formats.Sheets;

/// <summary>Pictures as a page of a sheet.</summary>
internal static class SheetPictures
{
    /// <summary>A page with those pictures that can be drawn; none when none can.</summary>
    /// <param name="input">The job.</param>
    /// <param name="title">What they show together.</param>
    /// <param name="cautions">Codes that stand in the page.</param>
    /// <param name="names">Names of <see cref="PictureCatalogue"/>, two at most: a page holds no more.</param>
    internal static IEnumerable<SheetPage> Page(SheetInput input, string title, IReadOnlyList<string> cautions, params string[] names)
    {
        Picture[] pictures = [.. names.Select(name => PictureCatalogue.All.Single(picture => picture.Name == name)).Where(picture => picture.WhyNot(input) is null)];
        if (pictures.Length > 0)
            yield return new SheetPage(title, string.Concat(pictures.SelectMany(picture => picture.Charts(input)).Select(pair => $"<div class=\"picture\">{Inline(pair.Chart.Svg(pair.Name))}</div>\n")), cautions);
    }

    // Inside HTML the name space goes without saying.
    private static string Inline(string svg) => svg
        .Replace(" xmlns=\"http://www.w3.org/2000/svg\"", "", StringComparison.Ordinal)
        .Replace(" xmlns:xlink=\"http://www.w3.org/1999/xlink\"", "", StringComparison.Ordinal);
}
