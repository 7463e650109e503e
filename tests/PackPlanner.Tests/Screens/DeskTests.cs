using PackPlanner.Core.Jobs;
using PackPlanner.Formats.JobFiles;
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
    public void What_a_killed_program_left_beside_a_job_goes_when_the_job_is_opened_and_nothing_else_does()
    {
        using Bench bench = new();
        bench.OpenLot();
        string file = bench.Desk.Open!.File, whole = File.ReadAllText(file);
        // No process has a number as large as this; the other is this one, which runs.
        string[] stay = [$"{file}.{Environment.ProcessId}.new", $"{file}.mine.new", $"{file}.2147483647.old", Path.Combine(bench.JobsFolder, "other.job.json.2147483647.new")];
        foreach (string beside in stay.Append($"{file}.2147483647.new"))
            File.WriteAllText(beside, "half");

        Assert.True(bench.Desk.Store.OpenFile(file));

        Assert.Equal(stay.Append(file).Order(StringComparer.Ordinal), Directory.GetFiles(bench.JobsFolder).Order(StringComparer.Ordinal));
        Assert.Equal(whole, File.ReadAllText(file));
    }

    [Fact]
    public void What_lies_beside_a_job_that_another_program_writes_just_now_is_left()
    {
        using Bench bench = new();
        bench.OpenLot();
        string file = bench.Desk.Open!.File, stray = $"{file}.2147483647.new";
        File.WriteAllText(stray, "half");
        using (FileStream turn = new($"{file}.lock", FileMode.Create, FileAccess.ReadWrite, FileShare.None))
        {
            Assert.True(bench.Desk.Store.OpenFile(file));
            Assert.True(File.Exists(stray));
        }

        Assert.True(bench.Desk.Store.OpenFile(file));
        Assert.False(File.Exists(stray));
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
    public void Who_types_a_comma_is_told_where_the_decimal_mark_is_chosen()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("Down", "Enter");

        bench.Type(",5");
        bench.Press("Enter");

        Assert.Contains("(or : decimal mark)", bench.Desk.Says);
    }

    [Fact]
    public void A_digit_typed_into_a_list_of_choices_does_not_throw_the_choice_away()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("3", "e", "4");

        Assert.Equal(2, bench.Desk.At);
        Assert.NotNull(bench.Desk.Overlay);
        Assert.Contains("4 has no use here; Esc goes back", bench.Desk.Says);
    }

    [Fact]
    public void A_list_that_is_narrowed_by_typing_takes_digits_and_letters_itself()
    {
        using Bench bench = new();
        bench.OpenLot();

        bench.Press(":", "3", "q");

        Assert.Equal(0, bench.Desk.At);
        Assert.False(bench.Desk.IsLeaving);
        Assert.Contains("nothing like this", bench.Text());
    }

    [Fact]
    public void A_value_stands_in_its_field_with_the_decimal_mark_that_is_shown_and_comes_back_the_same()
    {
        using Bench bench = new(new Look(DecimalComma: true));
        bench.OpenLot();
        bench.Set("linkMilliohm", new JobValue.Number(0.25));
        bench.Press("Down", "Down", "Down", "Down", "Down", "Down", "Down", "Down", "Down", "Down", "Down", "Enter");
        Assert.Contains("one series link", bench.Text());
        Assert.Contains("0,25", bench.Text());

        bench.Press("Enter");

        Assert.Equal(0.25, bench.Desk.Job!.Givens.NumberOf("linkMilliohm"));
    }

    [Fact]
    public void Escape_never_leaves_and_q_does()
    {
        using Bench bench = new();

        bench.Press("Esc", "Esc", "Esc");
        Assert.False(bench.Desk.IsLeaving);

        bench.Press("q");
        Assert.True(bench.Desk.IsLeaving);
    }

    [Fact]
    public void Letters_and_digits_type_while_a_field_is_open()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("Down", "Enter");

        bench.Type("q35");

        Assert.False(bench.Desk.IsLeaving);
        Assert.Equal(0, bench.Desk.At);
        Assert.Contains("q35", bench.Text());
    }

    [Fact]
    public void A_value_that_cannot_be_taken_is_refused_with_the_reason_and_the_old_one_stays()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("Down", "Enter", "End", "Backspace");
        bench.Type("seven");

        bench.Press("Enter");

        Assert.Contains("is not a number", bench.Text());
        Assert.Equal(5.0, bench.Desk.Job!.Givens.RatedAh);
    }

    [Fact]
    public void Every_change_is_in_the_file_at_once()
    {
        using Bench bench = new();
        bench.OpenLot();

        bench.Set("peakA", new JobValue.Number(40));

        Assert.True(JobFile.Open(bench.Desk.Open!.File).Is(out OpenJob? stored, out _));
        Assert.Equal(40, stored.History.Now.Givens.PeakA);
    }

    [Fact]
    public void Undo_and_redo_reach_every_change_and_name_it()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Set("peakA", new JobValue.Number(40));

        bench.Press("u");
        Assert.Null(bench.Desk.Job!.Givens.PeakA);
        Assert.Contains("undone: set peak load A", bench.Desk.Says);

        bench.Press("U");
        Assert.Equal(40, bench.Desk.Job!.Givens.PeakA);

        for (int i = 0; i < 6; i++)
            bench.Press("u");
        Assert.Empty(bench.Desk.Job!.Tables);
        bench.Press("u");
        Assert.Contains("nothing to take back", bench.Desk.Says);
    }

    [Fact]
    public void After_a_kill_the_same_job_step_and_row_come_back()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("2");
        bench.Text();
        bench.Press("Down", "Down", "Down");
        bench.Text();
        string? row = bench.Desk.Step.Place;

        bench.Restart();
        bench.Text();

        Assert.Equal("Cells", bench.Desk.Step.Name);
        Assert.Equal(row, bench.Desk.Step.Place);
        Assert.Contains($"> ", bench.Text());
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
    public void A_job_that_another_program_changed_is_not_written_over()
    {
        using Bench bench = new();
        bench.OpenLot();
        Desk other = bench.NewDesk();
        Assert.True(other.Store.OpenFile(bench.Desk.Open!.File));
        other.Do(JobChanges.Rename("theirs"));

        bench.Set("peakA", new JobValue.Number(40));

        Assert.Contains("NOT SAVED", bench.Desk.Says);
        Assert.Contains("NOT SAVED", bench.Text());
        Assert.True(JobFile.Open(bench.Desk.Open.File).Is(out OpenJob? stored, out _));
        Assert.Equal("theirs", stored.History.Now.Title);
    }

    [Fact]
    public void A_copy_is_another_job_and_leaves_the_first_as_it_was()
    {
        using Bench bench = new();
        bench.OpenLot();
        string first = bench.Desk.Open!.File;

        bench.Desk.Store.CopyAs("Variant");
        bench.Set("series", new JobValue.Number(3));

        Assert.NotEqual(first, bench.Desk.Open!.File);
        Assert.True(JobFile.Open(first).Is(out OpenJob? stored, out _));
        Assert.Equal(4, stored.History.Now.Givens.Series);
    }

    [Fact]
    public void A_deleted_job_is_put_aside_and_can_be_opened_again()
    {
        using Bench bench = new();
        bench.OpenLot();

        bench.Desk.Store.Delete();

        Assert.Null(bench.Desk.Open);
        string aside = Assert.Single(Directory.GetFiles(bench.JobsFolder));
        Assert.True(bench.Desk.Store.OpenFile(aside));
    }

    [Fact]
    public void A_second_job_of_a_name_is_put_aside_beside_the_first()
    {
        using Bench bench = new();
        foreach (string title in new[] { "first", "second", "third" })
        {
            Assert.True(bench.Desk.Store.New("Trike"));
            bench.Desk.Do(JobChanges.Rename(title));
            bench.Desk.Store.Delete();
        }

        string[] titles = [.. Directory.GetFiles(bench.JobsFolder).Select(file => JobFile.Open(file).Is(out OpenJob? open, out _) ? open.History.Now.Title : "").Order(StringComparer.Ordinal)];
        Assert.Equal(["first", "second", "third"], titles);
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
}
