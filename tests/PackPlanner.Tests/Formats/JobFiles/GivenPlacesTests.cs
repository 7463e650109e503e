using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Json;

namespace PackPlanner.Tests.Formats.JobFiles;

/// <summary>An answer of fit in a job: its cells are placed by it, after it was held against the space.</summary>
public class GivenPlacesTests
{
    private static readonly Lazy<FitAnswer> Searched = new(() => Places(Job("trike").Now));

    private static JobHistory Job(string name) => Assert.IsType<Outcome<JobHistory>.Given>(DemoJobs.Of(name)).Value;

    private static FitAnswer Places(Job job) => Assert.IsType<Outcome<FitAnswer>.Given>(JobFit.Find(job, CancellationToken.None)).Value;

    private static JsonObject Json(FitAnswer answer) =>
        JsonSerializer.SerializeToNode(FitAnswerJson.From(answer, [], null), FitAnswerJsonContext.Default.FitAnswerJson)!.AsObject();

    private static Outcome<AddedFiles> Added(JobHistory job, JsonObject answer) => JobAdding.Add(job, "fit.json", Encoding.UTF8.GetBytes(answer.ToJsonString()));

    private static Refusal Refused(JsonObject answer) => Assert.IsType<Outcome<AddedFiles>.Refused>(Added(Job("trike"), answer)).Why;

    [Theory]
    [InlineData("trike")]
    [InlineData("scooter")]
    public void What_the_search_found_comes_back_as_the_same_answer(string name)
    {
        FitAnswer searched = Places(Job(name).Now);

        FitAnswer given = Places(Assert.IsType<Outcome<AddedFiles>.Given>(Added(Job(name), Json(searched))).Value.History.Now);

        Assert.Equal(searched.Cells, given.Cells);
        Assert.Equal(searched.LinkPairs, given.LinkPairs);
        Assert.Equal(searched.Taps, given.Taps);
        Assert.Equal(searched.MarginMm, given.MarginMm);
        Assert.Equal(searched.Cautions, given.Cautions);
        Assert.True(given is { Fits: true, Bound: null, Proven: false });
    }

    // The same places with the string counted from the other end: the search never answers that.
    [Fact]
    public void Cells_are_placed_by_the_answer_rather_than_by_a_new_search()
    {
        JsonObject turned = Json(Searched.Value);
        foreach (JsonNode? cell in turned["cells"]!.AsArray())
            cell!["group"] = 14 - (int)cell["group"]!;
        JobHistory job = Assert.IsType<Outcome<AddedFiles>.Given>(Added(Job("trike"), turned)).Value.History;

        FitAnswer given = Places(job.Now);

        Dictionary<PointMm, int?> groups = Searched.Value.Cells.ToDictionary(cell => cell.Centre, cell => cell.Group);
        Assert.All(given.Cells, cell => Assert.Equal(14 - groups[cell.Centre], cell.Group));
        Assert.Equal(Searched.Value.LinkPairs.Reverse(), given.LinkPairs);
        Assert.Contains("fit.json", given.BoundMethod, StringComparison.Ordinal);
        Assert.Equal(Searched.Value.Cells, Places(job.Undo().Now).Cells);
    }

    [Fact]
    public void Places_that_break_a_rule_are_refused_with_the_place()
    {
        JsonObject moved = Json(Searched.Value);
        moved["cells"]![0]!["x"] = (double)moved["cells"]![0]!["x"]! + 3;
        Assert.Equal("places-not-possible", Refused(moved).Code);
        Assert.Contains("nearer to a wall, a keep-out or another cell", Refused(moved).Problem.Why, StringComparison.Ordinal);

        JsonObject fewer = Json(Searched.Value);
        fewer["cells"]![0]!["group"] = null;
        Assert.Equal("there are 8, and 9 in parallel are wanted", Refused(fewer).Problem.Why);

        JsonObject scattered = Json(Searched.Value);
        JsonNode[] cells = [.. scattered["cells"]!.AsArray().Select(cell => cell!)];
        cells.First(cell => (int)cell["group"]! == 1)["group"] = 13;
        cells.Last(cell => (int)cell["group"]! == 13)["group"] = 1;
        Assert.Contains("do not stand side by side", Refused(scattered).Problem.Why, StringComparison.Ordinal);

        JsonObject poles = Json(Searched.Value);
        poles["cells"]![0]!["plus"] = "-z";
        Assert.Equal(("fit.json, place 1", "places-not-possible"), (Refused(poles).Problem.Where, Refused(poles).Code));

        JsonObject lying = Json(Searched.Value);
        lying["cells"]![0]!["axis"] = "x";
        Assert.Equal("the case has no cell that stands so", Refused(lying).Problem.Why);
        lying["cells"]![0]!["axis"] = "up";
        Assert.Equal("bad-field", Refused(lying).Code);
    }

    [Fact]
    public void Places_of_another_pack_or_without_their_space_are_refused()
    {
        JobHistory job = Assert.IsType<Outcome<AddedFiles>.Given>(Added(Job("trike"), Json(Searched.Value))).Value.History
            .Do(JobChanges.Set("series", new Given(new JobValue.Number(12), Jobs.You)));

        Refusal why = Assert.IsType<Outcome<FitAnswer>.Refused>(JobFit.Find(job.Now, CancellationToken.None)).Why;

        Assert.Equal("they make 13 groups, and 12 in series are wanted", why.Problem.Why);
        Assert.Equal("no-cavity", Assert.IsType<Outcome<AddedFiles>.Refused>(Added(JobHistory.Of(new Job { Title = "no space" }), Json(Searched.Value))).Why.Code);
    }
}
