using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Pictures;
using PackPlanner.Formats.Sheets;

namespace PackPlanner.Tests.Formats.Sheets;

/// <summary>Drawings of packs that the invented jobs do not have: layers, long rows, boxes with both poles on one face.</summary>
public class PlaceSheetTests
{
    private const string RoundCell = """{"shape":"cylinder","diameterMm":21.2,"lengthMm":70.2,"massG":69.5,"axes":["z"]}""";
    private const string BoxCell = """{"shape":"box","lengthMm":130,"thicknessMm":36,"heightMm":200,"massG":1980}""";

    // By hand: a box of 165 mm holds two layers of 70.2 mm cells with 8 mm between, ends of 3 mm: 154.4 mm.
    private static readonly Lazy<SheetInput> Tall = new(() => Input("[0,0,0,130,90,165]", RoundCell, 8, 4, 2));

    // By hand: 24 groups over more than a metre, so that no page of 186 mm shows it whole in type of 14 points.
    private static readonly Lazy<SheetInput> Long = new(() => Input("[0,0,0,1200,60,80]", RoundCell, 24, 4, 2));

    private static readonly Lazy<SheetInput> Boxes = new(() => Input("[0,0,0,500,200,230]", BoxCell, 10, 1, 40));

    [Fact]
    public void Each_layer_has_its_drawings_and_its_picture()
    {
        IReadOnlyList<SheetPage> pages = SheetCatalogue.All.Single(sheet => sheet.Name == "place").Pages(Tall.Value);
        IReadOnlyList<Chart> charts = LayoutPicture.Draw(Tall.Value);

        Assert.Equal(2, PlaceDrawing.Layers(Tall.Value.Places).Count);
        Assert.Equal(
            ["Placement from above, layer 1 of 2 from below", "Placement from below, mirrored, layer 1 of 2 from below", "Placement from above, layer 2 of 2 from below", "Placement from below, mirrored, layer 2 of 2 from below"],
            pages.Take(4).Select(page => page.Title));
        Assert.Equal(2, charts.Count);
        Assert.Contains("Layer 2 of 2 from below, seen from above", charts[1].Svg("layout-layer-2"), StringComparison.Ordinal);
        Assert.Equal(2 * 16, Tall.Value.Places.Count(place => place.Position is not null));
        Assert.Equal(2 * 16, pages.Where(page => page.Title.StartsWith("Placement from above", StringComparison.Ordinal)).Sum(page => Numbers(page.Body).Count()));
    }

    [Fact]
    public void Pack_minus_is_pointed_at_where_it_is_and_told_of_where_it_is_not()
    {
        foreach (SheetInput input in new[] { Tall.Value, Long.Value, Boxes.Value })
        {
            foreach (SheetPage page in PlaceSheet.Pages(input).Where(page => page.Title.StartsWith("Placement", StringComparison.Ordinal)))
            {
                Assert.All(page.Blocks, block =>
                {
                    bool first = Numbers(block.Body).Contains("1");
                    Assert.Equal(first, block.Body.Contains(">pack minus this end<", StringComparison.Ordinal));
                    Assert.Equal(!first, block.Body.Contains(">pack minus is on another layer<", StringComparison.Ordinal) || block.Body.Contains(">pack minus: in the part ", StringComparison.Ordinal));
                });
            }
        }
    }

    // Drawings are in millimetres of paper: numbers are 14 points, 4.94 mm, and stand inside their cells.
    [Fact]
    public void Numbers_are_fourteen_points_high_and_inside_their_cells_on_every_drawing()
    {
        foreach (SheetInput input in new[] { Tall.Value, Long.Value, Boxes.Value })
        {
            (IReadOnlyList<PlacePart> parts, _) = PlacePart.Of(input.Places);
            foreach (PlacePart part in parts)
            {
                string svg = PlaceDrawing.Svg(input.Places, PlaceDrawing.Layers(input.Places)[0], below: false, part, input.Case);
                Match size = Regex.Match(svg, "viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\" width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\".* font-size=\"([0-9.]+)\"");

                Assert.Equal((size.Groups[1].Value, size.Groups[2].Value, "4.94"), (size.Groups[3].Value, size.Groups[4].Value, size.Groups[5].Value));
                Assert.True(part.WidthMm <= 186, $"{part.WidthMm} mm wide");
                Assert.True(part.HeightMm <= 150.5, $"{part.HeightMm} mm high");
                // A bold letter is at most 0.6 of its height wide, as common type faces have it (from memory).
                int marks = input == Boxes.Value ? 2 : 3;
                Assert.All(input.Places, place => Assert.True(0.56 * marks * 4.94 <= Math.Max(place.Place.SizeMm.X, place.Place.SizeMm.Y) * part.PaperPerMm));
            }
        }
    }

    [Fact]
    public void A_long_pack_is_drawn_in_parts_that_hold_each_cell_once()
    {
        (IReadOnlyList<PlacePart> parts, _) = PlacePart.Of(Long.Value.Places);

        Assert.True(parts.Count >= 2);
        Assert.All(Long.Value.Places, place => Assert.Single(parts, part => part.Holds(place)));
        Assert.Equal(96, PlaceSheet.Pages(Long.Value).Where(page => page.Title.Contains("from above", StringComparison.Ordinal)).Sum(page => Numbers(page.Body).Count()));
    }

    // Both poles of such a cell are on its top: each is drawn at its end, and links join what lies side by side.
    [Fact]
    public void A_box_shows_both_its_poles_at_their_ends()
    {
        SheetInput input = Boxes.Value;
        string svg = PlaceDrawing.Svg(input.Places, PlaceDrawing.Layers(input.Places)[0], below: false, PlacePart.Whole(input.Places), input.Case);

        Assert.All(input.Places.Where(place => place.Position is not null), place => Assert.Matches("^[+-][xy]$", place.PlusToward!));
        Assert.Equal(10, Regex.Count(svg, ">\\+</text>"));
        Assert.Equal(10, Regex.Count(svg, ">−</text>"));
        PlacedLabel one = input.Places.First(place => place.Position == 1);
        Assert.Equal((one.PlusToward![0] == '+' ? "-" : "+") + one.PlusToward[1], (one with { Turned = !one.Turned }).PlusToward);
    }

    // By hand: a block of 60 x 40 mm stands in the middle of the floor, which is 2400 square millimetres of hatching.
    [Fact]
    public void What_must_stay_free_is_hatched_where_it_is_on_either_side()
    {
        SheetInput input = Input("[0,0,0,220,150,80]", RoundCell, 8, 4, 2, """{"name":"post","box":[80,50,0,140,90,80]}""");
        PlacePart whole = PlacePart.Whole(input.Places);
        (double x0, double y0, double x1, double y1) = whole.Frame;
        double lineMm = (y1 - y0) / (int)((y1 - y0) * whole.PaperPerMm / 1.6);
        foreach (bool below in new[] { false, true })
        {
            string svg = PlaceDrawing.Svg(input.Places, PlaceDrawing.Layers(input.Places)[0], below, whole, input.Case);
            Match[] lines = [.. Regex.Matches(Regex.Match(svg, "class=\"walls\" .* d=\"([^\"]*)\"").Groups[1].Value, "M([0-9.]+) ([0-9.]+)H([0-9.]+)").Cast<Match>()];
            double covered = 0;
            foreach (Match line in lines)
            {
                double[] at = [.. Enumerable.Range(1, 3).Select(i => line.Groups[i]).Select(group => double.Parse(group.Value, CultureInfo.InvariantCulture) / whole.PaperPerMm)];
                (double left, double right) = below ? (x1 - at[2], x1 - at[0]) : (x0 + at[0], x0 + at[2]);
                double y = y1 - at[1];
                covered += (right - left) * lineMm;
                Assert.True(left > 79 && right < 141 && y > 49 && y < 91, line.Value);
            }

            Assert.InRange(covered, 2400 * 0.92, 2400 * 1.08);
        }

        Assert.Contains(PlaceSheet.Pages(input), page => page.Body.Contains("Hatched:", StringComparison.Ordinal));
        Assert.DoesNotContain(PlaceSheet.Pages(Tall.Value), page => page.Body.Contains("Hatched:", StringComparison.Ordinal));
    }

    private static SheetInput Input(string box, string cell, int series, int parallel, double reachMm, string keepOut = "")
    {
        string text = string.Create(CultureInfo.InvariantCulture, $$"""
            {"cavity":{"parts":[{"box":{{box}} }]},"keepOuts":[{{keepOut}}],"cell":{{cell}},"clearance":{"wallMm":2,"endMm":3,"cellGapMm":0.8,"layerGapMm":8},
             "pack":{"series":{{series}},"parallel":{{parallel}},"linkReachMm":{{reachMm}},"jumpersAllowed":1} }
            """);
        AddedFiles added = Assert.IsType<Outcome<AddedFiles>.Given>(JobAdding.Add(JobHistory.Of(new Job { Title = "drawn" }), "case.json", Encoding.UTF8.GetBytes(text))).Value;
        SheetInput input = Assert.IsType<Outcome<SheetInput>.Given>(SheetInput.Of(added.History, new DateOnly(2026, 11, 24), TestContext.Current.CancellationToken)).Value;
        Assert.NotNull(input.Layout);
        return input;
    }

    // The groups' numbers inside cells, without the edge's figures.
    private static IEnumerable<string> Numbers(string body) =>
        Regex.Matches(body, "font-weight=\"bold\" text-anchor=\"middle\"(?: transform=\"[^\"]*\")?>[+−]?([0-9]+)</text>").Select(match => match.Groups[1].Value);
}
