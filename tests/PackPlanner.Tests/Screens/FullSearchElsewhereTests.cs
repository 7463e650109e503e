using PackPlanner.Core.Cells;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens;

namespace PackPlanner.Tests.Screens;

/// <summary>What becomes of a full search on its way when the user goes elsewhere or asks something else.</summary>
public class FullSearchElsewhereTests
{
    [Fact]
    public void It_looks_on_beside_other_steps_and_who_comes_back_finds_what_it_found()
    {
        using Bench bench = FullSearchTests.Tight(series: 4);
        (Desk desk, List<Action> searches) = Waiting(bench);

        desk.Press("5");
        Assert.Contains("full search", desk.Draw(80, 24).ToText());
        searches.Single()();
        desk.Press("4");

        Assert.False(desk.IsWorking);
        Assert.False(desk.Answers.MostPlaces!.Stopped);
        Assert.Equal(10, desk.Answers.MostPlaces.Cells.Count);
        Assert.Single(searches);
    }

    [Fact]
    public void It_looks_on_while_a_part_is_weighed_which_cannot_alter_the_places()
    {
        using Bench bench = FullSearchTests.Tight(series: 4);
        (Desk desk, List<Action> searches) = Waiting(bench);

        foreach (string key in (string[])["a", .. Enumerable.Repeat("Down", 6), "Enter", .. "fuse box".Select(letter => $"{letter}"), "Enter", "1", "Enter", .. "300 300 20".Select(letter => $"{letter}"), "Enter"])
        {
            desk.Press(key);
            desk.Draw(80, 24);
        }

        Assert.Single(Assert.IsType<FitCase>(desk.Answers.Fit!.Case).Parts!);
        searches.Single()();
        Assert.Equal(10, desk.Answers.MostPlaces!.Cells.Count);
        Assert.Single(searches);
    }

    [Theory]
    [InlineData("another way up")]
    [InlineData("another shape")]
    public void A_newer_question_ends_it_at_once_on_whichever_step_it_is_asked(string newer)
    {
        using Bench bench = FullSearchTests.Tight(series: 4);
        (Desk desk, List<Action> searches) = Waiting(bench);
        // From now on first looks wait too.
        List<Action> waiting = [];
        beside = waiting.Add;

        if (newer == "another way up")
        {
            foreach (string key in (string[])["g", "Down", "Enter"])
                desk.Press(key);
        }
        else
        {
            desk.Press("1");
            desk.Do(JobChanges.Set("series", new Given(new JobValue.Number(2), new Origin("you", Standing.Measured))));
        }

        Assert.DoesNotContain("full search", desk.Draw(80, 24).ToText());
        Assert.False(desk.Answers.IsSearchingInFull);
        // What it may have found all the same is not told of the new question.
        searches.Single()();
        desk.Press("4");
        Assert.Contains("Places are being looked for", desk.Step.Picture.Answer);
        waiting.ToArray()[0]();
        Assert.Null(desk.Answers.MostPlaces);
    }

    private Action<Action> beside = work => work();

    // The job on a desk whose first look has been had, and whose full search waits until a test lets it run; each look at the clock is a second later.
    private (Desk Desk, List<Action> Searches) Waiting(Bench bench)
    {
        DateTime now = Bench.Noon;
        List<Action> searches = [];
        Desk desk = new(
            new Surroundings
            {
                Now = () => now = now.AddSeconds(1),
                JobsFolder = bench.JobsFolder,
                LastJobFile = Path.Combine(bench.JobsFolder, "last"),
                FullSearch = Bench.FullSearch,
                Aside = work => beside(work),
            },
            new PackPlanner.Screens.Drawing.Look());
        desk.Use(bench.Desk.Open!, 3);
        Assert.NotNull(desk.Answers.Fit);
        beside = searches.Add;
        Assert.Null(desk.Answers.MostPlaces);
        beside = work => work();
        Assert.True(desk.Answers.IsSearchingInFull);
        return (desk, searches);
    }
}
