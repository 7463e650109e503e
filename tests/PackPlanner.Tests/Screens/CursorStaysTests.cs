using PackPlanner.Core.Jobs;
using PackPlanner.Screens;

namespace PackPlanner.Tests.Screens;

/// <summary>On every list the cursor stays on the same thing, whatever comes and goes above it.</summary>
public sealed class CursorStaysTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void On_Cavity_it_stays_on_a_line_of_the_answer_through_a_search_that_takes_them_all_away()
    {
        bench.Desk.Store.Demo("scooter");
        bench.Press("4", "Home", "Down", "Down");
        bench.Text();
        Assert.Equal("used", Marked(bench.Desk).Split(' ')[0]);
        List<string> meanwhile = [];
        Desk slow = bench.SlowDesk(3, desk => meanwhile.Add(desk.Draw(80, 24).ToText()));
        slow.Steps[3].Place = bench.Desk.Steps[3].Place;

        slow.Draw(80, 24);

        Assert.NotEmpty(meanwhile);
        Assert.StartsWith("used", Marked(slow));
        // One more line above it: a first line of reasons, since so many in parallel do not fit.
        slow.Do(JobChanges.Set("parallel", new Given(new JobValue.Number(90), Origin.You(slow.Today))));
        slow.Draw(80, 24);
        Assert.StartsWith("used", Marked(slow));
    }

    [Fact]
    public void On_Energy_it_stays_on_its_line_when_draws_come_above_it_and_go_again()
    {
        bench.OpenLot();
        bench.Set("steadyA", new JobValue.Number(10));
        bench.Desk.GoTo(5);
        bench.Text(80, 40);
        bench.Press("End");
        string before = Marked(bench.Desk);

        bench.Press("Up", "h");
        string above = Marked(bench.Desk);
        bench.Press("Down");
        Assert.Equal(before, Marked(bench.Desk));
        bench.Set("steadyA", new JobValue.Number(11));

        Assert.NotEqual(before, above);
        Assert.StartsWith(before.Split("  ")[0], Marked(bench.Desk));
    }

    [Fact]
    public void On_Job_it_stays_on_a_file_when_one_above_is_taken_out_and_put_back()
    {
        bench.OpenLot();
        JobTable first = bench.Desk.Job!.Tables[0];
        bench.Desk.Do(JobChanges.AddTable(first with { Source = first.Source with { Id = "s2", File = "second.csv" }, Rows = [] }));
        bench.Press("End");
        Assert.Contains("second.csv", Marked(bench.Desk));

        bench.Desk.Do(JobChanges.Remove(first.Source));
        Assert.Contains("second.csv", Marked(bench.Desk));
        bench.Press("u");

        Assert.Contains("second.csv", Marked(bench.Desk));
    }

    [Fact]
    public void A_caution_that_is_being_read_stays_under_the_cursor_when_a_graver_one_arrives()
    {
        bench.OpenLot();
        bench.Set("maxMilliohm", new JobValue.Number(30));
        bench.Press("!");
        string before = Marked(bench.Desk);
        int many = bench.Desk.AllCautions.Count;

        bench.Desk.Do(JobChanges.Edit(new CellKey("T003", 1, CellField.RestV), new CellEdit(new JobValue.Number(4.5), Origin.You(bench.Desk.Today))));

        Assert.True(bench.Desk.AllCautions.Count > many, bench.Text());
        Assert.Equal(before, Marked(bench.Desk));
    }

    [Fact]
    public void On_Cells_it_stays_on_its_cell_when_a_verdict_changes_under_a_sort_of_ones_own()
    {
        bench.OpenLot();
        bench.Press("2");
        bench.Text(120, 40);
        bench.Press([.. Enumerable.Repeat("Left", 20)]);
        bench.Press("s", "Home", "Down", "Down");
        Assert.StartsWith("T003", Marked(bench.Desk));

        // A cell of those that stood below goes to those that are held, above.
        bench.Desk.Do(JobChanges.SetVerdict("T008", new VerdictOverride(PackPlanner.Core.Screening.Verdict.Hold, "dented", Origin.You(bench.Desk.Today))));

        Assert.StartsWith("T003", Marked(bench.Desk));
    }

    [Fact]
    public void On_Place_the_other_side_is_seen_with_the_cursor_on_the_same_cell()
    {
        bench.Desk.Store.Demo("trike");
        bench.Press("5", "Home", "Right", "Down");
        bench.Text();
        string cell = bench.Desk.Step.WhereFrom()!.Title;

        bench.Press("o");

        Assert.Equal(cell, bench.Desk.Step.WhereFrom()!.Title);
    }

    private static string Marked(Desk desk)
    {
        string text = desk.Draw(120, 40).ToText();
        System.Text.RegularExpressions.MatchCollection marks = System.Text.RegularExpressions.Regex.Matches(text, @"[ │]> +(?<line>[^\n]*)");
        Assert.True(marks.Count == 1, text);
        return marks[0].Groups["line"].Value.Trim();
    }
}
