using PackPlanner.Core.Jobs;
using PackPlanner.Screens;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Tests.Screens;

public class DeskTests
{
    [Fact]
    public void The_first_start_offers_three_ways_in_and_invented_data()
    {
        using Bench bench = new();

        string text = bench.Text();

        Assert.Contains("What are you doing today?", text);
        Assert.Contains("Sort used cells", text);
        Assert.Contains("Find lost range", text);
        Assert.Contains("Fit a space", text);
        Assert.Contains("‹ trike ›", text);
    }

    [Fact]
    public void A_letter_without_a_use_here_says_so_and_changes_nothing()
    {
        using Bench bench = new();

        bench.Press("j");

        Assert.Contains("no use here", bench.Desk.Says);
        Assert.Equal(0, bench.Desk.At);
    }

    [Theory]
    [InlineData("?")]
    [InlineData("!")]
    [InlineData("=")]
    public void Keys_of_every_screen_work_over_what_only_tells_and_other_letters_say_they_have_no_use(string over)
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("2");
        bench.Text();
        bench.Press(over);
        Assert.NotNull(bench.Desk.Overlay);

        bench.Press("j");
        Assert.Contains("j has no use here", bench.Desk.Says);
        Assert.NotNull(bench.Desk.Overlay);

        bench.Press("4");
        Assert.Equal(3, bench.Desk.At);
        Assert.Null(bench.Desk.Overlay);
        bench.Press(over == "=" ? "?" : over, "q");
        Assert.True(bench.Desk.IsLeaving);
    }

    [Fact]
    public void Another_job_begins_with_cursors_and_filters_of_its_own_and_a_copy_keeps_those_of_the_first()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("1", "End", "2", "f");
        bench.Type("verdict=reject");
        bench.Press("Enter");
        Assert.Contains("12 in all", bench.Text());

        bench.Desk.Store.CopyAs("variant");
        Assert.Contains("12 in all", bench.Text());
        bench.Press("1");
        Assert.Contains("> cells.csv", bench.Text());

        bench.Press(":");
        bench.Type("of the tractor");
        bench.Press("Enter");
        Assert.Contains("Orchard tractor", bench.Text());
        bench.Press("1");
        Assert.Contains("> chemistry", bench.Text());
        bench.Desk.Store.Demo("trike");
        bench.Press("2");
        Assert.DoesNotContain("in all", bench.Text());
    }

    [Fact]
    public void What_was_stopped_before_it_had_an_answer_says_so_and_is_asked_again_by_the_digit_of_the_step()
    {
        using Bench bench = new();
        int asked = 0;
        Derived<string, string> answer = new(bench.Desk, "thinking", (question, work) => ++asked == 1 ? throw new OperationCanceledException() : question + "!", _ => false);

        Assert.Null(answer.Of("so"));
        Assert.True(answer.WasStopped);
        Assert.False(answer.IsWorking);
        Assert.Null(answer.Of("so"));
        Assert.Equal(1, asked);

        answer.AskAgain();
        answer.Of("so");
        Assert.Equal("so!", answer.Last);
        Assert.False(answer.WasStopped);
        Assert.Contains("asks again", StepPicture.Stopped("Why?", 7).Next);
    }

    [Fact]
    public void Too_few_cells_say_how_many_more_to_test_with_a_range()
    {
        using Bench bench = new();
        bench.OpenLot(series: 4, parallel: 5);
        bench.Press("2");

        // 10 of 12 pass and 20 are needed: 10 short over 10/12 are 12.
        Assert.Matches(@"test about 12 more \(1\d-\d+\)", bench.Desk.Step.Picture.Next);
    }

    [Fact]
    public void Where_no_cell_has_passed_no_number_of_further_tests_is_given()
    {
        using Bench bench = new();
        bench.OpenLot();
        // All of 3.1 to 4.5 Ah are below 95 % of the 5 Ah on the label.
        bench.Set("minShareOfRated", new JobValue.Number(0.95));
        bench.Press("2");

        Assert.Contains("nobody can say how many", bench.Desk.Step.Picture.Next);
        Assert.DoesNotContain("test about", bench.Desk.Step.Picture.Next);
    }

    [Fact]
    public void A_job_of_a_space_alone_is_sent_to_the_step_that_needs_nothing_more()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        bench.Press("1");
        bench.Text();

        Assert.Equal("4 Cavity needs nothing more (its case says 14s)", bench.Desk.Step.Picture.Next);
        Assert.Matches(@"chemistry +NMC +floor\.json", bench.Text());
        bench.Set("chemistry", null);
        Assert.Equal("4 Cavity needs nothing more (its case says 14s); then the chemistry", bench.Desk.Step.Picture.Next);
    }

    [Fact]
    public void A_group_that_is_opened_shows_who_carries_how_much_and_the_parts_add_up_to_the_load()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Set("steadyA", new JobValue.Number(20));
        bench.Press("3");
        bench.Text();

        bench.Press("Enter");

        double[] amperes = [.. System.Text.RegularExpressions.Regex.Matches(bench.Text(), @"\dx, ([\d.]+) of 20 A").Select(match => double.Parse(match.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal(2, amperes.Length);
        Assert.Equal(20, amperes.Sum(), 0.11);
    }

    [Fact]
    public void Units_mark_and_signs_chosen_on_the_screen_come_back_and_what_is_stored_never_changes()
    {
        using Bench bench = new();
        bench.OpenLot();
        string stored = File.ReadAllText(bench.Desk.Open!.File);
        foreach (string setting in new[] { "units: US", "decimal mark: comma", "nothing beyond" })
        {
            bench.Press(":");
            bench.Type(setting);
            bench.Press("Enter");
        }

        Look chosen = new(Ascii: true, DecimalComma: true, UsUnits: true);
        Assert.Equal(chosen, bench.Desk.Look);
        bench.Restart();
        Assert.Equal(chosen, bench.Desk.Look);
        Assert.Equal("Test lot", bench.Desk.Job!.Title);
        Assert.Equal(stored, File.ReadAllText(bench.Desk.Open!.File));

        Desk asked = bench.NewDesk(new Look(Ascii: true));
        asked.Store.Resume(null);
        Assert.Equal(new Look(Ascii: true), asked.Look);
    }

    [Fact]
    public void The_command_list_narrows_by_typing_shows_keys_and_runs()
    {
        using Bench bench = new();
        bench.OpenLot();

        bench.Press(":");
        bench.Type("go to groups");
        Assert.Contains("go to Groups", bench.Text());
        bench.Press("Enter");

        Assert.Equal("Groups", bench.Desk.Step.Name);
    }

    [Fact]
    public void The_keys_list_names_every_key_of_the_screen_with_what_it_will_do()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("2");
        string[] keys = [.. bench.Desk.Step.Keys.Select(key => key.Entry.Key)];

        bench.Press("?");
        string text = bench.Text(120, 80);

        foreach (string key in keys)
            Assert.Contains($" {key} ", text);
    }

    [Fact]
    public void A_click_on_a_step_goes_there_and_a_click_on_a_hint_presses_its_key()
    {
        using Bench bench = new();
        bench.OpenLot();
        Page page = bench.Desk.Draw(80, 24);

        Click(bench.Desk, page, "2 Cells");
        Assert.Equal("Cells", bench.Desk.Step.Name);

        page = bench.Desk.Draw(80, 24);
        Click(bench.Desk, page, ": commands");
        Assert.NotNull(bench.Desk.Overlay);
    }

    private static void Click(Desk desk, Page page, string words)
    {
        string[] lines = page.ToText().Split('\n');
        int y = Array.FindIndex(lines, line => line.Contains(words, StringComparison.Ordinal));
        desk.Click(page, lines[y].IndexOf(words, StringComparison.Ordinal), y);
    }

    [Fact]
    public void A_long_name_leaves_what_the_pack_is_and_its_revision_in_view()
    {
        using Bench bench = new();
        bench.OpenLot(series: 13, parallel: 9);
        bench.Desk.Do(PackPlanner.Core.Jobs.JobChanges.Rename("A job whose name somebody made as long as a whole sentence, for reasons of his own"));

        string title = bench.Text().Split('\n')[0];

        Assert.Contains("13s9p · NMC · rev ", title, StringComparison.Ordinal);
        Assert.Contains("saved", title, StringComparison.Ordinal);
    }
}
