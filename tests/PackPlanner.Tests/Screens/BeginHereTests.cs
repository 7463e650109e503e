using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Tests.Screens;

/// <summary>Screens without a job: the keys that their bodies name begin one and go on there; and what a first look at the form tells.</summary>
public class BeginHereTests
{
    [Theory]
    [InlineData("2", "i", "name or path:")]
    [InlineData("2", "a", "a cell")]
    [InlineData("4", "a", "what is the space?")]
    [InlineData("4", "i", "name or path:")]
    [InlineData("5", "a", "one cell, mm")]
    [InlineData("7", "i", "name or path:")]
    [InlineData("7", "e", "numbers of this screen")]
    public void A_key_that_an_empty_screen_names_begins_a_job_and_asks_on_the_same_screen(string step, string key, string asks)
    {
        using Bench bench = new();
        bench.Press(step);
        Assert.Contains($" {key} ", bench.Text().Split("here:")[1]);

        bench.Press(key);
        Assert.Contains("name of the job", bench.Text());
        bench.Type("mine");
        bench.Press("Enter");

        Assert.Equal(("mine", step), (bench.Desk.Job!.Title, $"{bench.Desk.At + 1}"));
        Assert.Contains(asks, bench.Text());
    }

    [Fact]
    public void A_line_with_two_values_says_where_each_comes_from()
    {
        using Bench bench = new();
        bench.Desk.Store.New("two");
        bench.Desk.Do(JobChanges.Set("controllerLowV", new Given(new JobValue.Number(39), new Origin("need.json", Standing.Measured, null))));
        bench.Set("controllerHighV", new JobValue.Number(50));
        Assert.Contains("39 / 50", bench.Text(), StringComparison.Ordinal);
        Assert.Contains("need.json / y", bench.Text(140, 40), StringComparison.Ordinal);

        bench.Press("Down", "Down", "Down", "Down", "Down");
        Assert.Matches("> controller lowest/highest V .*39 / 50 .* need.json +", bench.Text(140, 40));
        bench.Press("Right");
        Assert.Matches("> controller lowest/highest V .*39 / 50 .* you, 2 Nov +", bench.Text(140, 40));
    }

    [Fact]
    public void What_is_asked_after_that_is_drawn_as_it_is_typed()
    {
        using Bench bench = new();
        bench.Press("4", "a", "Enter", "Enter");
        bench.Type("310 x 190 x 95");

        Assert.Contains("as typed", bench.Text());
    }

    [Fact]
    public void At_60_columns_the_first_screen_says_all_its_lines_whole()
    {
        using Bench bench = new();

        foreach (string row in new[] { "", "Left", "Right", "Right", "Home", "Down", "Down", "Down" })
        {
            bench.Press(row.Length > 0 ? [row] : []);
            string text = bench.Text(60, 18);

            Assert.DoesNotContain("…", text);
            Assert.Contains("‹ ", text);
            Assert.Contains("←→", text);
        }
    }

    [Fact]
    public void The_form_says_how_another_value_of_its_line_is_chosen_and_only_there()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");
        bench.Press("1", "Home");
        Assert.DoesNotContain("left right choose", bench.Text());

        bench.Press("Down", "Down");
        Assert.Contains("left right choose  Enter change", bench.Text());
        bench.Press(":");
        bench.Type("choose the value on the line");
        Assert.Contains("nothing like this", bench.Text());
    }

    [Theory]
    [InlineData("chargerV", "54.6")]
    [InlineData("reserve", "0.125")]
    public void A_value_taken_as_it_stood_stays_with_whom_it_came_from(string key, string value)
    {
        using Bench bench = new();
        Assert.True(bench.Desk.Store.New("mine"));
        Given read = new(new JobValue.Number(double.Parse(value, System.Globalization.CultureInfo.InvariantCulture)), new Origin("given.json", Standing.Measured, null));
        bench.Desk.Do(JobChanges.Set(key, read));
        int revision = bench.Desk.Open!.History.Revision;

        GivenField.Ask(bench.Desk, key);
        bench.Press("Enter");
        Assert.Equal(read, bench.Desk.Job!.Givens.Known[key]);
        Assert.Equal(revision, bench.Desk.Open.History.Revision);

        GivenField.Ask(bench.Desk, key);
        bench.Press("Ctrl+U");
        bench.Type("11");
        bench.Press("Enter");
        Assert.StartsWith("you", bench.Desk.Job.Givens.Known[key].From.From);
    }

    [Fact]
    public void Signs_asked_for_one_run_do_not_stay_and_those_chosen_in_it_do()
    {
        using Bench bench = new();
        Desk once = bench.NewDesk(new Look(Ascii: true));
        once.Store.Resume(null);
        once.ShowAs(once.Look with { DecimalComma = true });
        once.Store.RememberPlaceNow();

        bench.Restart();
        Assert.Equal(new Look(DecimalComma: true), bench.Desk.Look);

        bench.Press(":");
        bench.Type("signs");
        bench.Press("Enter");
        bench.Desk.Store.RememberPlaceNow();
        bench.Restart();
        Assert.Equal(new Look(Ascii: true, DecimalComma: true), bench.Desk.Look);
    }

    [Fact]
    public void A_message_does_not_hide_what_runs_and_the_key_that_stops_it()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        List<string> told = [];
        Desk slow = bench.SlowDesk(3, desk =>
        {
            desk.Says = "take 14s7p: u takes it back.";
            told.Add(desk.Draw(80, 24).ToText());
            told.Add(desk.Draw(60, 18).ToText());
            desk.Says = null;
            told.Add(desk.Draw(60, 18).ToText());
        });
        slow.Draw(80, 24);

        Assert.NotEmpty(told);
        Assert.All(told, text => Assert.Matches(@"(looking for places|full search) .* Esc stop", text));
        Assert.Contains("u takes it back", told[0]);
        Assert.Contains("u takes it back", told[1]);
    }
}
