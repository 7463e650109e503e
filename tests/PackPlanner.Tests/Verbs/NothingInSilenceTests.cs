using System.Text.Json;
using PackPlanner.Formats;

namespace PackPlanner.Tests.Verbs;

/// <summary>Small tables whose figures can be taken in two ways, or not at all: they are read rightly, told, or refused.</summary>
public sealed class NothingInSilenceTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("silence").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("1,40,3,1.2\n2,41,3,1\n", "no group holds more than 1")]
    [InlineData("1,40,3,105\n2,41,3,0.9\n", "0.9 can be 0.9 % or 90 %")]
    public void A_charge_that_no_group_has_is_refused(string rows, string why)
    {
        string groups = Written("groups.csv", "group,capacityAh,resistanceMilliohm,stateOfCharge\n" + rows);

        (int exitCode, JsonElement refused) = Planner.Json("energy", groups, "--chemistry", "NMC", "--load", "10A", "--rated-ah", "42Ah");

        Assert.Equal(ExitCodes.Input, exitCode);
        Assert.Contains(why, refused.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1,40,3,0.98\n2,41,3,1\n")]
    [InlineData("1,40,3,98\n2,41,3,1\n")]
    [InlineData("1,40,3,101\n2,41,3,93.5\n")]
    public void A_charge_that_can_be_is_taken(string rows) => Assert.Equal(ExitCodes.Done, Planner.Json(
        "energy", Written("groups.csv", "group,capacityAh,resistanceMilliohm,stateOfCharge\n" + rows), "--chemistry", "NMC", "--load", "10A", "--rated-ah", "42Ah").ExitCode);

    [Fact]
    public void A_group_that_is_absent_is_told()
    {
        string groups = Written("groups.csv", "group,capacityAh,resistanceMilliohm\n1,40,3\n3,41,3\n");

        (_, JsonElement answer) = Planner.Json("energy", groups, "--chemistry", "NMC", "--load", "10A", "--rated-ah", "42Ah");

        Assert.Contains(Understood(answer), line => line.Contains("There is no group 2", StringComparison.Ordinal) && line.Contains("2 in series", StringComparison.Ordinal));
    }

    [Fact]
    public void The_rated_capacity_turns_charge_offsets_into_ampere_hours()
    {
        string groups = Written("groups.csv", "group,stateOfChargeOffset\n1,-0.05\n2,0\n3,0.02\n");

        (_, JsonElement answer) = Planner.Json("balance", groups, "--rated-ah", "80Ah", "--bleed", "60mA");

        // By hand: 0.07 x 80 Ah to bleed from the fullest, 5.6 Ah / 0.06 A.
        JsonElement fullest = answer.GetProperty("groups")[2];
        Assert.Equal(5.6, fullest.GetProperty("removeAh").GetDouble(), tolerance: 1e-9);
        Assert.Equal(93.333, fullest.GetProperty("hours").GetDouble(), tolerance: 1e-3);
        Assert.Contains(Understood(answer), line => line.Contains("--rated-ah stands for them", StringComparison.Ordinal));
    }

    [Fact]
    public void A_table_without_heading_tells_its_resistances()
    {
        string cells = Written("cells.csv", "B1,2471,41.9,3.622\nB2,2628,44.2,3.639\nB3,2416,45.4,3.634\nB4,2539,41.9,3.585\nB5,2592,43.8,3.641\n");

        (_, JsonElement answer) = Planner.Json("cells", cells);

        JsonElement first = answer.GetProperty("cells")[0];
        Assert.Equal(2.471, first.GetProperty("capacityAh").GetDouble());
        Assert.Equal(41.9, first.GetProperty("resistanceMilliohm").GetDouble());
        Assert.Equal(3.622, first.GetProperty("restV").GetDouble());
        Assert.Contains(Understood(answer), line => line.Contains("mOhm, from the size of its figures", StringComparison.Ordinal));
    }

    // Places, degrees and percent of rated have the size of milliohm too.
    [Theory]
    [InlineData("B1,2471,21\nB2,2628,22\nB3,2416,23\nB4,2539,24\nB5,2592,25\n")]
    [InlineData("B1,2471,23\nB2,2628,23\nB3,2416,24\nB4,2539,23\nB5,2592,23\nB6,2581,23\nB7,2485,24\n")]
    [InlineData("B1,2471,82.4\nB2,2628,87.6\nB3,2416,80.5\nB4,2539,84.6\nB5,2592,86.4\n")]
    [InlineData("B1,2471,41.9,24.1\nB2,2628,44.2,23.2\nB3,2416,45.4,23.9\nB4,2539,41.9,24.4\n")]
    public void What_can_be_something_else_is_no_resistance(string rows)
    {
        (_, JsonElement answer) = Planner.Json("cells", Written("cells.csv", rows));

        Assert.All(answer.GetProperty("cells").EnumerateArray(), cell => Assert.Equal(JsonValueKind.Null, cell.GetProperty("resistanceMilliohm").ValueKind));
    }

    [Fact]
    public void Cells_and_their_groups_need_no_heading()
    {
        string cells = Written("cells.csv", "cell;capacity mAh\nc1;2310\nc2;2255\nc3;2190\nc4;2140\nc5;2085\nc6;2030\n");

        (_, JsonElement answer) = Planner.Json("match", cells, "--series", "3", "--parallel", "2", "--lock", Written("lock.csv", "c1,3\nc6,1\n"));

        string[] GroupOf(int group) => [.. answer.GetProperty("groups")[group - 1].GetProperty("cells").EnumerateArray().Select(cell => cell.GetString()!)];
        Assert.Contains("c1", GroupOf(3));
        Assert.Contains("c6", GroupOf(1));
    }

    private static IEnumerable<string> Understood(JsonElement answer) => answer.GetProperty("understood").EnumerateArray().Select(line => line.GetString()!);

    private string Written(string name, string text)
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllText(path, text);
        return path;
    }
}
