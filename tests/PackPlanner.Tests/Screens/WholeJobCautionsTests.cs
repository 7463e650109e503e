using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
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
        AreTheSame(bench);
    }

    [Fact]
    public void Groups_that_mix_models_are_told_by_both()
    {
        using Bench bench = new();
        bench.Desk.Store.New("Two models");
        CellRow[] rows = [.. Enumerable.Range(1, 8).Select(i => new CellRow
        {
            Label = $"M{i}", File = "cells.csv", Line = i + 1, CapacityAh = 4.4 + (0.01 * i), ResistanceMilliohm = 30, ResistanceKind = ResistanceKind.Dc, RestV = 3.6, Model = i is 1 or 2 or 3 ? "invented A" : "invented B",
        })];
        bench.Desk.Do(JobChanges.AddTable(new JobTable(new JobSource("s1", "cells.csv", new string('0', 64), SourceKind.Cells, []), rows, 0)));
        foreach ((string key, double value) in new[] { ("ratedAh", 4.6), ("series", 4.0), ("parallel", 2.0) })
            bench.Set(key, new JobValue.Number(value));
        bench.Set("chemistry", new JobValue.Word("NMC"));
        bench.Desk.GoTo(2);
        Assert.Contains(AreTheSame(bench), caution => caution.Contains("groups mix cells of several models", StringComparison.Ordinal));
    }

    private static string[] AreTheSame(Bench bench)
    {
        bench.Text();
        string[] seen = [.. bench.Desk.AllCautions.Select(Text)];
        Assert.True(seen.Length > 2);

        Assert.True(JobSummary.Whole(bench.Desk.Open!.History, TestContext.Current.CancellationToken).Is(out IReadOnlyList<Caution>? told, out Refusal? why), why?.Problem.Why);

        Assert.Equal(seen.Order(), told.Select(Text).Order());
        return seen;
    }

    private static string Text(Caution caution) => $"{caution.Signal.ToString().ToUpperInvariant()} {caution.Code} {caution.Where}: {caution.Saw}";
}
