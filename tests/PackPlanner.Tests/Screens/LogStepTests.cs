using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.LogScreen;
using PackPlanner.Screens.Plots;

namespace PackPlanner.Tests.Screens;

/// <summary>Step Log on the invented tractor: its plots, the second log beside, the groups drawn, wide ranges.</summary>
public class LogStepTests
{
    [Fact]
    public void The_plot_goes_through_volts_volts_less_the_median_drops_and_rests()
    {
        using Bench bench = Bench.TractorsLog();

        bench.Press("Tab");
        Assert.Contains("and median m", bench.Text(), StringComparison.Ordinal);
        bench.Press("t");
        Assert.Contains("less the median", bench.Text(), StringComparison.Ordinal);
        bench.Press("t");
        Assert.Contains("drop of each group at 56 A", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("t");
        Assert.Contains("rest 1 of", bench.Text(), StringComparison.Ordinal);
        bench.Press("Right");
        Assert.Contains("rest 2 of", bench.Text(), StringComparison.Ordinal);
        bench.Press("t");
        Assert.Contains("and median m", bench.Text(), StringComparison.Ordinal);
    }

    // At 60x18 there is room for one of the two.
    [Fact]
    public void On_a_small_screen_Tab_shows_the_plot_in_place_of_the_table()
    {
        using Bench bench = Bench.TractorsLog();
        string table = bench.Text(60, 18);
        Assert.Contains("group 11", table, StringComparison.Ordinal);
        Assert.DoesNotContain("median m", table, StringComparison.Ordinal);

        bench.Press("Tab");
        Assert.Contains("group 11 and median m", bench.Text(60, 18), StringComparison.Ordinal);
        Assert.Contains("┤", bench.Text(60, 18), StringComparison.Ordinal);
        bench.Press("z", "t");
        Assert.Contains("less the median, 25 to 75 %", bench.Text(60, 18), StringComparison.Ordinal);
        bench.Press("Tab");
        Assert.Equal(table, bench.Text(60, 18));
    }

    [Fact]
    public void A_key_that_moves_nothing_in_a_plot_says_why()
    {
        using Bench bench = Bench.TractorsLog();
        bench.Press("Tab", "Right");
        Assert.Contains("All of the time is shown: z looks nearer", bench.Text(), StringComparison.Ordinal);

        bench.Press("z", "Right");
        Assert.DoesNotContain("All of the time is shown", bench.Text(), StringComparison.Ordinal);
        bench.Press("t", "t", "Right");
        Assert.Contains("there is no time to move in", bench.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void First_values_of_a_log_are_those_that_were_used()
    {
        using Bench bench = new();
        bench.Desk.Store.New("Reading");
        bench.Press("7");

        PackPlanner.Screens.Reading.ReadingStart.File(bench.Desk, House.Repository.At("sample-data", "tractor", "ride-october.csv"));
        bench.Press("Home");

        // The first seconds read 6 V in every cell and are set aside.
        Assert.Matches(@"Cell01 .*3\.\d+V 3\.\d+V", bench.Text(120, 36));
    }

    [Fact]
    public void What_is_dangerous_comes_before_a_test_that_begins_with_a_charge()
    {
        using Bench bench = Bench.TractorsLog();

        Assert.Equal("Measure groups 8 and 9 with a meter, mend the wire or its contact", bench.Desk.Step.Picture.Next);
        Assert.Contains(" Next  Measure groups 8 and 9 with a meter, mend the wire or its contact\n", bench.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_volts_are_drawn_while_the_log_cannot_be_judged_yet()
    {
        using Bench bench = Bench.TractorsLog();
        bench.Desk.Do(JobChanges.Set("chemistry", null));

        string text = bench.Text();

        Assert.Contains("cannot be judged yet", text, StringComparison.Ordinal);
        Assert.Contains("median m", text, StringComparison.Ordinal);
        Assert.Contains(" 3.2 ┤", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_that_is_added_is_the_one_that_is_shown()
    {
        using Bench bench = Bench.TractorsLog();
        bench.Press("d");
        Assert.Contains("log 1 of 2", bench.Text(), StringComparison.Ordinal);

        bench.Desk.Do(new JobChange("again", job => job with { Logs = job.Logs.Add(job.Logs[0]) }));

        Assert.Contains("log 3 of 3", bench.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_dive_of_one_row_in_many_is_on_the_screen()
    {
        const int Rows = 100_003;
        double[] volts = [.. Enumerable.Range(0, Rows).Select(row => row == 77_777 ? 2.5 : 3.3)];
        RideLog log = new() { Source = "invented", TimeS = [.. Enumerable.Range(0, Rows).Select(row => (double)row)], CurrentA = null, GroupV = [volts, [.. Enumerable.Repeat(3.3, Rows)]] };

        IReadOnlyList<BrailleCurves.Curve> curves = LogCurves.Of(log, [1], 0, 1);

        Assert.Equal(2.5, curves[1].Y.Min());
        Assert.InRange(curves[1].Y.Count, 600, 2000);
    }

    [Fact]
    public void A_plot_of_three_rows_has_figures_enough_at_its_axis_and_equal_ones_are_said_to_be_at_the_median()
    {
        using Bench bench = Bench.TractorsLog();

        Assert.Equal([" 3.5 ┤", " 3.0 ┤", " 2.5 ┤"], bench.Text().Split('\n').Where(row => row.Length > 5 && row[5] == '┤').Select(row => row[..6]));
        bench.Press("Tab", "t", "t", "t", "Right");
        Assert.Contains("13 others at the median", bench.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_log_stands_beside_and_chosen_groups_are_drawn_in_both()
    {
        using Bench bench = Bench.TractorsLog();

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
        using Bench bench = Bench.TractorsLog();

        bench.Press("Tab", "z");
        Assert.Contains("25 to 75 % of the time", bench.Text(), StringComparison.Ordinal);
        bench.Press("Right");
        Assert.Contains("38 to 88 % of the time", bench.Text(), StringComparison.Ordinal);
        bench.Press("Z");
        Assert.DoesNotContain("% of the time", bench.Text(), StringComparison.Ordinal);
    }

    // The joint adds 1.1 milliohm to cell 4; the whole group's 1.58 would be no size of a joint.
    [Fact]
    public void A_joint_is_as_large_as_what_it_adds()
    {
        using Bench bench = Bench.TractorsLog();

        Assert.Matches("joint +\\+1\\.1[0-9] ± ", bench.Text(120, 36));
    }

    [Fact]
    public void Every_view_tells_where_the_figure_under_the_cursor_comes_from()
    {
        using Bench bench = Bench.TractorsLog();

        bench.Press("=");
        Assert.Contains("nine times in ten", bench.Text(), StringComparison.Ordinal);
        bench.Press("Esc", "t", "Down", "=");
        string group = bench.Text();
        Assert.Contains("Ah of group 2", group, StringComparison.Ordinal);
        Assert.Contains("% of the median group", group, StringComparison.Ordinal);
        bench.Press("Esc", "t", "=");
        Assert.Contains("volts and amperes as logged", bench.Text(), StringComparison.Ordinal);
        bench.Press("Esc", "r", "=");
        string remedy = bench.Text();
        Assert.Contains("Wh after a remedy", remedy, StringComparison.Ordinal);
        Assert.Contains("Mend the joint at group 4", remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_latest_log_warns_of_stands_whichever_log_is_looked_at()
    {
        using Bench bench = Bench.TractorsLog();
        bench.Text();
        string[] before = [.. bench.Desk.AllCautions.Select(caution => $"{caution.Code} {caution.Where}")];
        Assert.Contains(before, caution => caution.StartsWith("caution-16", StringComparison.Ordinal));

        bench.Press("d");
        bench.Text();

        Assert.Empty(before.Except(bench.Desk.AllCautions.Select(caution => $"{caution.Code} {caution.Where}")));
    }
}
