using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Sheets;

namespace PackPlanner.Tests.Screens;

/// <summary>Groups that were arranged by hand or read from a file, and what groups favour: the same on screens and on paper.</summary>
public sealed class ArrangedGroupsTests : IDisposable
{
    private const int Groups = 2;

    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    private static JobSource File(string id) => new(id, "groups.json", new string('b', 64), SourceKind.Groups, []);

    private static JobGrouping Arranged(JobSource? source = null) => new(
        [["T003", "T004"], ["T005", "T006"], ["T007", "T008"], ["T009", "T010"]], new Origin("groups.json", Standing.Measured), source);

    private static string[] Labels(IReadOnlyList<JobGroup> groups) => [.. groups.Select(group => string.Join(" ", group.Cells.Select(cell => cell.Label)))];

    private string[] OnPaper() => SheetInput.Of(bench.Desk.Open!.History, bench.Desk.Today, TestContext.Current.CancellationToken).Is(out SheetInput? input, out _)
        ? Labels([.. input.Groups.OrderBy(group => group.Number)]) : ["refused"];

    private string[] OnScreen()
    {
        bench.Desk.GoTo(Groups);
        bench.Text();
        return Labels(bench.Desk.Answers.MatchedGroups ?? []);
    }

    [Fact]
    public void A_rejected_cell_of_an_arrangement_is_named_and_spares_come_in_only_when_asked_for()
    {
        bench.OpenLot();
        bench.Desk.Do(JobChanges.SetGrouping("arrange", Arranged()));
        Assert.Equal(["T003 T004", "T005 T006", "T007 T008", "T009 T010"], OnScreen());
        Assert.Contains("Arranged (groups.json)", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);

        bench.Desk.Do(JobChanges.SetVerdict("T005", new VerdictOverride(Verdict.Reject, "smells", new Origin("you", Standing.Measured))));

        Assert.Empty(OnScreen());
        Assert.Empty(OnPaper());
        Assert.Contains("T005 is rejected (by-hand), in group 2.", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);
        Assert.Equal("T006 T005 (! reject, replace it)", bench.Desk.Step.Table().Rows[1][^1]);
        Assert.Contains("T006 !T005", bench.Text(), StringComparison.Ordinal);

        bench.Press("6");
        Assert.Contains("must be replaced first", bench.Text(), StringComparison.Ordinal);
        bench.Press("3");

        bench.Press("b");
        bench.Press("Down", "Down", "Enter");

        string[] moved = OnScreen();
        Assert.Equal(4, moved.Length);
        Assert.DoesNotContain("T005", string.Join(" ", moved), StringComparison.Ordinal);
        Assert.Equal(["T003 T004", "T007 T008", "T009 T010"], [moved[0], moved[2], moved[3]]);
        Assert.Contains("T006", moved[1], StringComparison.Ordinal);
        Assert.StartsWith("2 cells move (1 in, 1 out): ", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);
        Assert.Contains("other cells stand in the places of these: T005 is rejected", bench.Desk.Step.Picture.Answer, StringComparison.Ordinal);
        Assert.Equal(moved, OnPaper());
        bench.Press("u");
        Assert.Empty(OnScreen());
    }

    [Fact]
    public void A_held_cell_of_an_arrangement_is_replaced_by_a_spare_that_is_chosen()
    {
        bench.OpenLot();
        bench.Desk.Do(JobChanges.SetGrouping("arrange", Arranged()));
        bench.Desk.Do(JobChanges.SetVerdict("T005", new VerdictOverride(Verdict.Hold, "bad weld", new Origin("you", Standing.Measured))));
        Assert.Empty(OnScreen());
        Assert.Equal(["refused"], OnPaper() is [] ? ["refused"] : OnPaper());

        bench.Press("Down", "x");
        Assert.Contains("! hold", bench.Text(), StringComparison.Ordinal);
        bench.Press("Enter");
        Assert.Contains("rests at", bench.Text(), StringComparison.Ordinal);
        bench.Press("Enter");

        string[] mended = OnScreen();
        Assert.Equal(["T003 T004", "T007 T008", "T009 T010"], [mended[0], mended[2], mended[3]]);
        Assert.Contains("T006", mended[1], StringComparison.Ordinal);
        Assert.DoesNotContain("T005", mended[1], StringComparison.Ordinal);
        Assert.Equal(mended, OnPaper());
    }

    // Even currents gives other groups than equal Ah on this lot; both are answered, on screen and on paper, after a restart too.
    [Fact]
    public void What_groups_favour_belongs_to_the_job()
    {
        bench.OpenLot(cells: 16, series: 3, parallel: 4);
        string[] equal = OnScreen();

        bench.Press("b");
        bench.Press("Down", "Enter");

        string[] even = OnScreen();
        Assert.NotEqual(equal, even);
        Assert.Equal("favour even currents", bench.Desk.Open!.History.UndoName);
        Assert.Equal(even, OnPaper());

        bench.Restart();
        Assert.Equal(even, OnScreen());
        string file = bench.Desk.Open!.File;
        Assert.True(bench.Desk.Store.New("Another"));
        Assert.Equal(GroupsFavour.EqualAh, bench.Desk.Job!.Favour);
        Assert.True(bench.Desk.Store.OpenFile(file));
        Assert.Equal(even, OnScreen());
        bench.Press("u");
        Assert.Equal(equal, OnScreen());
        Assert.Equal(equal, OnPaper());
    }

    [Fact]
    public void A_file_of_groups_can_be_taken_out_like_any_other()
    {
        bench.OpenLot();
        bench.Desk.Do(JobChanges.AddGrouping(Arranged(File("s2"))));
        bench.Desk.GoTo(0);
        bench.Text();
        bench.Press("End");
        Assert.Contains("groups.json", bench.Text(80, 60), StringComparison.Ordinal);

        bench.Press("D");

        Assert.Null(bench.Desk.Job!.Grouping);
        Assert.NotEmpty(bench.Desk.Job.Tables);
    }

    // One rule for the screen, the verb and the sheets: where groups are to be made of cells, a log does not stand in for them.
    [Fact]
    public void A_log_does_not_stand_in_for_groups_that_cells_do_not_suffice_for()
    {
        Job job = Assert.IsType<Outcome<JobHistory>.Given>(PackPlanner.Formats.Demos.DemoJobs.Of("tractor")).Value.Now;
        job = job with { Givens = job.Givens.With("parallel", new Given(new JobValue.Number(1), Origin.You(new DateOnly(2026, 11, 2)))) };
        Assert.NotNull(JobEnergy.Request(job, [], TestContext.Current.CancellationToken));

        job = job with { AddedRows = [new() { Label = "spare", CapacityAh = 10 }] };

        Assert.Null(JobEnergy.Request(job, [], TestContext.Current.CancellationToken));
        (IReadOnlyList<JobGroup> groups, var outcome) = JobGroups.Find(job, JobLot.Judge(job), TestContext.Current.CancellationToken);
        Assert.False(JobEnergyAnswer.Of(job, groups, outcome, [], TestContext.Current.CancellationToken).Is(out _, out var why));
        Assert.Contains("16 cells are needed", why!.Problem.Why, StringComparison.Ordinal);
    }
}
