using PackPlanner.Core.Jobs;

namespace PackPlanner.Tests.Screens;

/// <summary>Step 5 on the invented trike: the links of the side that is looked at, taps, and where lines of the space come from.</summary>
public sealed class PlaceStepTests : IDisposable
{
    private const int Cavity = 3;
    private const int Place = 4;

    private readonly Bench bench = new();

    public PlaceStepTests()
    {
        bench.Desk.Store.Demo("trike");
    }

    public void Dispose() => bench.Dispose();

    [Fact]
    public void The_links_of_the_side_that_is_looked_at_stand_below_the_drawing()
    {
        bench.Desk.GoTo(Place);

        // Plus of group 1 looks up, so that its link to group 2 lies on top.
        Assert.Contains("+01 -02 +03", bench.Text());
        Assert.Contains("links above: 01=02 03=04 05=06 07=08 09=10 11=12", bench.Text());
        bench.Press("o");
        Assert.Contains("+02 -01", bench.Text());
        Assert.Contains("links below: 02=03 04=05 06=07 08=09 10=11 12=13", bench.Text());
    }

    [Fact]
    public void A_group_that_is_turned_over_has_links_from_one_side_to_the_other_and_none_that_would_join_plus_to_plus()
    {
        bench.Desk.GoTo(Place);
        // The cursor stands on group 1; its link is the one to group 2.
        bench.Press("g");

        Assert.Contains("links above: 03=04 05=06 07=08 09=10 11=12; side to side: 01=02", bench.Text());
        Assert.Contains("1 from one side to the other", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);
        bench.Press("o");
        Assert.Contains("links below: 02=03 04=05 06=07 08=09 10=11 12=13; side to side: 01=02", bench.Text());
        bench.Press("u");
        Assert.DoesNotContain("side to side", bench.Text());
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 36)]
    public void Nothing_is_cut_at_the_sizes_it_was_drawn_for(int width, int height)
    {
        bench.Desk.GoTo(Place);
        Assert.DoesNotContain('…', Body(width, height));
        bench.Press("Tab");
        Assert.DoesNotContain('…', Body(width, height));
        bench.Press("4");
        Assert.DoesNotContain('…', Body(width, height));
    }

    [Fact]
    public void An_exchange_with_a_group_that_is_gone_is_said_and_the_place_is_drawn()
    {
        bench.Desk.Do(JobChanges.SetPlacement("exchange", new JobPlacement { Exchanged = System.Collections.Immutable.ImmutableSortedDictionary<int, int>.Empty.Add(1, 13).Add(13, 1) }));
        bench.Set("series", new JobValue.Number(12));
        bench.Desk.GoTo(Place);

        Assert.Contains("exchange of groups at 1, 13 no longer applies", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);
        Assert.Contains("no longer applies", System.Text.RegularExpressions.Regex.Replace(bench.Text(), @"\s+", " "), StringComparison.Ordinal);
    }

    [Fact]
    public void A_tap_is_explained_where_it_first_stands_and_pages_move_through_the_table()
    {
        bench.Desk.GoTo(Place);
        Assert.Contains("taps (where sense wires meet the pack)", bench.Desk.Step.Picture.Next);

        bench.Press("Tab", "PgDn");

        Assert.Contains("B10", bench.Text().Split('\n').Single(line => line.StartsWith(" > ", StringComparison.Ordinal)));
    }

    [Fact]
    public void Readings_of_taps_go_with_the_placement_that_they_were_taken_from()
    {
        bench.Desk.GoTo(Place);
        bench.Press("Tab", "Enter");
        bench.Type("0");
        bench.Press("Enter", "Enter");
        bench.Type("9.9");
        bench.Press("Enter");

        // What stops the work comes before all else.
        Assert.StartsWith("1 tap reading outside: stop, do not plug in.", bench.Desk.Step.Picture.Answer);
        bench.Press("x");

        Assert.Empty(bench.Desk.Job!.TapReadings);
        Assert.Contains("2 tap readings taken out, measure again", bench.Text());
        bench.Press("u");
        Assert.Equal(2, bench.Desk.Job!.TapReadings.Count);
    }

    [Fact]
    public void A_sign_is_shown_whole_or_not_at_all_and_arrows_tell_where_more_lies()
    {
        bench.Desk.GoTo(Place);
        bench.Press("z", "z");

        string[] rows = bench.Text().Split('\n');

        Assert.Contains("rows 1-2 of 9 →", rows[6]);
        Assert.Matches(@"^( +[+-]\d\d)+$", rows[7]);
        bench.Press("End");
        Assert.Contains("←", bench.Text().Split('\n')[6]);
    }

    [Fact]
    public void The_taps_show_first_that_a_reading_can_be_typed()
    {
        bench.Desk.GoTo(Place);
        bench.Press("Tab");
        Assert.Contains("here: Tab drawing  Enter type a reading", bench.Text());
    }

    [Fact]
    public void Every_line_of_the_space_says_where_it_comes_from()
    {
        bench.Desk.GoTo(Cavity);
        HashSet<string> titles = [];
        for (int i = 0; i < 16; i++)
        {
            bench.Text();
            bench.Press("=");
            string title = bench.Text().Split('\n').Single(line => line.StartsWith(" where ", StringComparison.Ordinal));
            titles.Add(title);
            bench.Press("Esc", "Down");
        }

        Assert.Contains(titles, title => title.Contains("117 places", StringComparison.Ordinal));
        Assert.Contains(titles, title => title.Contains("8.1 kg", StringComparison.Ordinal));
        Assert.Contains(titles, title => title.Contains("clearances: wall 2.0 mm", StringComparison.Ordinal));
        Assert.True(titles.Count > 6, string.Join('\n', titles));
    }

    private string Body(int width, int height)
    {
        string[] lines = bench.Desk.Draw(width, height).ToText().Split('\n');
        int first = Array.FindIndex(lines, line => line.StartsWith('─'));
        int last = Array.FindLastIndex(lines, line => line.StartsWith('─'));
        return string.Join('\n', lines[(first + 1)..last]);
    }
}
