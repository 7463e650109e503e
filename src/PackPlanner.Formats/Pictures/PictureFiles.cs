using System.Text;
using PackPlanner.Formats.Sheets;

namespace PackPlanner.Formats.Pictures;

/// <summary>Pictures of a job as files.</summary>
public static class PictureFiles
{
    /// <summary>Draws pictures.</summary>
    /// <param name="input">What they are drawn from.</param>
    /// <param name="pictures">Which; each must be possible.</param>
    /// <returns>Names of pictures, names of files, contents: a PNG and an SVG for each chart, the same bytes each time.</returns>
    public static IReadOnlyList<(string Picture, string File, byte[] Bytes)> Of(SheetInput input, IEnumerable<Picture> pictures)
    {
        List<(string Picture, string File, byte[] Bytes)> files = [];
        foreach (Picture picture in pictures)
        {
            foreach ((string name, Chart chart) in picture.Charts(input))
            {
                files.Add((picture.Name, $"{name}.png", chart.Png()));
                files.Add((picture.Name, $"{name}.svg", Encoding.UTF8.GetBytes(chart.Svg(name) + "\n")));
            }
        }

        return files;
    }
}
