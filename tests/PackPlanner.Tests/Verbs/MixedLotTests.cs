using System.Text.Json;
using PackPlanner.Formats;

namespace PackPlanner.Tests.Verbs;

/// <summary>What match does with a lot of several models or chemistries.</summary>
public sealed class MixedLotTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("mixed").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Of_two_models_one_alone_is_used_on_request_and_a_mix_is_told()
    {
        string file = File("two.csv", "cell;model;capacity mAh\na1;Big 30;2900\na2;Big 30;2890\na3;Big 30;2880\na4;Big 30;2870\nb1;Small 25;2500\nb2;Small 25;2490\nb3;Small 25;2480\nb4;Small 25;2470\n");

        (_, JsonElement mixed) = Planner.Json("match", file, "--series", "2", "--parallel", "2");
        (_, JsonElement one) = Planner.Json("match", file, "--series", "2", "--parallel", "2", "--model", "small 25");
        (int exitCode, JsonElement error) = Planner.Json("match", file, "--series", "2", "--parallel", "2", "--model", "Smal 25");

        Assert.Contains(mixed.GetProperty("understood").EnumerateArray(), said => said.GetString()!.Contains("Big 30: 4, Small 25: 4", StringComparison.Ordinal));
        Assert.Equal(["b1 b4", "b2 b3"], one.GetProperty("groups").EnumerateArray().Select(group => string.Join(" ", group.GetProperty("cells").EnumerateArray().Select(cell => cell.GetString()))));
        Assert.Equal(["a1", "a2", "a3", "a4"], one.GetProperty("leftOut").EnumerateArray().Select(cell => cell.GetString()!).Order(StringComparer.Ordinal));
        Assert.Equal(ExitCodes.Input, exitCode);
        Assert.Contains("Did you mean Small 25?", error.GetRawText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_chemistries_the_one_that_most_cells_have_is_proposed()
    {
        string file = File("chem.csv", "cell;chemistry;capacity mAh\na1;LFP;1500\nb1;NMC;2500\nb2;NMC;2490\n");

        (_, JsonElement error) = Planner.Json("match", file, "--series", "1", "--parallel", "2");

        Assert.Contains("--chemistry NMC", error.GetRawText(), StringComparison.Ordinal);
    }

    private string File(string name, string text)
    {
        string path = Path.Combine(_folder, name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }
}
