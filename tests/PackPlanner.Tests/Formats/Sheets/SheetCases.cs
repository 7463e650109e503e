using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.Sheets;

namespace PackPlanner.Tests.Formats.Sheets;

/// <summary>Jobs that the tests make sheets of.</summary>
internal static class SheetCases
{
    internal static readonly DateOnly Day = new(2026, 11, 24);

    internal static readonly Lazy<SheetInput> Trike = new(() => Input(Demo()));

    internal static JobHistory Demo() => Assert.IsType<Outcome<JobHistory>.Given>(DemoJobs.Of("trike")).Value;

    internal static SheetInput Input(JobHistory job) =>
        Assert.IsType<Outcome<SheetInput>.Given>(SheetInput.Of(job, Day, TestContext.Current.CancellationToken)).Value;

    internal static JobGivens Given(int series, int parallel)
    {
        Origin you = Origin.You(Day);
        return JobGivens.None.With("chemistry", new Given(new JobValue.Word("NMC"), you))
            .With("series", new Given(new JobValue.Number(series), you)).With("parallel", new Given(new JobValue.Number(parallel), you));
    }

    internal static CellRow Cell(string label, double restV) => new() { Label = label, CapacityAh = 4.4, ResistanceMilliohm = 30, RestV = restV };
}
