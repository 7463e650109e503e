using PackPlanner.Core.Fitting;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Screens;
using PackPlanner.Screens.CavityScreen;

namespace PackPlanner.Tests.Screens;

/// <summary>Step 4 shows a first look at once and goes on to the full search, so that in the end it counts as the verb fit does.</summary>
public class FullSearchTests
{
    [Fact]
    public void In_the_end_the_screen_counts_as_the_full_search_of_the_case_does_and_tells_rows_beside_it()
    {
        using Bench bench = Tight(series: null);
        FitAnswer verb = LayoutSearch.Search(Assert.IsType<PackPlanner.Formats.Outcome<FitCase>.Given>(JobFit.Case(bench.Desk.Job!)).Value, Bench.FullSearch, null, CancellationToken.None);

        string answer = bench.Desk.Step.Picture.Answer;

        // Rows of cells hold three by three; ten circles go into a square of 6.75 radii of them, but not in rows (the best known packing).
        Assert.Equal(9, bench.Desk.Answers.Fit!.Answer!.Cells.Count);
        Assert.Equal(10, verb.Cells.Count);
        Assert.Equal(verb.Cells.Count, bench.Desk.Answers.MostPlaces!.Cells.Count);
        Assert.StartsWith("Full search: 10 places", answer);
        Assert.Contains("as drawn: 9", answer);
        Assert.Contains("full search 10 places", bench.Text(120, 36));
    }

    [Fact]
    public void While_it_looks_the_figure_is_called_a_first_look()
    {
        using Bench bench = Tight(series: 4);
        List<string> seen = [];
        Desk slow = bench.SlowDesk(3, desk =>
        {
            if (desk.Answers.Fit is not null)
                seen.Add(desk.Draw(80, 24).ToText());
        });

        slow.Draw(80, 24);

        Assert.NotEmpty(seen);
        Assert.All(seen, text =>
        {
            Assert.Contains("A  First look, more may fit: 9 places", text);
            Assert.Contains("full search not ended", text);
            Assert.Matches(@"full search \d+ s  best \d+ places.*Esc stop and keep", text);
        });
        Assert.DoesNotContain("First look", slow.Step.Picture.Answer);
    }

    [Fact]
    public void Esc_keeps_the_best_of_the_full_search_and_says_that_it_was_stopped_and_the_step_looks_on()
    {
        using Bench bench = Tight(series: null);
        bool pressed = false;
        Desk slow = bench.SlowDesk(3, desk =>
        {
            if (desk.Answers.Fit is not null && !pressed)
            {
                pressed = true;
                desk.Press("Esc");
            }
        });

        slow.Draw(80, 24);

        Assert.True(pressed);
        Assert.True(slow.Answers.MostPlaces!.Stopped);
        Assert.StartsWith("The search was stopped, more may fit: ", slow.Step.Picture.Answer);
        slow.Press("4");
        Assert.False(slow.Answers.MostPlaces!.Stopped);
        Assert.StartsWith("Full search: 10 places", slow.Step.Picture.Answer);
    }

    [Fact]
    public void Larger_groups_of_the_full_search_are_taken_by_Enter_on_its_line()
    {
        using Bench bench = Tight(series: 5);
        while (bench.Desk.Step is CavityModel { LargerUnder: null })
        {
            bench.Press("Down");
            Assert.True(bench.Desk.Step.WhereFrom() is not null, bench.Text(120, 36));
        }

        Assert.Contains("Enter take 2 in parallel", bench.Text(120, 36));
        Assert.Contains("as long as the verb fit does", bench.Desk.Step.WhereFrom()!.Lines[0].Says);
        bench.Press("Enter");

        Assert.Equal(2, bench.Desk.Job!.Givens.Parallel);
        bench.Press("u");
        Assert.Null(bench.Desk.Job.Givens.Parallel);
    }

    [Fact]
    public void What_no_layout_can_hold_is_told_at_once_and_the_full_search_counts_on()
    {
        using Bench bench = Tight(series: 40);
        List<string> seen = [];
        Desk slow = bench.SlowDesk(3, desk => seen.Add(desk.Draw(80, 24).ToText()));

        slow.Draw(80, 24);

        Assert.True(slow.Answers.Fit!.Answer!.Bound < 40);
        Assert.Contains(seen, text => text.Contains("A  It can never fit: 9 places", StringComparison.Ordinal));
        Assert.StartsWith("It can never fit: 10 places", slow.Step.Picture.Answer);
        Assert.Contains("full search 10 places", slow.Draw(120, 36).ToText());
    }

    [Fact]
    public void Other_steps_do_not_ask_for_it()
    {
        using Bench bench = Tight(series: 4);
        bench.Press("5");

        Assert.Null(bench.Desk.Answers.MostPlaces);
        Assert.NotNull(bench.Desk.Answers.Fit);
    }

    [Fact]
    public void It_does_not_begin_anew_for_what_cannot_alter_it()
    {
        using Bench bench = Tight(series: null);
        bench.Text();
        FitAnswer found = bench.Desk.Answers.MostPlaces!;

        bench.Press("a", "Down", "Down", "Down", "Down", "Down", "Down", "Enter");
        bench.Type("contactor");
        bench.Press("Enter");
        bench.Type("2.5");
        bench.Press("Enter");
        bench.Type("20 20 20");
        bench.Press("Enter");
        bench.Set("whPerKm", new PackPlanner.Core.Jobs.JobValue.Number(38));
        bench.Text();
        Assert.Equal(2.5, bench.Desk.Answers.Fit!.Case!.Parts!.Sum(part => part.Kg));
        Assert.Same(found, bench.Desk.Answers.MostPlaces);

        // What the cells may weigh limits how many are used.
        bench.Set("cellMassKg", new PackPlanner.Core.Jobs.JobValue.Number(0.07));
        bench.Set("cellMassLimitKg", new PackPlanner.Core.Jobs.JobValue.Number(0.35));
        bench.Text();
        Assert.NotSame(found, bench.Desk.Answers.MostPlaces);
        Assert.Equal(5, bench.Desk.Answers.MostPlaces!.Used);
    }

    [Fact]
    public void Who_comes_back_to_a_question_whose_work_was_stopped_by_another_job_is_not_left_waiting()
    {
        List<Action> asked = [];
        using Bench bench = new();
        Desk desk = new(
            new Surroundings { Now = () => Bench.Noon, JobsFolder = bench.JobsFolder, LastJobFile = Path.Combine(bench.JobsFolder, "last"), Aside = asked.Add },
            new PackPlanner.Screens.Drawing.Look());
        Derived<string, string> answer = new(desk, "asking", (question, _) => question + "!", _ => false);

        Assert.Null(answer.Of("why"));
        desk.Aside.StopAll();
        Assert.Null(answer.Of("why"));
        asked[^1]();

        Assert.Equal(2, asked.Count);
        Assert.Equal("why!", answer.Of("why"));
    }

    // 21 with 0.8 between them and 2 to the walls: 77.2 - 4 + 0.8 = 74 leaves 6.79 radii of 10.9; three in a row take 6.
    internal static Bench Tight(int? series)
    {
        Bench bench = new();
        bench.Desk.Store.New("Tight");
        bench.Press("4", "a", "Enter");
        bench.Type("77.2 x 77.2 x 80");
        bench.Press("Enter");
        bench.Type("21 x 70");
        bench.Press("Enter", "Enter");
        if (series is { } s)
            bench.Set("series", new PackPlanner.Core.Jobs.JobValue.Number(s));
        return bench;
    }
}
