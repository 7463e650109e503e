using PackPlanner.Core.Cautions;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Tests.Screens;

/// <summary>A script that judges a job by its cautions judges what its owner sees.</summary>
public class WholeJobCautionsTests
{
    [Theory]
    [InlineData("trike")]
    [InlineData("tractor")]
    [InlineData("scooter")]
    public void The_cautions_of_job_show_are_those_of_the_screens(string scene)
    {
        using Bench bench = new();
        bench.Desk.Store.Demo(scene);
        bench.Text();
        string[] seen = [.. bench.Desk.AllCautions.Select(Text)];
        Assert.True(seen.Length > 2, scene);

        Assert.True(JobSummary.Whole(bench.Desk.Open!.History, TestContext.Current.CancellationToken).Is(out IReadOnlyList<Caution>? told, out Refusal? why), why?.Problem.Why);

        Assert.Equal(seen.Order(), told.Select(Text).Order());
    }

    private static string Text(Caution caution) => $"{caution.Signal.ToString().ToUpperInvariant()} {caution.Code} {caution.Where}: {caution.Saw}";
}
