using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Pictures;
using PackPlanner.Formats.Sheets;
using SkiaSharp;

namespace PackPlanner.Tests.Formats.Sheets;

/// <summary>Which pole of a lying round cell lies at which end, as drawings say it: against the layout's own poles, from above and mirrored.</summary>
public class LyingCellsTests
{
    // As many groups as turn the string round, so that plus lies at one end in some and at the other in the rest.
    private static readonly Lazy<SheetInput> Across = new(() => Input("x", JobPlacement.AsFitted));
    private static readonly Lazy<SheetInput> Along = new(() => Input("y", JobPlacement.AsFitted));
    private static readonly Lazy<SheetInput> Turned = new(() => Input("x", JobPlacement.AsFitted with { Turned = [2] }));
    private static readonly Lazy<SheetInput> Swapped = new(() => Input("x", JobPlacement.AsFitted with { EndsSwapped = true }));

    public static TheoryData<string, bool> Drawings => new() { { "x", false }, { "x", true }, { "y", false }, { "y", true }, { "turned", false }, { "turned", true }, { "swapped", false }, { "swapped", true } };

    [Theory]
    [MemberData(nameof(Drawings))]
    public void Each_pole_is_drawn_at_its_end_and_changes_sides_in_the_mirror(string which, bool below)
    {
        SheetInput input = Named(which);
        int seen = 0;
        List<string> ends = [];
        foreach (double layer in PlaceDrawing.Layers(input.Places))
        {
            PlacedLabel[] cells = [.. input.Places.Where(place => place.Position is not null && Math.Abs(place.Place.Centre.Z - layer) <= 1)];
            Drawn[] drawn = [.. Read(PlaceDrawing.Svg(input.Places, layer, below, PlacePart.Whole(input.Places), input.Case))];
            Assert.Equal(cells.Select(cell => cell.Position!.Value), drawn.Select(cell => cell.Group));
            foreach ((PlacedLabel cell, Drawn at) in cells.Zip(drawn))
            {
                // Of the layout itself: the place's own plus, the other way round where the user turned the group or swapped the ends.
                string plus = cell.Place.Plus!;
                bool other = input.Job.Placement.EndsSwapped ^ input.Job.Placement.Turned.Contains(cell.Position!.Value);
                int toward = (plus[0] == '+' ? 1 : -1) * (other ? -1 : 1);
                // On paper the back is at the top, and from below left and right change.
                (double x, double y) = plus[1] == 'x' ? (below ? -toward : toward, 0) : (0, -toward);
                Assert.Equal((x, y), (Math.Sign(Math.Round(at.PlusX - at.X, 1)), Math.Sign(Math.Round(at.PlusY - at.Y, 1))));
                Assert.Equal((-x, -y), (Math.Sign(Math.Round(at.MinusX - at.X, 1)), Math.Sign(Math.Round(at.MinusY - at.Y, 1))));
                ends.Add(plus);
                seen++;
            }
        }

        Assert.Equal(12, seen);
        Assert.Equal(2, ends.Distinct().Count());
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_picture_has_the_signs_in_ink_where_the_drawing_says(bool below)
    {
        SheetInput input = Across.Value;
        string svg = PlaceDrawing.Svg(input.Places, PlaceDrawing.Layers(input.Places)[0], below, PlacePart.Whole(input.Places), input.Case);
        using SKBitmap picture = SKBitmap.Decode(SvgPng.Of(svg));
        Drawn[] drawn = [.. Read(svg)];
        Assert.NotEmpty(drawn);
        Assert.All(drawn, cell =>
        {
            Assert.True(HasUpright(picture, cell.PlusX, cell.PlusY), $"no + in group {cell.Group}");
            Assert.True(HasInk(picture, cell.MinusX, cell.MinusY, 0), $"no - in group {cell.Group}");
            Assert.False(HasUpright(picture, cell.MinusX, cell.MinusY), $"+ for - in group {cell.Group}");
        });
    }

    [Fact]
    public void The_words_tell_of_signs_that_are_drawn_and_the_list_says_at_which_end_plus_is()
    {
        IReadOnlyList<SheetPage> pages = PlaceSheet.Pages(Across.Value);
        SheetInput unsettled = Across.Value with { Places = [.. Across.Value.Places.Select(place => place with { Place = place.Place with { Plus = null } })] };

        Assert.Contains("Sign: the pole at that end of the cell.", pages[0].Intro, StringComparison.Ordinal);
        Assert.Contains("No sign is drawn", PlaceSheet.Pages(unsettled)[0].Intro, StringComparison.Ordinal);
        Assert.DoesNotContain("pole at that end", PlaceSheet.Pages(unsettled)[0].Intro, StringComparison.Ordinal);
        Assert.Equal(["right", "left"], ((string[])["+x", "-x"]).Select(plus => Regex.Match(ListOf(plus), "<td data-head=\"plus at the\">([a-z]*)</td>").Groups[1].Value));
        Assert.Contains("No sign is drawn", string.Concat(PlaceSheet.Caption(unsettled, below: false, "")), StringComparison.Ordinal);
    }

    // The list by label of a job whose first group has plus at that end.
    private static string ListOf(string plus)
    {
        PlacedLabel[] first = [.. Across.Value.Places.Where(place => place.Position is not null).Select(place => place with { Position = 1, Place = place.Place with { Plus = plus } })];
        JobGroup group = SheetCases.Trike.Value.Groups[0];
        return PlaceSheet.Pages(Across.Value with { Places = first, Groups = [group] })[^1].Body;
    }

    // The upright of a plus reaches a millimetre above and below its bar; a minus has no ink there.
    private static bool HasUpright(SKBitmap picture, double x, double y) => HasInk(picture, x, y, -1) && HasInk(picture, x, y, 1);

    private static bool HasInk(SKBitmap picture, double x, double y, double fromTheBarMm)
    {
        const double DotsPerMm = 200 / 25.4;
        // The bar stands a little above the middle of the letter's height.
        int column = (int)Math.Round(x * DotsPerMm);
        foreach (double off in (double[])[-0.3, 0, 0.3])
        {
            int row = (int)Math.Round((y + fromTheBarMm + off) * DotsPerMm);
            if (Enumerable.Range(column - 1, 3).Any(at => picture.GetPixel(at, row).Red < 128))
                return true;
        }

        return false;
    }

    private static IEnumerable<Drawn> Read(string svg) =>
        Regex.Matches(svg, """<text x="([0-9.]+)" y="([0-9.]+)" font-weight="bold" text-anchor="middle">\+</text><text x="([0-9.]+)" y="([0-9.]+)" font-weight="bold" text-anchor="middle">−</text><text x="([0-9.]+)" y="([0-9.]+)" textLength[^>]*>([0-9]+)</text>""")
            .Select(match => (double[])[.. match.Groups.Values.Skip(1).Select(group => double.Parse(group.Value, CultureInfo.InvariantCulture))])
            .Select(at => new Drawn(at[0], at[1] - Down, at[2], at[3] - Down, at[4], at[5] - Down, (int)at[6]));

    // Letters stand on a line that lies so far below their middle.
    private const double Down = 0.36 * PlacePart.TypeMm;

    private static SheetInput Named(string which) => (which switch { "x" => Across, "y" => Along, "turned" => Turned, _ => Swapped }).Value;

    private static SheetInput Input(string axis, JobPlacement placement)
    {
        string box = axis == "x" ? "[0,0,0,150,140,30]" : "[0,0,0,140,150,30]";
        string text = $$"""
            {"cavity":{"parts":[{"box":{{box}} }]},"cell":{"shape":"cylinder","diameterMm":21.2,"lengthMm":70.2,"massG":69.5,"axes":["{{axis}}"]},
             "clearance":{"wallMm":2,"endMm":2,"cellGapMm":0.8,"layerGapMm":4},"pack":{"series":6,"parallel":2,"linkReachMm":8,"jumpersAllowed":2} }
            """;
        JobHistory job = JobHistory.Of(new Job { Title = "lying", Placement = placement });
        AddedFiles added = Assert.IsType<Outcome<AddedFiles>.Given>(JobAdding.Add(job, "case.json", Encoding.UTF8.GetBytes(text))).Value;
        SheetInput input = SheetCases.Input(added.History);
        Assert.NotNull(input.Layout);
        Assert.All(input.Layout.Cells.Where(cell => cell.Group is not null), cell => Assert.Equal(axis == "x" ? Axis.X : Axis.Y, cell.RoundAlong));
        return input;
    }

    private sealed record Drawn(double PlusX, double PlusY, double MinusX, double MinusY, double X, double Y, int Group);
}
