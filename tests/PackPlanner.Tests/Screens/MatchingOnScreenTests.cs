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
        Assert.Matches(@"matching \d+ s +smallest \d+\.\d{3} Ah, all within", shown[0]);
        Assert.Contains("T00", shown[1], StringComparison.Ordinal);
        // Stopped by Esc: the groups found so far are kept.
        Assert.Contains("900s10p", desk.Draw(80, 24).ToText(), StringComparison.Ordinal);
        Assert.NotNull(desk.Answers.MatchedGroups);
    }

    [Fact]
    public void Groups_and_verdicts_from_before_stay_on_the_screen_and_say_so_while_new_ones_are_made()
    {
        using Bench bench = new();
        bench.OpenLot(cells: 10_000, series: 900, parallel: 10);
        string shown = "";
        bool rejected = false;
        Desk desk = bench.SlowDesk(2, desk =>
        {
            if (rejected && shown.Length == 0)
                shown = desk.Draw(80, 24).ToText() + desk.Draw(120, 36).ToText();
            desk.Press("Esc");
        });
        desk.Draw(80, 24);
        desk.Press("Down");
        desk.Press("Down");
        Assert.Contains(" >       3 ", desk.Draw(80, 24).ToText(), StringComparison.Ordinal);

        rejected = true;
        desk.Do(JobChanges.SetVerdict("T00003", new VerdictOverride(PackPlanner.Core.Screening.Verdict.Reject, "dented", Origin.You(desk.Today))));
        string after = desk.Draw(80, 24).ToText();

        Assert.Contains("Being matched anew; the groups below are those from before.", shown, StringComparison.Ordinal);
        Assert.Contains("the groups from before: others are being made", shown, StringComparison.Ordinal);
        Assert.Contains(" >       3 ", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("from before", after, StringComparison.Ordinal);
        Assert.Contains(" >       3 ", after, StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_of_energy_from_before_stay_while_what_they_rest_on_is_made_anew()
    {
        using Bench bench = new();
        bench.OpenLot(cells: 10_000, series: 900, parallel: 10);
        string shown = "";
        bool changed = false;
        Desk desk = bench.SlowDesk(5, desk =>
        {
            if (changed && shown.Length == 0)
                shown = desk.Draw(80, 24).ToText();
            desk.Press("3");
            desk.Press("Esc");
            desk.Press("6");
        });
        desk.Draw(80, 24);

        changed = true;
        desk.Do(JobChanges.Set("parallel", new Given(new JobValue.Number(11), Origin.You(desk.Today))));
        string after = desk.Draw(80, 24).ToText();

        Assert.Contains("The energy is being counted anew; the figures below are those from before.", shown, StringComparison.Ordinal);
        Assert.Contains("new, as on the label", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("from before", after, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_grouping_favours_stands_in_the_answer_and_in_its_rule()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("3");
        Assert.Contains("Matched: 4 groups of 2 within ", bench.Text(), StringComparison.Ordinal);

        bench.Press("b", "Down", "Down", "Enter");
        Assert.Contains("Nothing is arranged yet", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("b", "Down", "Enter");
        Assert.Contains("even currents first: 4 groups of 2 within ", bench.Text(), StringComparison.Ordinal);
        bench.Press("=");
        Assert.Contains("even currents first: cells of like milliohm", bench.Text(120, 36), StringComparison.Ordinal);
    }

    // A spread is one standard deviation; how far groups lie apart is something else.
    [Fact]
    public void Groups_and_ranges_are_not_called_a_spread()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Set("steadyA", new PackPlanner.Core.Jobs.JobValue.Number(10));

        bench.Press("3");
        Assert.DoesNotContain("pread", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("6");
        while (!bench.Text(120, 36).Contains("> usable", StringComparison.Ordinal))
            bench.Press("Down");
        bench.Press("=");
        Assert.Matches(@"range +\d+ to \d+ Wh nine times in ten", bench.Text(120, 36));
    }
}
