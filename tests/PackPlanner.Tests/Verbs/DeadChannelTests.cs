using System.Globalization;
using System.Text;
using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

/// <summary>A channel that is dead or missing shifts no other group: groups keep the log's own numbers.</summary>
public class DeadChannelTests
{
    // Eight groups fall and recover; the seventh has twice the resistance of the others. One channel is dead or not written at all.
    private static string Log(int dead, string? reads, bool packVolts, int counted = 8, int spare = 0)
    {
        StringBuilder text = new();
        int[] cells = [.. Enumerable.Range(1, 8 + spare).Where(cell => reads is not null || cell != dead)];
        text.Append("time_s,current_A");
        text.Append(packVolts ? ",pack_V" : "");
        foreach (int cell in cells)
            text.Append(CultureInfo.InvariantCulture, $",cell_{cell}_V");
        text.Append('\n');
        for (int i = 0; i < 900; i++)
        {
            double amps = i / 30 % 2 == 0 ? 20 : 0;
            double Volts(int cell) => 4.1 - (0.0004 * i) - (amps * (cell == 7 ? 0.004 : 0.002));
            text.Append(CultureInfo.InvariantCulture, $"{i},{amps:0.0}");
            if (packVolts)
                text.Append(CultureInfo.InvariantCulture, $",{Enumerable.Range(1, 8).Where(cell => counted == 8 || cell != dead).Sum(Volts):0.000}");
            foreach (int cell in cells)
                text.Append(CultureInfo.InvariantCulture, $",{(cell > 8 ? "0.000" : cell == dead && reads is not null ? reads : Volts(cell).ToString("0.000", CultureInfo.InvariantCulture))}");
            text.Append('\n');
        }

        return text.ToString();
    }

    private static JsonElement Of(string verb, string log, params string[] more)
    {
        using Folder folder = new();
        File.WriteAllText(folder.File("ride.csv"), log);
        return Planner.Json([verb, folder.File("ride.csv"), .. verb == "look" ? [] : (string[])["--chemistry", "NMC", "--rated-ah", "20Ah"], .. more]).Document;
    }

    [Theory]
    [InlineData("0.000", false)]
    [InlineData("0.000", true)]
    [InlineData("65.535", false)]
    [InlineData("-1", true)]
    [InlineData(null, false)]
    [InlineData(null, true)]
    public void Groups_keep_the_logs_own_numbers(string? reads, bool packVolts)
    {
        string log = Log(5, reads, packVolts);

        JsonElement looked = Of("look", log).GetProperty("files")[0], judged = Of("diagnose", log);

        Assert.Equal(8, looked.GetProperty("groups").GetInt32());
        Assert.Equal("group 6 voltage", looked.GetProperty("columns").EnumerateArray().First(column => column.GetProperty("name").GetString() == "cell_6_V").GetProperty("readAs").GetString());
        JsonElement[] groups = [.. judged.GetProperty("groups").EnumerateArray()];
        Assert.Equal(Enumerable.Range(1, 8), groups.Select(group => group.GetProperty("group").GetInt32()));
        Assert.Equal([5], Found(groups, "sensor"));
        Assert.Equal([7], Found(groups, "connection").Concat(Found(groups, "high-resistance")));
        Assert.Equal(JsonValueKind.Null, groups[4].GetProperty("capacityAh").ValueKind);
        Assert.Contains(judged.GetProperty("cautions").EnumerateArray(), caution => caution.GetProperty("code").GetString() == "caution-33" && caution.GetProperty("where").GetString() == "group 5");
        Assert.Contains(judged.GetProperty("understood").EnumerateArray(), line => line.GetString()!.Contains("where the pack has no such group, --series 7 says so", StringComparison.Ordinal));
    }

    // A monitor may leave a channel out: the pack's own volts, or the user, say so.
    [Fact]
    public void A_channel_that_the_pack_does_not_have_is_no_group()
    {
        Assert.Equal(7, Of("look", Log(5, "0.000", packVolts: true, counted: 7)).GetProperty("files")[0].GetProperty("groups").GetInt32());
        JsonElement[] groups = [.. Of("diagnose", Log(5, "0.000", packVolts: false), "--series", "7").GetProperty("groups").EnumerateArray()];
        Assert.Equal(7, groups.Length);
        Assert.Empty(Found(groups, "sensor"));
    }

    [Fact]
    public void Spare_channels_at_the_end_are_none_and_a_refusal_names_them()
    {
        Assert.Equal(8, Of("look", Log(0, "", packVolts: false, spare: 2)).GetProperty("files")[0].GetProperty("groups").GetInt32());
        JsonElement refused = Of("diagnose", Log(0, "", packVolts: false, spare: 2), "--series", "10");
        Assert.Equal("series-differs", refused.GetProperty("code").GetString());
        Assert.Contains("cell_9_V, cell_10_V never hold the volts of a cell", refused.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    private static IEnumerable<int> Found(JsonElement[] groups, string finding) => groups
        .Where(group => group.GetProperty("findings").EnumerateArray().Any(found => found.GetString() == finding)).Select(group => group.GetProperty("group").GetInt32());
}
