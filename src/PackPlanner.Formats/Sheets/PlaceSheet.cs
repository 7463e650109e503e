using System.Globalization;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.Sheets;

/// <summary>Where each cell stands: from above, mirrored from below, and by label.</summary>
internal static class PlaceSheet
{
    private const int GroupsOnAPage = 16;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input)
    {
        List<SheetPage> pages = [];
        string[] round = input.Layout!.Cells.Any(cell => cell.RoundAlong is not null) ? ["caution-18"] : [];
        IReadOnlyList<double> layers = PlaceDrawing.Layers(input.Places);
        for (int layer = 0; layer < layers.Count; layer++)
        {
            string which = layers.Count == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", layer {layer + 1} of {layers.Count} from below");
            pages.Add(new SheetPage(
                "Placement from above" + which,
                "<p>Number: the group. Sign: the end that faces you. Pack minus is at group 1.</p>\n" + Drawing(input, layers[layer], below: false),
                ["caution-20a", .. round]));
            pages.Add(new SheetPage(
                "Placement from below, mirrored" + which,
                "<p>The same pack turned over left to right: left and right change, and so does every sign. Compare a corner with the page before.</p>\n" + Drawing(input, layers[layer], below: true),
                ["caution-20a", "caution-20b"]));
        }

        if (input.Groups.Count > 0)
            pages.AddRange(ByLabel(input));
        return pages;
    }

    private static string Drawing(SheetInput input, double layerMm, bool below) =>
        $"<div class=\"drawing\">{PlaceDrawing.Svg(input.Case!, input.Places, layerMm, below)}</div>\n";

    // In the order in which JobPlaces fills them: from the back row to the front, from left to right.
    private static IEnumerable<SheetPage> ByLabel(SheetInput input)
    {
        ILookup<int, PlacedLabel> byGroup = input.Places.Where(place => place.Position is not null).ToLookup(place => place.Position!.Value);
        foreach (int[] groups in Enumerable.Range(1, input.Groups.Count).Chunk(GroupsOnAPage))
        {
            yield return new SheetPage(
                "Which cell stands where",
                "<p>Cells of a group in the order of their places seen from above: from the back (top of the drawing) to the front, from left to right.</p>\n"
                    + Html.Table(
                        ["group", "up", "cells from back to front", "done"],
                        groups.Select(group => (IReadOnlyList<string>)
                        [
                            $"<b class=\"num\">{group.ToString(CultureInfo.InvariantCulture)}</b>",
                            Up(byGroup[group]),
                            string.Join(" ", byGroup[group].OrderByDescending(place => Math.Round(place.Place.Centre.Y, 3)).ThenBy(place => place.Place.Centre.X).ThenBy(place => place.Place.Cell)
                                .Select(place => Html.Text(place.Label ?? "-"))),
                            Html.Tick,
                        ])),
                ["caution-20a"]);
        }
    }

    private static string Up(IEnumerable<PlacedLabel> cells) => cells.First().PlusUp switch
    {
        true => "<b class=\"num\">+</b>",
        false => "<b class=\"num\">−</b>",
        null => "",
    };
}
