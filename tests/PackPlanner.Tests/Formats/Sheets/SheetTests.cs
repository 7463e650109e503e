using System.Text;
using System.Text.RegularExpressions;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.Sheets;
using static PackPlanner.Tests.Formats.Sheets.SheetCases;

namespace PackPlanner.Tests.Formats.Sheets;

public class SheetTests
{
    private static Dictionary<string, string> Files(SheetInput input) => SheetFiles
        .Of(input, SheetCatalogue.All.Where(sheet => sheet.WhyNot(input) is null), decimalComma: false)
        .Where(file => !file.File.EndsWith(".png", StringComparison.Ordinal))
        .ToDictionary(file => file.File, file => Encoding.UTF8.GetString(file.Bytes));

    // The scooter is a space with a pack in it and no measured cell: 14s6p, by its case and its drawing.
    [Fact]
    public void A_space_without_measured_cells_gives_the_placement_and_what_to_buy_and_says_why_not_the_others()
    {
        SheetInput scooter = Input(Assert.IsType<Outcome<JobHistory>.Given>(DemoJobs.Of("scooter")).Value);

        Assert.Equal(["place", "buy"], SheetCatalogue.All.Where(sheet => sheet.WhyNot(scooter) is null).Select(sheet => sheet.Name));
        string buy = string.Concat(SheetCatalogue.All.Single(sheet => sheet.Name == "buy").Pages(scooter).Select(page => page.Body));
        Assert.Matches("cells</td><td[^>]*><b class=\"num\">84</b></td><td[^>]*>21700 NMC 5.0, 14 in series", buy);
        Assert.Matches("series links</td><td[^>]*><b class=\"num\">13</b>", buy);
        Assert.Matches("sense leads</td><td[^>]*><b class=\"num\">15</b>", buy);
        Assert.Equal("the job has no cells: the volts to expect come from theirs", SheetCatalogue.All.Single(sheet => sheet.Name == "taps").WhyNot(scooter));
    }

    // Groups 1 and 13 were exchanged, then one group fewer was wanted: the sheets are made, and say that this is no more.
    [Fact]
    public void An_exchange_that_no_longer_applies_is_said_on_the_sheets()
    {
        JobHistory job = Demo()
            .Do(JobChanges.SetPlacement("exchange", new JobPlacement { Exchanged = System.Collections.Immutable.ImmutableSortedDictionary<int, int>.Empty.Add(1, 13).Add(13, 1) }))
            .Do(JobChanges.Set("series", new Given(new JobValue.Number(12), Origin.You(Day))));

        SheetInput input = Input(job);

        Assert.Equal(Enumerable.Range(1, 12), input.Groups.Select(group => group.Number));
        string note = Assert.Single(input.Notes);
        Assert.Contains("exchange of groups at 1, 13 no longer applies: there are 12 groups", note, StringComparison.Ordinal);
        Assert.Contains(note, SheetCatalogue.All.Single(sheet => sheet.Name == "place").Pages(input)[0].Intro, StringComparison.Ordinal);
        Assert.Empty(Trike.Value.Notes);
    }

    [Fact]
    public void Every_block_says_which_job_revision_page_and_content_it_belongs_to()
    {
        foreach (Sheet sheet in SheetCatalogue.All.Where(sheet => sheet.WhyNot(Trike.Value) is null))
        {
            IReadOnlyList<SheetPage> pages = sheet.Pages(Trike.Value);
            string html = SheetDocument.Of(Trike.Value, sheet.Name, pages);
            string[] printed = html.Split("<section class=\"page\">")[1..];

            Assert.Equal(pages.Count, printed.Length);
            for (int i = 0; i < printed.Length; i++)
            {
                string[] blocks = printed[i].Split("<section class=\"block\">")[1..];
                Assert.Equal(pages[i].Blocks.Count, blocks.Length);
                Assert.All(blocks, block =>
                {
                    Assert.StartsWith("\n<header class=\"strip\"><span>Bakery trike (invented)</span><span>rev 0</span><span>2026-11-24</span>", block, StringComparison.Ordinal);
                    Assert.Contains($"<span>{sheet.Name}, page {i + 1} of {printed.Length}</span><span>check {SheetDocument.Check(Trike.Value, pages[i])}</span>", block, StringComparison.Ordinal);
                });
            }
        }
    }

    // By hand: 16 taps, at most 14 on a page: two pages of 8, each in two blocks of 4. A photo of half a page shows a strip.
    [Fact]
    public void Rows_are_spread_evenly_over_pages_and_blocks()
    {
        SheetPage[] pages = [.. SheetPage.Rows("t", "", ["a"], [.. Enumerable.Range(0, 16).Select(i => (IReadOnlyList<string>)[$"r{i}"])], 14)];

        Assert.Equal([[4, 4], [4, 4]], pages.Select(page => page.Blocks.Select(block => Regex.Count(block.Body, ">r[0-9]+<")).ToArray()).ToArray());
        Assert.Equal(Enumerable.Range(0, 16).Select(i => $"r{i}"), Regex.Matches(string.Concat(pages.Select(page => page.Body)), "r[0-9]+").Select(match => match.Value));
    }

    [Fact]
    public void A_danger_stands_in_each_block_that_it_concerns()
    {
        foreach (string name in new[] { "place", "links" })
        {
            Sheet sheet = SheetCatalogue.All.Single(sheet => sheet.Name == name);
            string html = SheetDocument.Of(Trike.Value, name, sheet.Pages(Trike.Value));
            string[] blocks = [.. html.Split("<section class=\"block\">")[1..].Where(block => !block.Contains("Cautions of this job", StringComparison.Ordinal))];

            Assert.All(blocks, block => Assert.Contains("<b class=\"word\">DANGER</b>", block, StringComparison.Ordinal));
        }
    }

    // T113 rests 0.31 V under the others of its group: the sheet says what to bring it to before it is joined, and warns there.
    [Fact]
    public void A_cell_that_would_take_too_much_on_joining_is_named_where_it_is_joined()
    {
        IReadOnlyList<SheetPage> links = SheetCatalogue.All.Single(sheet => sheet.Name == "links").Pages(Trike.Value);
        string html = SheetDocument.Of(Trike.Value, "links", links);
        Caution joining = Assert.Single(Trike.Value.Cautions, caution => caution.Code == "caution-07");

        Assert.Equal(("cell T113", SignalWord.Warning), (joining.Where, joining.Signal));
        Assert.Matches("T113 to <b class=\"num\">3\\.6[234] V</b>", html);
        Assert.Contains("<b class=\"word\">WARNING</b> <b>current on joining.</b> cell T113:", html, StringComparison.Ordinal);
        Assert.Contains(SheetCatalogue.All.Single(sheet => sheet.Name == "pick").Pages(Trike.Value), page => page.Body.Contains("cell T113:", StringComparison.Ordinal));
    }

    [Fact]
    public void A_figure_with_two_grounds_is_said_once()
    {
        string rejects = string.Concat(RejectSheet.Pages(Trike.Value).Select(page => page.Body));

        Assert.Contains("3.512 Ah, under 4.000, and unlike its lot", rejects, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(rejects, "3\\.512 Ah"));
    }

    [Fact]
    public void Sheets_need_nothing_from_outside_and_run_nothing()
    {
        Assert.All(Files(Trike.Value).Where(file => file.Key.EndsWith(".html", StringComparison.Ordinal)), file =>
        {
            Assert.DoesNotMatch("(?i)<script|<link|<img|<iframe|https?://|@import|url\\((?!#)| on[a-z]+=", file.Value);
            Assert.Contains("default-src 'none'", file.Value, StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData("place", "caution-18", "caution-20a", "caution-20b")]
    [InlineData("links", "caution-20a", "caution-20b")]
    [InlineData("taps", "caution-19")]
    [InlineData("rejects", "caution-29")]
    [InlineData("first-charge", "caution-28")]
    public void Cautions_stand_inside_the_blocks_that_they_concern(string name, params string[] codes)
    {
        IReadOnlyList<SheetPage> pages = SheetCatalogue.All.Single(sheet => sheet.Name == name).Pages(Trike.Value);

        Assert.All(codes, code => Assert.Contains(pages, page => page.Cautions.Contains(code)));
    }

    // Groups of two cells of 2.9 Ah or so are charged with half their Ah, under 3 A; four groups of 4.2 V are full at 16.8 V.
    [Theory]
    [InlineData(2, 16.8, false)]
    [InlineData(40, 16.8, true)]
    [InlineData(2, 58.8, true)]
    public void The_sheet_of_the_first_charge_says_when_the_charger_does_not_suit(double chargerA, double chargerV, bool unsuited)
    {
        Job job = new() { Title = "four", Givens = Given(4, 2), AddedRows = [.. Enumerable.Range(0, 8).Select(i => Cell($"K{i + 1}", 3.60))] };
        foreach ((string key, double value) in new[] { ("chargerA", chargerA), ("chargerV", chargerV) })
            job = job with { Givens = job.Givens.With(key, new Given(new JobValue.Number(value), Origin.You(Day))) };

        IReadOnlyList<SheetPage> pages = SheetCatalogue.All.Single(sheet => sheet.Name == "first-charge").Pages(Input(JobHistory.Of(job)));

        Assert.Equal(unsuited, pages[0].Body.Contains("DOES NOT SUIT", StringComparison.Ordinal));
        Assert.Equal(unsuited, pages[0].Cautions.Contains("caution-32"));
    }

    [Theory]
    [InlineData(16.8, null, "its A is not given")]
    [InlineData(null, 2.0, "its V is not given")]
    [InlineData(null, null, ">not given: not checked")]
    [InlineData(58.8, null, "DOES NOT SUIT")]
    public void Half_a_charger_is_judged_by_that_half_and_the_other_is_named(double? chargerV, double? chargerA, string says)
    {
        Job job = new() { Title = "four", Givens = Given(4, 2), AddedRows = [.. Enumerable.Range(0, 8).Select(i => Cell($"K{i + 1}", 3.60))] };
        foreach ((string key, double? value) in new[] { ("chargerA", chargerA), ("chargerV", chargerV) })
        {
            if (value is { } told)
                job = job with { Givens = job.Givens.With(key, new Given(new JobValue.Number(told), Origin.You(Day))) };
        }

        Assert.Contains(says, SheetCatalogue.All.Single(sheet => sheet.Name == "first-charge").Pages(Input(JobHistory.Of(job)))[0].Body, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_cell_of_the_pack_stands_in_one_place_and_on_the_pick_list_once()
    {
        string[] grouped = [.. Trike.Value.Groups.SelectMany(group => group.Cells).Select(cell => cell.Label).Order(StringComparer.Ordinal)];
        string pick = string.Concat(PickSheet.Pages(Trike.Value).Select(page => page.Body));

        Assert.Equal(117, grouped.Distinct().Count());
        Assert.Equal(grouped, Trike.Value.Places.Select(place => place.Label!).Order(StringComparer.Ordinal));
        Assert.Equal(grouped, Regex.Matches(pick, "<b class=\"num\">(T[0-9]{3})</b>").Select(match => match.Groups[1].Value).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Hostile_labels_are_harmless_in_pages_and_tables()
    {
        string[] labels = ["<script>alert(1)</script>", "=cmd|' /C calc'!A0", "a\u202Eb\u0007", "\"><img src=x onerror=alert(1)>"];
        Job job = new()
        {
            Title = "<b>x</b>\u001B[31m",
            Givens = Given(4, 1),
            AddedRows = [.. labels.Select(label => Cell(label, 3.6) with { Tray = label })],
            Grouping = new JobGrouping([.. labels.Select(label => new[] { label })], Origin.You(Day)),
        };

        Dictionary<string, string> files = Files(Input(JobHistory.Of(job)));

        Assert.All(files.Where(file => file.Key.EndsWith(".html", StringComparison.Ordinal)), file =>
        {
            Assert.DoesNotMatch("(?i)<script|<img|<b>x|\u202E|\u0007|\u001B", file.Value);
            Assert.Contains("&lt;script&gt;", string.Concat(files.Values), StringComparison.Ordinal);
        });
        Assert.Contains("'=cmd", files["labels.csv"], StringComparison.Ordinal);
        Assert.DoesNotContain("\n=", files["labels.csv"], StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_made_says_what_it_lacks()
    {
        SheetInput nothing = Input(JobHistory.Of(new Job { Title = "empty" }));
        SheetInput few = Input(JobHistory.Of(new Job { Title = "few", Givens = Given(2, 2), AddedRows = [Cell("A", 3.6)] }));

        Assert.All(SheetCatalogue.All, sheet => Assert.NotNull(sheet.WhyNot(nothing)));
        Assert.Equal("4 cells are needed and 1 may be used", SheetCatalogue.All.Single(sheet => sheet.Name == "taps").WhyNot(few));
    }

    [Fact]
    public void The_same_job_and_day_give_the_same_bytes() => Assert.Equal(Files(Trike.Value), Files(Input(Demo())));

    // Two columns of 90 mm hold a label of a dozen letters in type of 14 points beside group and tick box, not one of 27.
    [Theory]
    [InlineData("K", true)]
    [InlineData("HALL-WEST-BATTERY-01-NO-", false)]
    public void A_pick_list_has_one_column_where_labels_are_long(string begins, bool two)
    {
        Job job = new()
        {
            Title = "pick",
            Givens = Given(2, 2),
            AddedRows = [.. Enumerable.Range(1, 4).Select(i => Cell($"{begins}{i}", 3.6))],
            Grouping = new JobGrouping([[$"{begins}1", $"{begins}2"], [$"{begins}3", $"{begins}4"]], Origin.You(Day)),
        };

        string pick = string.Concat(PickSheet.Pages(Input(JobHistory.Of(job))).Select(page => page.Body));

        Assert.Equal(two, pick.Contains("class=\"columns\"", StringComparison.Ordinal));
        Assert.All(Enumerable.Range(1, 4), i => Assert.Contains($">{begins}{i}<", pick, StringComparison.Ordinal));
    }
}
