using System.Globalization;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.Sheets;

/// <summary>Where each cell stands: from above, mirrored from below, and by label.</summary>
internal static class PlaceSheet
{
    // Lines of labels on a page, and what one line of their column holds.
    private const int LinesOnAPage = 20;
    private const int MarksInALine = 50;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input)
    {
        string[] round = input.Layout!.Cells.Any(cell => cell.RoundAlong is not null) ? ["caution-18"] : [];
        string[] parallel = input.Layout.Parallel > 1 ? ["caution-20a"] : [];
        string[] above = [.. parallel.Length > 0 ? parallel : ["caution-20b"], .. round];
        IReadOnlyList<double> layers = PlaceDrawing.Layers(input.Places);
        List<SheetPage> pages = [];
        string room = Room(input);
        for (int layer = 0; layer < layers.Count; layer++)
        {
            string which = layers.Count == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", layer {layer + 1} of {layers.Count} from below");
            pages.AddRange(Drawn(
                input, layers[layer], below: false, "Placement from above" + which,
                $"<p>Number: the group. {SignOf(input)} Edges: mm from the left and from the front.{room}</p>\n", above));
            pages.AddRange(Drawn(
                input, layers[layer], below: true, "Placement from below, mirrored" + which,
                $"<p>The same pack turned over left to right: left and right change{TurnedOver(input)}. Compare a corner with the drawing from above.</p>\n", [.. parallel, "caution-20b"]));
        }

        if (input.Groups.Count > 0)
            pages.AddRange(ByLabel(input));
        return pages;
    }

    /// <summary>What the drawing says when it stands alone: whose it is, from where it is seen, and what comes before every link.</summary>
    /// <param name="input">The job.</param>
    /// <param name="below">Seen from below.</param>
    /// <param name="layer">Which layer, where there are several.</param>
    internal static IReadOnlyList<string> Caption(SheetInput input, bool below, string layer) =>
    [
        string.Create(CultureInfo.InvariantCulture, $"{input.Job.Title}{(input.Job.IsDemo ? " (invented)" : "")}, rev {input.Revision}, {input.Date:yyyy-MM-dd}"),
        $"{(below ? "From below, mirrored" : "From above")}{layer}. Number: the group. {SignOf(input)} Edges in mm.{(below ? "" : Room(input))}",
        $"{CautionCatalogue.Of("caution-20b").Usual.ToString().ToUpperInvariant()}: {CautionCatalogue.Of("caution-20b").Title}. {CautionCatalogue.Of("caution-20b").DoNow}",
    ];

    // Only signs that are drawn are told of.
    private static string SignOf(SheetInput input) => (Stands(input), Lies(input)) switch
    {
        (true, true) => "Sign before the number: the end that faces you; sign at an end: the pole at that end of the cell.",
        (true, false) => "Sign: the end that faces you.",
        (false, true) => "Sign: the pole at that end of the cell.",
        _ => "No sign is drawn: which way round each cell goes is not settled.",
    };

    private static string TurnedOver(SheetInput input) =>
        (Stands(input) ? ", and so does every sign before a number" : "") + (Lies(input) ? "; each pole stays at its end of the cell" : "");

    private static bool Stands(SheetInput input) => input.Places.Any(place => place.Position is not null && place.PlusUp is not null);

    private static bool Lies(SheetInput input) => input.Places.Any(place => place.Position is not null && place.PlusToward is not null);

    // The frame is drawn close round the cells and is no wall.
    private static string Room(SheetInput input) => input.Case is not null && input.Layout!.MarginMm is [var left, var right, var front, var back, ..]
        ? string.Create(CultureInfo.InvariantCulture, $" The frame lies round the places and is no wall: room left in the space beyond the clearances, mm: left {left:0.0}, right {right:0.0}, front {front:0.0}, back {back:0.0}.")
        : " The frame lies round the places and is no wall.";

    private static IEnumerable<SheetPage> Drawn(SheetInput input, double layerMm, bool below, string title, string intro, string[] cautions)
    {
        (IReadOnlyList<PlacePart> parts, int onAPage) = PlacePart.Of(input.Places);
        bool foot = onAPage == 1;
        return SheetPage.Evenly(parts, onAPage).Select(some =>
        {
            string[] drawings = [.. some.Select(part => PlaceDrawing.Svg(input.Places, layerMm, below, part, input.Case))];
            string hatched = drawings.Any(drawing => drawing.Contains(PlaceDrawing.Walls, StringComparison.Ordinal)) ? " Hatched: walls, and what must stay free." : "";
            return new SheetPage(
                title + Named(some), intro.Replace("</p>", hatched + "</p>", StringComparison.Ordinal),
                [.. drawings.Select(drawing => new SheetBlock($"<div class=\"drawing\">{drawing}</div>\n", foot))],
                cautions);
        });
    }

    private static string Named(PlacePart[] parts) => parts[0].Count == 1 ? ""
        : string.Create(CultureInfo.InvariantCulture, $", {(parts.Length == 1 ? "part" : "parts")} {string.Join(" and ", parts.Select(part => part.Number))} of {parts[0].Count}");

    // In the order in which JobPlaces fills them: from the back row to the front, from left to right.
    private static IEnumerable<SheetPage> ByLabel(SheetInput input)
    {
        ILookup<int, PlacedLabel> byGroup = input.Places.Where(place => place.Position is not null).ToLookup(place => place.Position!.Value);
        int lines = (input.Groups.Max(group => group.Cells.Sum(cell => cell.Label.Length + 1)) + MarksInALine - 1) / MarksInALine;
        return SheetPage.Rows(
            "Which cell stands where",
            "<p>Cells of a group in the order of their places seen from above: from the back (top of the drawing) to the front, from left to right.</p>\n",
            ["group", Stands(input) ? "up" : "plus at the", "cells from back to front", "done"],
            [
                .. Enumerable.Range(1, input.Groups.Count).Select(group => (IReadOnlyList<string>)
                [
                    $"<b class=\"num\">{group.ToString(CultureInfo.InvariantCulture)}</b>",
                    Up(byGroup[group]),
                    string.Join(" ", JobPlaces.ByHand(byGroup[group])
                        .Select(place => $"<span class=\"num\">{Html.Text(place.Label ?? "-")}</span>")),
                    Html.Tick,
                ]),
            ],
            Math.Max(2, LinesOnAPage / lines),
            input.Layout!.Parallel > 1 ? "caution-20a" : "caution-20b");
    }

    private static string Up(IEnumerable<PlacedLabel> cells) => (cells.First().PlusUp, cells.First().PlusToward) switch
    {
        (true, _) => "<b class=\"num\">+</b>",
        (false, _) => "<b class=\"num\">−</b>",
        (_, "-x") => "left",
        (_, "+x") => "right",
        (_, "-y") => "front",
        (_, "+y") => "back",
        _ => "",
    };
}
