using PackPlanner.Core.Jobs;
using PackPlanner.Screens;

namespace PackPlanner.Tests.Screens;

/// <summary>What the screen does while a large lot is matched.</summary>
public sealed class MatchingOnScreenTests
{
    [Fact]
    public void Ten_thousand_cells_are_matched_while_the_screen_shows_how_far_it_is_and_answers_keys()
    {
        using Bench bench = new();
        bench.OpenLot(cells: 10_000, series: null, parallel: null);
        List<string> shown = [];
        Desk desk = bench.SlowDesk(2, desk =>
        {
            if (shown.Count > 0)
                return;
            shown.Add(desk.Draw(80, 24).ToText());
            desk.Press("2");
            desk.Press("Down");
            desk.Press("s");
            shown.Add(desk.Draw(80, 24).ToText());
            desk.Press("3");
            desk.Press("Esc");
        });
        desk.Draw(80, 24);
        desk.Do(JobChanges.Set("parallel", new Given(new JobValue.Number(10), Origin.You(desk.Today))));
        desk.Do(JobChanges.Set("series", new Given(new JobValue.Number(900), Origin.You(desk.Today))));

        desk.Draw(80, 24);

        Assert.Equal(2, shown.Count);
        Assert.Matches(@"matching \d+ s +smallest \d+\.\d{3} Ah, spread", shown[0]);
        Assert.Contains("T00", shown[1], StringComparison.Ordinal);
        // Stopped by Esc: the groups found so far are kept.
        Assert.Contains("900s10p", desk.Draw(80, 24).ToText(), StringComparison.Ordinal);
        Assert.NotNull(desk.Answers.MatchedGroups);
    }
}
