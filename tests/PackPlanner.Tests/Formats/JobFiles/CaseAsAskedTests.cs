using PackPlanner.Core.Jobs;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Tests.Formats.JobFiles;

/// <summary>A case that a job writes out asks what the job asks of it.</summary>
public class CaseAsAskedTests
{
    [Fact]
    public void Series_and_parallel_of_the_job_go_with_the_case_and_a_job_that_says_nothing_leaves_it_as_it_was()
    {
        const string Text = """{ "cavity": { "parts": [] }, "cell": {} }""";
        JobDocument space = new(new JobSource("s1", "case.json", new string('0', 64), SourceKind.FitCase, []), Text);
        JobGivens none = new Job { Title = "flat" }.Givens;
        JobGivens told = none.With("series", Number(14)).With("parallel", Number(2));

        Assert.Equal(Text, CaseAsAsked.Text(space, none));
        System.Text.Json.JsonElement pack = System.Text.Json.JsonDocument.Parse(CaseAsAsked.Text(space, told)).RootElement.GetProperty("pack");
        Assert.Equal((14, 2), (pack.GetProperty("series").GetInt32(), pack.GetProperty("parallel").GetInt32()));
    }

    private static Given Number(double value) => new(new JobValue.Number(value), Origin.You(new DateOnly(2026, 11, 2)));
}
