using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

/// <summary>Loads that a full pack cannot carry for an instant, and charges that cannot be read.</summary>
public class EnergyAtOnceTests
{
    // By hand: 12.6 V over 60 milliohm short-circuited are 210 A; 4.2 V less 100 A x 21 milliohm are 2.1 V, below 2.75 V; 20 A leave 3.78 V.
    [Theory]
    [InlineData("400A", true)]
    [InlineData("100A", true)]
    [InlineData("40000W", true)]
    [InlineData("20A", false)]
    [InlineData("200W", false)]
    public void A_load_above_what_the_pack_carries_is_said_to_end_it_at_once(string load, bool atOnce)
    {
        using Folder folder = new();
        string groups = folder.File("groups.csv");
        File.WriteAllText(groups, "group,capacityAh,resistanceMilliohm\n1,10,20\n2,9.5,21\n3,10.2,19\n");

        JsonElement answer = Planner.Json("energy", groups, "--chemistry", "NMC", "--load", load, "--rated-ah", "10Ah").Document;
        string words = Planner.Run("energy", groups, "--chemistry", "NMC", "--load", load, "--rated-ah", "10Ah").Output;

        Assert.Equal(atOnce, answer.GetProperty("endsAt").GetProperty("atOnce").GetBoolean());
        Assert.Equal(atOnce, answer.GetProperty("usableAh").GetDouble() == 0);
        Assert.Equal(atOnce, words.Contains("The load ends it at once: group 2 falls below its cut-off in the first instant. The pack cannot carry it", StringComparison.Ordinal));
        Assert.Equal(!atOnce, words.Contains("the pack then gives", StringComparison.Ordinal));
    }

    [Fact]
    public void The_controllers_limit_may_be_what_ends_it_at_once()
    {
        using Folder folder = new();
        string groups = folder.File("groups.csv");
        File.WriteAllText(groups, "group,capacityAh,resistanceMilliohm\n1,10,20\n2,10,20\n");

        string words = Planner.Run("energy", groups, "--chemistry", "NMC", "--load", "30A", "--pack-empty-v", "7.5V").Output;

        // 8.4 V less 30 A x 40 milliohm are 7.2 V.
        Assert.Contains("The load ends it at once: the pack falls below the controller's limit", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Groups_whose_charge_cannot_be_read_are_named()
    {
        using Folder folder = new();
        string groups = folder.File("groups.csv");
        File.WriteAllText(groups, "group,capacityAh,resistanceMilliohm,stateOfCharge\n1,10,20,0.8\n2,9.5,21,?\n3,10.2,19,0.7\n");

        (int exitCode, JsonElement answer) = Planner.Json("energy", groups, "--chemistry", "NMC", "--load", "20A");

        Assert.Equal((3, "charge-of-some"), (exitCode, answer.GetProperty("code").GetString()));
        Assert.Contains("none that can be read stands for 2", answer.GetProperty("message").GetString(), StringComparison.Ordinal);
    }
}
