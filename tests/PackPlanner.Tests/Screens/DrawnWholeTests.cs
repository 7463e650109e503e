using System.Text.RegularExpressions;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.CavityScreen;
using PackPlanner.Screens.PlaceScreen;

namespace PackPlanner.Tests.Screens;

/// <summary>Drawings of Cavity and Place: nothing over a wall, headings and labels that tell what they are there to tell.</summary>
public class DrawnWholeTests
{
    [Fact]
    public void No_cell_is_drawn_over_a_wall_or_what_must_stay_free_and_where_none_fits_the_heading_says_so()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        bench.Press("4");

        // As in the space itself: 5 rows of signs at 60 x 18 are too few for the rows of cells beside the tube.
        string[] small = Drawing(bench.Text(60, 18));
        Assert.All(small.Where(row => row.Contains('#') || row.Contains('─')), row => Assert.DoesNotMatch("[o·]", row));
        Assert.Contains("too small to draw; z", bench.Text(60, 18));
        string[] large = Drawing(bench.Text(80, 24));
        Assert.All(large.Where(row => row.Contains('#') || row.Contains('─')), row => Assert.DoesNotMatch("[o·]", row));
        Assert.Equal(bench.Desk.Answers.Fit!.Answer!.Cells.Count, large.Sum(row => Regex.Count(row, "[o·]")));
    }

    [Fact]
    public void The_key_of_the_layers_is_told_where_there_are_some_and_signs_of_lying_cells_are_explained()
    {
        using Bench bench = new();
        bench.TypeSpace("200 x 150 x 60");
        Assert.DoesNotContain("PgUp PgDn", bench.Text(120, 36));
        bench.Press("g", "End", "Enter");
        bench.Set("series", new JobValue.Number(4));
        bench.Set("parallel", new JobValue.Number(3));

        Assert.Contains("PgUp PgDn layer", bench.Text(120, 36));
        bench.Press("5");
        string place = bench.Text(120, 36);
        Assert.Contains("PgUp PgDn layer", place);
        Assert.Matches(@"seen from above, layer 1 of \d.*; o lies", place);
    }

    [Theory]
    [InlineData(60, 18)]
    [InlineData(80, 24)]
    [InlineData(120, 36)]
    public void The_heading_of_places_is_said_shorter_instead_of_cut(int width, int height)
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");
        bench.Press("5", "z", "z");

        foreach (string key in new[] { "o", "o", "Z", "Z" })
        {
            bench.Press(key);
            string heading = bench.Text(width, height).Split('\n').First(row => Regex.IsMatch(row, "^ (seen )?from (above|below)"));
            Assert.DoesNotContain("…", heading[..Math.Min(heading.Length, width / 2)]);
            Assert.DoesNotMatch(@"sign: .*(th|en|the en)  ", heading);
        }
    }

    [Fact]
    public void The_other_side_leaves_the_cursor_on_its_cell()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");
        bench.Press("5", "Home");
        string title = bench.Desk.Step.WhereFrom()!.Title;

        bench.Press("o");

        Assert.Equal(title, bench.Desk.Step.WhereFrom()!.Title);
    }

    // 3.63 and 3.63 are not 7.25 on a calculator: the steps are those between the figures shown.
    [Fact]
    public void Each_step_between_taps_is_the_difference_of_the_volts_shown()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");
        bench.Press("5", "Tab");

        decimal before = 0;
        MatchCollection taps = Regex.Matches(bench.Text(120, 36), @"B(\d+) +(\d+\.\d\d) +(\d+\.\d\d) ");
        Assert.Equal(13, taps.Count);
        foreach (Match tap in taps)
        {
            (decimal volts, decimal step) = (Number(tap.Groups[2]), Number(tap.Groups[3]));
            Assert.Equal(volts - before, step);
            before = volts;
        }
    }

    // Cut in the middle to six, 0001 to 0099 of them are all HAL…-B; others of the lot, of another kind, do not matter.
    [Theory]
    [InlineData("HALLE-WEST-0017-B", 6, "H…017")]
    [InlineData("HALLE-WEST-0017-B", 17, "HALLE-WEST-0017-B")]
    [InlineData("abcdefxyz", 6, "abc…yz")]
    [InlineData("Ü12é漢字", 6, "Ü12…字")]
    public void Long_labels_are_drawn_by_what_tells_them_apart(string label, int width, string shown)
    {
        string[] halle = [.. Enumerable.Range(1, 100).Select(i => $"HALLE-WEST-{i:0000}-B")];
        PlaceLabels labels = new([.. halle, "abcdefxyz", "T1", "Ü12é漢字"]);

        Assert.Equal(shown, labels.Short(label, width));
        Assert.Equal(100, halle.Select(one => labels.Short(one, 6)).Distinct().Count());
        Assert.Equal(100, halle.Select(one => labels.Short(one, 8)).Distinct().Count());
        Assert.All(halle, one => Assert.InRange(labels.Short(one, 6).Length, 3, 6));
    }

    [Theory]
    [InlineData("80", new[] { 2 }, "0 95")]
    [InlineData("1 2", new[] { 0, 3 }, "155 95 20")]
    public void A_wrong_figure_is_answered_with_the_example_of_its_own_field(string typed, int[] counts, string example) =>
        Assert.EndsWith($"such as {example}.", TypedCase.Sizes(typed, counts, out _, mayBeNegative: true, example));

    [Fact]
    public void The_reach_of_an_outline_is_asked_for_as_its_field_says()
    {
        using Bench bench = new();
        Assert.True(bench.Desk.Store.New("bag"));
        bench.Press("4", "a", "Down", "Enter", "Enter");
        bench.Type("0,0 260,0 260,60");
        bench.Press("Enter");
        bench.Type("80");
        bench.Press("Enter");

        Assert.Equal("2 figures in mm were expected, such as 0 95.", bench.Desk.Says);
    }

    private static decimal Number(Group group) => decimal.Parse(group.Value, System.Globalization.CultureInfo.InvariantCulture);

    // The left half alone, without the list.
    private static string[] Drawing(string text)
    {
        string[] rows = text.Split('\n');
        int top = Array.FindIndex(rows, row => row.StartsWith(" ┌", StringComparison.Ordinal)), bottom = Array.FindIndex(rows, row => row.StartsWith(" └", StringComparison.Ordinal));
        int wide = rows[top].IndexOf('┐', StringComparison.Ordinal) + 1;
        return [.. rows[top..(bottom + 1)].Select(row => row[..wide])];
    }
}
