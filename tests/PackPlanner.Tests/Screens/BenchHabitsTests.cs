using PackPlanner.Core.Jobs;
using PackPlanner.Screens;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Tests.Screens;

/// <summary>What hands do without looking: Enter on a list that opens, Esc while something runs, a page down, a name too long for its column.</summary>
public class BenchHabitsTests
{
    [Fact]
    public void A_list_of_choices_begins_on_what_holds_so_that_Enter_changes_nothing()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");

        bench.Press("1", "Enter");
        Assert.Contains("> NMC", bench.Text());
        bench.Press("Enter");
        Assert.Equal("NMC", bench.Desk.Job!.Givens.Chemistry?.Name);
        bench.Set("chemistry", null);
        bench.Press("Enter");
        Assert.Contains("> LFP", bench.Text());

        bench.Press("Esc", "3", "b");
        Assert.Contains("> equal Ah", bench.Text());
        bench.Press("Down", "Enter", "b");
        Assert.Contains("> even currents", bench.Text());

        bench.Press("Esc", "4", "g");
        Assert.Contains("> upright", bench.Text());
        bench.Press("Down", "Enter", "g");
        Assert.Contains("> lying, along x", bench.Text());
    }

    [Theory]
    [InlineData("steadyA", "steady load A  22")]
    [InlineData("controllerLowV", "controller lowest V  39")]
    [InlineData("cellMassLimitKg", "cells may weigh, kg  11")]
    [InlineData("temperatureDegC", "temperature of use (degC)  8")]
    [InlineData("whPerKm", "Wh per km  38")]
    public void A_unit_is_said_once_where_a_figure_is_typed(string key, string field)
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");

        GivenField.Ask(bench.Desk, key);

        Assert.Contains(field, bench.Text());
    }

    // The way to a job of one's own is told beside a copy of invented data only.
    [Fact]
    public void Sheets_of_a_job_of_ones_own_do_not_send_to_a_job_of_ones_own()
    {
        using Bench bench = new();
        bench.OpenLot();

        bench.Press("8", "A", "w");

        Assert.Matches(@"^\d+ files in .*sheets\.$", bench.Desk.Says);
    }

    [Fact]
    public void A_name_too_long_for_its_column_is_whole_under_the_cursor()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("1");
        bench.Set("kmBefore", new JobValue.Number(61.5));
        while (!bench.Text().Contains("> km of the ride of the log before", StringComparison.Ordinal))
            bench.Press("Down");

        Assert.Matches(@"> km of the ride of the log before +61\.5 km", bench.Text());
        bench.Press("Down");
        Assert.Matches(@"km of the ride of the log …", bench.Text());
    }

    [Fact]
    public void The_preview_of_a_sheet_says_all_of_what_settles_a_finding()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("tractor");
        bench.Press("7");
        bench.Text();
        bench.Press("8", "End", "Enter");

        string text = System.Text.RegularExpressions.Regex.Replace(bench.Text(80, 60), @"[\s_]+", " ");
        Assert.Contains("settle it by: Measure millivolts over each joint", text);
        Assert.DoesNotContain('…', bench.Text(80, 60).Split('\n')[6..^8].Aggregate("", (all, line) => all + line));
    }

    [Fact]
    public void A_page_down_on_Energy_is_a_page_and_End_the_end()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");
        bench.Press("6");
        bench.Text();

        bench.Press("PgDn");
        Assert.StartsWith("8 ", bench.Desk.Step.Place);
        bench.Press("End", "PgUp", "Home");
        Assert.StartsWith("0 ", bench.Desk.Step.Place);
    }

    [Fact]
    public void The_work_that_a_step_waits_for_is_told_there_and_Esc_stops_that()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");
        DateTime now = Bench.Noon;
        List<Action> started = [];
        Desk desk = new(
            new Surroundings { Now = () => now = now.AddSeconds(1), JobsFolder = bench.JobsFolder, LastJobFile = Path.Combine(bench.JobsFolder, "last"), Aside = started.Add },
            new Look());
        // Verdicts of so few cells are there at once; groups and places are begun and do not end.
        desk.Use(bench.Desk.Open!, 3);
        desk.Draw(80, 24);
        desk.GoTo(2);
        desk.Do(JobChanges.Prefer(GroupsFavour.EvenCurrents));
        desk.Draw(80, 24);

        Assert.StartsWith("matching", desk.Work!.Words(now));
        desk.GoTo(4);
        Assert.StartsWith("looking for places", desk.Work!.Words(now));
        desk.Press("Esc");
        Assert.True(desk.Work!.Stopped.IsCancellationRequested);
        desk.GoTo(2);
        Assert.False(desk.Work!.Stopped.IsCancellationRequested);
    }
}
