using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Sheets;
using static PackPlanner.Tests.Formats.Sheets.SheetCases;

namespace PackPlanner.Tests.Formats.Sheets;

/// <summary>Volts to expect at the taps, and on which side the links lie.</summary>
public class TapSheetTests
{
    // By hand: four groups of two equal cells resting at 3.60, 3.61, 3.62 and 3.63 V stand at 3.60, 7.21, 10.83 and 14.46 V.
    [Fact]
    public void Tap_volts_add_up_from_pack_minus()
    {
        Job job = new() { Title = "four", Givens = Given(4, 2), AddedRows = [.. Enumerable.Range(0, 8).Select(i => Cell($"K{i + 1}", 3.60 + (i / 2 * 0.01)))] };
        JobHistory history = JobHistory.Of(job with { Grouping = new JobGrouping([["K1", "K2"], ["K3", "K4"], ["K5", "K6"], ["K7", "K8"]], Origin.You(Day)) });

        IReadOnlyList<SheetVolts.Tap> taps = SheetVolts.Of(Input(history).Groups);

        double[] expected = [0, 3.60, 7.21, 10.83, 14.46];
        Assert.All(taps.Zip(expected), pair => Assert.Equal(pair.Second, pair.First.Volts!.Value, 1e-9));
    }

    // Four groups at 3.626 V stand at 3.63, 7.25, 10.88 and 14.50 as printed; what a calculator takes between those is printed beside them.
    [Fact]
    public void Steps_printed_are_those_between_the_volts_printed()
    {
        Job job = new() { Title = "four", Givens = Given(4, 1), AddedRows = [.. Enumerable.Range(1, 4).Select(i => Cell($"K{i}", 3.626))] };
        string body = TapSheet.Pages(Input(JobHistory.Of(job with { Grouping = new JobGrouping([["K1"], ["K2"], ["K3"], ["K4"]], Origin.You(Day)) })))[0].Body;
        string[] cells = [.. Regex.Matches(body, "(?<=>)[0-9]+[.][0-9]{2}(?=<)").Select(match => match.Value)];

        foreach (string[] row in new[] { new[] { "3.63", "0.10", "3.63" }, ["7.25", "0.10", "3.62"], ["10.88", "0.10", "3.63"], ["14.50", "0.10", "3.62"] })
            Assert.Contains(string.Join(' ', row), string.Join(' ', cells));
    }

    // Source: [Kirchhoff], by hand: 3.6 V behind 10 mΩ and 3.57 V behind 20 mΩ settle at (2 x 3.6 + 3.57) / 3 = 3.59 V; 1 A flows, so that none is brought anywhere first.
    [Fact]
    public void Unequal_cells_settle_at_the_mean_weighted_by_conductance()
    {
        Job job = new()
        {
            Title = "two",
            Givens = Given(1, 2),
            AddedRows = [Cell("A", 3.6) with { ResistanceMilliohm = 10 }, Cell("B", 3.57) with { ResistanceMilliohm = 20 }],
            Grouping = new JobGrouping([["A", "B"]], Origin.You(Day)),
        };

        Assert.Equal(3.59, Input(JobHistory.Of(job)).Groups[0].RestV!.Value, 1e-9);
    }

    [Fact]
    public void A_missing_resting_voltage_leaves_the_taps_after_it_open()
    {
        Job job = new()
        {
            Title = "gap",
            Givens = Given(3, 1),
            AddedRows = [Cell("A", 3.6), Cell("B", 3.6) with { RestV = null }, Cell("C", 3.6)],
            Grouping = new JobGrouping([["A"], ["B"], ["C"]], Origin.You(Day)),
        };
        SheetInput input = Input(JobHistory.Of(job));

        Assert.Equal([0.0, 3.6, null, null], SheetVolts.Of(input.Groups).Select(tap => tap.Volts));
        Assert.Contains("no volts can be told", TapSheet.Pages(input)[0].Body, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3.6, 0.1)]
    [InlineData(20, 0.1)]
    [InlineData(54.6, 0.273)]
    public void A_tap_may_be_off_by_a_tenth_of_a_volt_or_half_a_percent(double volts, double tolerance) =>
        Assert.Equal(tolerance, TapCheck.Tolerance(volts), 1e-9);

    [Fact]
    public void The_underside_is_mirrored_and_every_sign_changes()
    {
        PlacePart whole = PlacePart.Whole(Trike.Value.Places);
        string above = PlaceDrawing.Svg(Trike.Value.Places, 38.1, below: false, whole, Trike.Value.Case);
        string below = PlaceDrawing.Svg(Trike.Value.Places, 38.1, below: true, whole, Trike.Value.Case);
        (double X, double Y, string Text)[] one = Marks(above);
        (double X, double Y, string Text)[] other = Marks(below);

        Assert.Equal(117, one.Length);
        double width = double.Parse(Regex.Match(above, "viewBox=\"0 0 ([0-9.]+)").Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.All(one, mark =>
        {
            string flipped = (mark.Text[0] == '+' ? "−" : "+") + mark.Text[1..];
            Assert.Contains(other, turned => Math.Abs(turned.X - (width - mark.X)) < 0.02 && Math.Abs(turned.Y - mark.Y) < 0.02 && turned.Text == flipped);
        });
    }

    // The sheet's sides against the drawing: a link joins the plus of k to the minus of k + 1 on one side, so where the
    // drawing from above shows plus of k it must show minus of k + 1.
    [Fact]
    public void Links_lie_on_the_side_where_the_drawing_shows_both_ends()
    {
        foreach (int link in Enumerable.Range(1, 12))
        {
            string side = TapSheet.SideOf(Trike.Value, link)!;
            bool above = side == "above";
            Assert.All(Trike.Value.Places.Where(place => place.Position == link), place => Assert.Equal(above, place.PlusUp));
            Assert.All(Trike.Value.Places.Where(place => place.Position == link + 1), place => Assert.Equal(!above, place.PlusUp));
        }
    }

    private static (double X, double Y, string Text)[] Marks(string svg) =>
    [
        .. Regex.Matches(svg, "<text x=\"([0-9.]+)\" y=\"([0-9.]+)\" textLength=\"[0-9.]+\" lengthAdjust=\"spacingAndGlyphs\" font-weight=\"bold\" text-anchor=\"middle\">([+−][0-9]+)</text>")
            .Select(match => (double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture), double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture), match.Groups[3].Value)),
    ];

    [Fact]
    public void A_reading_that_is_outside_stands_on_the_sheets_before_which_it_matters()
    {
        Job job = new()
        {
            Title = "tap",
            Givens = Given(2, 1),
            AddedRows = [Cell("A", 3.6), Cell("B", 3.6)],
            Grouping = new JobGrouping([["A"], ["B"]], Origin.You(Day)),
            TapReadings = new Dictionary<int, TapReading> { [1] = new(3.6, Origin.You(Day)), [2] = new(0, Origin.You(Day)) }.ToImmutableSortedDictionary(),
        };
        SheetInput input = Input(JobHistory.Of(job));

        foreach (string sheet in (string[])["taps", "first-charge"])
            Assert.Contains("tap B2: 0.00 V read, 7.20 V expected from pack minus: stop, do not plug in", SheetDocument.Of(input, sheet, SheetCatalogue.All.Single(one => one.Name == sheet).Pages(input)), StringComparison.Ordinal);
        string[] rows = TapSheet.Csv(input).ToCsv(decimalComma: false).Split('\n');
        Assert.Contains(",3.6,ok,", rows[2], StringComparison.Ordinal);
        Assert.Contains(",0,outside: do not plug in,", rows[3], StringComparison.Ordinal);
    }

    [Fact]
    public void A_drawing_that_is_a_file_of_its_own_says_whose_it_is_which_side_and_what_comes_first()
    {
        (string Sheet, string File, byte[] Bytes)[] files = [.. SheetFiles.Of(Trike.Value, SheetCatalogue.All.Where(sheet => sheet.Name == "place"), decimalComma: false)];

        foreach ((string side, string says) in new[] { ("above", "From above. "), ("below", "From below, mirrored. ") })
        {
            string svg = System.Text.Encoding.UTF8.GetString(files.Single(file => file.File == $"place-{side}.svg").Bytes);
            string words = string.Join(' ', Regex.Matches(svg, "text-anchor=\"start\">([^<]*)</text>").Select(match => match.Groups[1].Value));
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{Trike.Value.Job.Title} (invented), rev {Trike.Value.Revision}, {Trike.Value.Date:yyyy-MM-dd}"), words, StringComparison.Ordinal);
            Assert.Contains(says, words, StringComparison.Ordinal);
            Assert.Contains("must read 0 V", words, StringComparison.Ordinal);
            // The last line lies within the drawing.
            double high = double.Parse(Regex.Match(svg, "viewBox=\"0 0 [0-9.]+ ([0-9.]+)\"").Groups[1].Value, CultureInfo.InvariantCulture);
            Assert.All(Regex.Matches(svg, "<text x=\"2\" y=\"([0-9.]+)\"").Select(match => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)), y => Assert.InRange(y, 1, high - 0.5));
            Assert.True(files.Single(file => file.File == $"place-{side}.png").Bytes.Length > 1000);
        }

        // 310 x 190 mm inside with the clearances of the scenario; what is left is said, since the frame is drawn round the cells.
        Assert.Contains("no wall: room left in the space", PlaceSheet.Pages(Trike.Value)[0].Intro, StringComparison.Ordinal);
    }
}
