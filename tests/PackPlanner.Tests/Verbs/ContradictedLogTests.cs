using System.Globalization;
using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

/// <summary>What is said of a log and what the log shows are held against each other.</summary>
public class ContradictedLogTests
{
    // Four groups about 3.9 V under a load that comes and goes, a row each three seconds.
    private static (int ExitCode, JsonElement Answer) Of(string verb, Func<int, string> moment, double amps, params string[] more)
    {
        using Folder folder = new();
        string file = folder.File("ride.csv");
        File.WriteAllLines(file,
        [
            "t,I,V1,V2,V3,V4",
            .. Enumerable.Range(0, 400).Select(i =>
            {
                double now = i / 20 % 2 == 0 ? amps : 0;
                string volts = string.Join(',', Enumerable.Range(1, 4).Select(k => (4.0 - (0.0005 * i) - (0.01 * now) - (0.001 * k)).ToString("0.000", CultureInfo.InvariantCulture)));
                return string.Create(CultureInfo.InvariantCulture, $"{moment(i)},{now:0.0},{volts}");
            }),
        ]);
        return Planner.Json([verb, file, "--rated-ah", "5Ah", .. more]);
    }

    [Theory]
    [InlineData("LTO", true)]
    [InlineData("LFP", true)]
    [InlineData("NMC", false)]
    [InlineData("LCO", false)]
    public void Volts_above_full_of_the_chemistry_that_is_named_are_refused(string chemistry, bool refused)
    {
        (int exitCode, JsonElement answer) = Of("diagnose", i => $"{3 * i}", 5, "--chemistry", chemistry);

        Assert.Equal(refused ? 3 : 0, exitCode);
        if (refused)
            Assert.Equal("volts-contradict-chemistry", answer.GetProperty("code").GetString());
    }

    // A whole ride of NMC from 4.15 V down to 3.3 V: its middle is an LFP cell's, its beginning is not. One group so high in an LFP pack is a danger to be told, not another chemistry.
    [Theory]
    [InlineData(4, 3)]
    [InlineData(1, 0)]
    public void A_ride_that_begins_above_full_of_the_chemistry_is_refused_but_not_for_one_group(int high, int exitCode)
    {
        using Folder folder = new();
        string file = folder.File("ride.csv");
        File.WriteAllLines(file,
        [
            "time s,current A,cell 1 V,cell 2 V,cell 3 V,cell 4 V",
            .. Enumerable.Range(0, 600).Select(i =>
            {
                string volts = string.Join(',', Enumerable.Range(1, 4).Select(k => (k <= high ? 4.15 - (0.85 * i / 600) : 3.33 - (0.1 * i / 600)).ToString("0.000", CultureInfo.InvariantCulture)));
                return string.Create(CultureInfo.InvariantCulture, $"{10 * i},{(i % 20 < 10 ? 2.5 : 2.0):0.0},{volts}");
            }),
        ]);

        Assert.Equal(exitCode, Planner.Json("diagnose", file, "--chemistry", "LFP", "--rated-ah", "5Ah").ExitCode);
    }

    [Theory]
    [InlineData(5, false)]
    [InlineData(0, true)]
    public void Without_a_current_there_is_no_resistance(double amps, bool none)
    {
        JsonElement[] groups = [.. Of("diagnose", i => $"{3 * i}", amps, "--chemistry", "NMC").Answer.GetProperty("groups").EnumerateArray()];

        Assert.All(groups, group => Assert.Equal(none, group.GetProperty("resistanceMilliohm").ValueKind == JsonValueKind.Null));
    }

    [Theory]
    [InlineData(3, 1, "s")]
    [InlineData(300, 1, "s")]
    [InlineData(3600, 1, "s")]
    [InlineData(3000, 1, "ms")]
    [InlineData(6000, 1, "ms")]
    [InlineData(500, 1, "ms")]
    [InlineData(2, 60, "min")]
    [InlineData(5, 60, "min")]
    [InlineData(10, 60, "min")]
    [InlineData(3, 60, "s")]
    [InlineData(1, 4, "s")]
    public void Time_without_a_unit_is_read_from_its_steps(int step, double over, string unit)
    {
        JsonElement columns = Of("look", i => (step * i / over).ToString("0.####", CultureInfo.InvariantCulture), 5).Answer.GetProperty("files")[0].GetProperty("columns");

        Assert.Equal(unit, columns[0].GetProperty("unit").GetString());
    }
}
