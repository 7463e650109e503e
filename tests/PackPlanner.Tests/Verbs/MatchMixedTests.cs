using System.Text.Json;
using PackPlanner.Formats;

namespace PackPlanner.Tests.Verbs;

/// <summary>Tables of cells of several chemistries or models.</summary>
public sealed class MatchMixedTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("packplanner-mixed-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Two_chemistries_are_never_matched_into_one_pack()
    {
        string mixed = File("mixed.csv", "cell,chemistry,capacity_Ah\na,LFP,2.1\nb,LFP,2.1\nc,NMC,2.1\nd,NMC,2.1\n");

        (int exitCode, JsonElement error) = Planner.Json("match", mixed, "--series", "2", "--parallel", "2");

        Assert.Equal(ExitCodes.Input, exitCode);
        Assert.Equal("two-chemistries", error.GetProperty("code").GetString());
        Assert.Contains("2 LFP and 2 NMC cells", error.GetRawText(), StringComparison.Ordinal);
    }

    // By hand: 2.0 + 2.4 against 2.1 + 2.3 is the most equal split, and either pair is of two models; with one model alone none is.
    [Fact]
    public void Groups_of_several_models_are_counted_before_anything_else()
    {
        string table = File("models.csv", "cell,model,capacity_Ah\na,A1,2.0\nb,A1,2.1\nc,B2,2.3\nd,B2,2.4\n");
        string[] call = ["match", table, "--series", "2", "--parallel", "2", "--all"];

        Assert.StartsWith("2 of 2 groups mix cells of several models (A1, B2): --model uses one alone.", Planner.Run(call).Output, StringComparison.Ordinal);
        Assert.Contains(Planner.Json(call).Item2.GetProperty("cautions").EnumerateArray(), caution => caution.GetProperty("code").GetString() == "caution-06");
        Assert.DoesNotContain("caution-06", Planner.Run(["match", table, "--series", "2", "--parallel", "1", "--all", "--model", "A1"]).Output, StringComparison.Ordinal);
    }

    // Nothing but NMC is in the groups: that the table held LFP too is told, and is no danger any more.
    [Fact]
    public void Cells_of_another_chemistry_than_the_one_named_are_left_out_with_a_notice()
    {
        string mixed = File("mixed.csv", "cell,chemistry,capacity_Ah\na,LFP,2.1\nb,LFP,2.1\nc,NMC,2.1\nd,NMC,2.1\n");

        (int exitCode, JsonElement answer) = Planner.Json("match", mixed, "--series", "1", "--parallel", "2", "--chemistry", "NMC");

        Assert.Equal(0, exitCode);
        JsonElement caution = Assert.Single(answer.GetProperty("cautions").EnumerateArray(), caution => caution.GetProperty("code").GetString() == "caution-06");
        Assert.Contains("(2 LFP); only NMC are used", caution.GetRawText(), StringComparison.Ordinal);
        Assert.Contains("notice", caution.GetRawText(), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(["c d"], Groups(answer));
    }

    private static string[] Groups(JsonElement answer) =>
    [
        .. answer.GetProperty("groups").EnumerateArray()
            .Select(group => string.Join(' ', group.GetProperty("cells").EnumerateArray().Select(cell => cell.GetString()))),
    ];

    private string File(string name, string text)
    {
        string path = Path.Combine(_folder, name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }
}
