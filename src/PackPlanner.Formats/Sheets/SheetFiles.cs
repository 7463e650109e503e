using System.Text;
using PackPlanner.Formats.Files;
using PackPlanner.Formats.Pictures;

namespace PackPlanner.Formats.Sheets;

/// <summary>Writes sheets as files.</summary>
public static class SheetFiles
{
    /// <summary>Makes the files of some sheets.</summary>
    /// <param name="input">What they are made from.</param>
    /// <param name="sheets">Which sheets; each must be possible.</param>
    /// <param name="decimalComma">Comma as the decimal mark in tables for spreadsheets.</param>
    /// <returns>Names of sheets, names of files, contents.</returns>
    public static IReadOnlyList<(string Sheet, string File, byte[] Bytes)> Of(SheetInput input, IEnumerable<Sheet> sheets, bool decimalComma)
    {
        List<(string Sheet, string File, byte[] Bytes)> files = [];
        void Add(string sheet, string file, string text) => files.Add((sheet, file, Encoding.UTF8.GetBytes(text)));
        foreach (Sheet sheet in sheets)
        {
            Add(sheet.Name, $"{sheet.Name}.html", SheetDocument.Of(input, sheet.Name, sheet.Pages(input)));
            if (sheet.Name == "labels")
                Add(sheet.Name, "labels.csv", LabelSheet.Csv(input).ToCsv(decimalComma));
            if (sheet.Name == "taps")
                Add(sheet.Name, "taps.csv", TapSheet.Csv(input).ToCsv(decimalComma));
            if (sheet.Name == "place")
            {
                IReadOnlyList<double> layers = PlaceDrawing.Layers(input.Places);
                for (int layer = 0; layer < layers.Count; layer++)
                {
                    string of = layers.Count == 1 ? "" : $"-layer-{layer + 1}";
                    foreach (bool below in (bool[])[false, true])
                    {
                        string name = $"place-{(below ? "below" : "above")}{of}";
                        string svg = PictureCaption.Under(
                            PlaceDrawing.Svg(input.Places, layers[layer], below, PlacePart.Whole(input.Places), input.Case),
                            PlaceSheet.Caption(input, below, layers.Count == 1 ? "" : $", layer {layer + 1} of {layers.Count} from below"));
                        Add(sheet.Name, $"{name}.svg", Standing(svg));
                        files.Add((sheet.Name, $"{name}.png", SvgPng.Of(svg)));
                    }
                }
            }
        }

        return files;
    }

    /// <summary>Writes them into a folder.</summary>
    /// <param name="folder">Made when it is missing.</param>
    /// <param name="files">From <see cref="Of"/>.</param>
    /// <returns>The paths in the same order, or why one could not be written.</returns>
    public static Outcome<IReadOnlyList<string>> Write(string folder, IReadOnlyList<(string Sheet, string File, byte[] Bytes)> files) =>
        FolderFiles.Write(folder, [.. files.Select(file => (file.File, file.Bytes))]);

    // Inside HTML the name space goes without saying; a file of its own must say it.
    private static string Standing(string svg) => svg.Replace("<svg ", "<svg xmlns=\"http://www.w3.org/2000/svg\" ", StringComparison.Ordinal) + "\n";
}
