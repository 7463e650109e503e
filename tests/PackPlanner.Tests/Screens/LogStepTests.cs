namespace PackPlanner.Tests.Screens;

/// <summary>Step Log on the invented tractor: its plots, the second log beside, the groups drawn, wide ranges.</summary>
public class LogStepTests
{
    private static Bench Open()
    {
        Bench bench = new();
        bench.Desk.Store.Demo("tractor");
        bench.Press("7");
        return bench;
    }

    [Fact]
    public void The_plot_goes_through_volts_volts_less_the_median_drops_and_rests()
    {
        using Bench bench = Open();

        bench.Press("Tab");
        Assert.Contains("and median m", bench.Text(), StringComparison.Ordinal);
        bench.Press("t");
        Assert.Contains("less the median", bench.Text(), StringComparison.Ordinal);
        bench.Press("t");
        Assert.Contains("drop of each group at 56 A", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("t");
        Assert.Contains("at rest, 1 of", bench.Text(), StringComparison.Ordinal);
        bench.Press("Right");
        Assert.Contains("at rest, 2 of", bench.Text(), StringComparison.Ordinal);
        bench.Press("t");
        Assert.Contains("and median m", bench.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_log_stands_beside_and_chosen_groups_are_drawn_in_both()
    {
        using Bench bench = Open();

        bench.Press("Tab", "d", "c", "Down", "Enter", "Down", "Enter", "Esc");
        string text = bench.Text(120, 36);

        Assert.Contains("log 2 of 2: groups 2, 3 and m", text, StringComparison.Ordinal);
        Assert.Contains("log 1 of 2: groups 2, 3 and m", text, StringComparison.Ordinal);
        bench.Press("d");
        Assert.DoesNotContain("log 1 of 2", bench.Text(120, 36), StringComparison.Ordinal);
    }

    [Fact]
    public void Nearer_and_farther_change_the_part_of_the_time_that_is_shown()
    {
        using Bench bench = Open();

        bench.Press("Tab", "z");
        Assert.Contains("25 to 75 % of the time", bench.Text(), StringComparison.Ordinal);
        bench.Press("Right");
        Assert.Contains("38 to 88 % of the time", bench.Text(), StringComparison.Ordinal);
        bench.Press("Z");
        Assert.DoesNotContain("% of the time", bench.Text(), StringComparison.Ordinal);
    }
}
