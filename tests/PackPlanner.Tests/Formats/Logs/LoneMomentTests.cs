using System.Globalization;
using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>One moment years ahead of the rows on both sides is a slip of that row, whatever stands there.</summary>
public class LoneMomentTests
{
    [Theory]
    [InlineData("666666666666666630")]
    [InlineData("6400000000000")]
    [InlineData("640000000")]
    public void The_other_rows_stay_where_they_were(string slip)
    {
        JsonElement sound = Tests(null), slipped = Tests(slip);

        Assert.Equal(sound.GetProperty("chargeAh").GetDouble(), slipped.GetProperty("chargeAh").GetDouble(), tolerance: 1e-9);
        Assert.Equal(sound.GetProperty("toTimeS").GetDouble(), slipped.GetProperty("toTimeS").GetDouble(), tolerance: 1e-9);
        Assert.Equal(11, slipped.GetProperty("meanCurrentA").GetDouble(), tolerance: 1e-9);
    }

    // Eleven amperes for 900 s between rests, a row each ten seconds; the fortieth row may stand elsewhere in time.
    private static JsonElement Tests(string? slip)
    {
        using Folder folder = new();
        string file = folder.File("test.csv");
        File.WriteAllLines(file,
        [
            "time_s,current_A,voltage_V",
            .. Enumerable.Range(0, 110).Select(i => string.Create(CultureInfo.InvariantCulture,
                $"{(i == 40 && slip is not null ? slip : (10 * i).ToString(CultureInfo.InvariantCulture))},{(i is >= 10 and < 100 ? 11 : 0)},{(i < 10 ? 4.1 : i < 100 ? 3.98 - (0.01 * (i - 10)) : 3.2):0.000}")),
        ]);
        return Planner.Json("capacity", file, "--chemistry", "NMC").Document.GetProperty("tests")[0];
    }
}
