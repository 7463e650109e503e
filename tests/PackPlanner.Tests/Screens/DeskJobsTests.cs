using System.Text.RegularExpressions;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Screens;

namespace PackPlanner.Tests.Screens;

/// <summary>Jobs on the desk: each change saved at once, taken back and done again; copies, other programs, a killed program.</summary>
public class DeskJobsTests
{
    [Fact]
    public void What_a_killed_program_left_beside_a_job_goes_when_the_job_is_opened_and_nothing_else_does()
    {
        using Bench bench = new();
        bench.OpenLot();
        string file = bench.Desk.Open!.File, whole = File.ReadAllText(file);
        // No process has a number as large as this; the other is this one, which runs.
        string[] stay = [$"{file}.{Environment.ProcessId}.new", $"{file}.mine.new", $"{file}.2147483647.old", Path.Combine(bench.JobsFolder, "other.job.json.2147483647.new")];
        foreach (string beside in stay.Append($"{file}.2147483647.new"))
            File.WriteAllText(beside, "half");

        Assert.True(bench.Desk.Store.OpenFile(file));

        Assert.Equal(stay.Append(file).Order(StringComparer.Ordinal), Directory.GetFiles(bench.JobsFolder).Order(StringComparer.Ordinal));
        Assert.Equal(whole, File.ReadAllText(file));
    }

    [Fact]
    public void What_lies_beside_a_job_that_another_program_writes_just_now_is_left()
    {
        using Bench bench = new();
        bench.OpenLot();
        string file = bench.Desk.Open!.File, stray = $"{file}.2147483647.new";
        File.WriteAllText(stray, "half");
        using (FileStream turn = new($"{file}.lock", FileMode.Create, FileAccess.ReadWrite, FileShare.None))
        {
            Assert.True(bench.Desk.Store.OpenFile(file));
            Assert.True(File.Exists(stray));
        }

        Assert.True(bench.Desk.Store.OpenFile(file));
        Assert.False(File.Exists(stray));
    }

    [Fact]
    public void Every_change_is_in_the_file_at_once()
    {
        using Bench bench = new();
        bench.OpenLot();

        bench.Set("peakA", new JobValue.Number(40));

        Assert.True(JobFile.Open(bench.Desk.Open!.File).Is(out OpenJob? stored, out _));
        Assert.Equal(40, stored.History.Now.Givens.PeakA);
    }

    [Fact]
    public void Undo_and_redo_reach_every_change_and_name_it()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Set("peakA", new JobValue.Number(40));

        bench.Press("u");
        Assert.Null(bench.Desk.Job!.Givens.PeakA);
        Assert.Contains("undone: set peak load A", bench.Desk.Says);

        bench.Press("U");
        Assert.Equal(40, bench.Desk.Job!.Givens.PeakA);

        for (int i = 0; i < 6; i++)
            bench.Press("u");
        Assert.Empty(bench.Desk.Job!.Tables);
        bench.Press("u");
        Assert.Contains("nothing to take back", bench.Desk.Says);
    }

    [Fact]
    public void After_a_kill_the_same_job_step_and_row_come_back()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("2");
        bench.Text();
        bench.Press("Down", "Down", "Down");
        bench.Text();
        string? row = bench.Desk.Step.Place;

        bench.Restart();
        bench.Text();

        Assert.Equal("Cells", bench.Desk.Step.Name);
        Assert.Equal(row, bench.Desk.Step.Place);
        Assert.Contains($"> ", bench.Text());
    }

    [Fact]
    public void A_job_that_another_program_changed_is_not_written_over()
    {
        using Bench bench = new();
        bench.OpenLot();
        Desk other = bench.NewDesk();
        Assert.True(other.Store.OpenFile(bench.Desk.Open!.File));
        other.Do(JobChanges.Rename("theirs"));

        bench.Set("peakA", new JobValue.Number(40));

        Assert.Contains("NOT SAVED", bench.Desk.Says);
        Assert.Contains("NOT SAVED", bench.Text());
        Assert.True(JobFile.Open(bench.Desk.Open.File).Is(out OpenJob? stored, out _));
        Assert.Equal("theirs", stored.History.Now.Title);

        // What keeps one's work is named, and is there.
        Assert.Contains("\"copy this job\" keeps yours; \"open a job\" takes the other's.", Regex.Replace(bench.Text(), @"\s+", " "), StringComparison.Ordinal);
        bench.Press(":");
        bench.Type("copy this job");
        Assert.Contains("copy this job, to compare", bench.Text(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_copy_is_another_job_and_leaves_the_first_as_it_was()
    {
        using Bench bench = new();
        bench.OpenLot();
        string first = bench.Desk.Open!.File;

        bench.Desk.Store.CopyAs("Variant");
        bench.Set("series", new JobValue.Number(3));

        Assert.NotEqual(first, bench.Desk.Open!.File);
        Assert.True(JobFile.Open(first).Is(out OpenJob? stored, out _));
        Assert.Equal(4, stored.History.Now.Givens.Series);
    }

    [Fact]
    public void A_deleted_job_comes_back_by_undo_with_all_that_it_held()
    {
        using Bench bench = new();
        bench.OpenLot();
        string file = bench.Desk.Open!.File;
        int revision = bench.Desk.Open.History.Revision;
        bench.Desk.Store.Delete();
        Assert.Null(bench.Desk.Open);
        Assert.False(File.Exists(file));

        bench.Press("u");

        Assert.Equal(file, bench.Desk.Open!.File);
        Assert.Equal(revision, bench.Desk.Open.History.Revision);
        Assert.Equal(12, bench.Desk.Job!.Rows.Count);
        Assert.Null(bench.Desk.Store.Deleted);
    }

    [Fact]
    public void A_deleted_job_is_put_aside_and_can_be_opened_again()
    {
        using Bench bench = new();
        bench.OpenLot();

        bench.Desk.Store.Delete();

        Assert.Null(bench.Desk.Open);
        string aside = Assert.Single(Directory.GetFiles(bench.JobsFolder));
        Assert.True(bench.Desk.Store.OpenFile(aside));
    }

    [Fact]
    public void A_second_job_of_a_name_is_put_aside_beside_the_first()
    {
        using Bench bench = new();
        foreach (string title in new[] { "first", "second", "third" })
        {
            Assert.True(bench.Desk.Store.New("Trike"));
            bench.Desk.Do(JobChanges.Rename(title));
            bench.Desk.Store.Delete();
        }

        string[] titles = [.. Directory.GetFiles(bench.JobsFolder).Select(file => JobFile.Open(file).Is(out OpenJob? open, out _) ? open.History.Now.Title : "").Order(StringComparer.Ordinal)];
        Assert.Equal(["first", "second", "third"], titles);
    }
}
