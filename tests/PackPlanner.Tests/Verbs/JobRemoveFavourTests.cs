using System.Text.Json;
using System.Text.RegularExpressions;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

/// <summary>Files taken out of a job, and what its groups favour, by verb.</summary>
public sealed class JobRemoveFavourTests : IDisposable
{
    private readonly Folder folder = new();

    public JobRemoveFavourTests()
    {
        Directory.CreateDirectory(folder.File("b"));
        File.WriteAllText(folder.File("cells.csv"), "label,capacity_Ah,resistance_mohm,rest_V\nA,2.5,20,3.6\nB,2.4,40,3.6\nC,2.45,20.5,3.6\nD,2.4,41,3.6\n");
        File.WriteAllText(folder.File("b/cells.csv"), "label,capacity_Ah\nE,2.5\n");
        File.WriteAllText(folder.File("groups.json"), """{"groups":[{"cells":["A","B"]},{"cells":["C","D"]}]}""");
        Done("job", "new", Job, "chemistry=NMC", "series=2", "parallel=2", "ratedAh=2.5");
    }

    private string Job => folder.File("pack.job.json");

    public void Dispose() => folder.Dispose();

    private static JsonElement Done(params string[] args)
    {
        (int exitCode, JsonElement answer) = Planner.Json(args);
        Assert.Equal(0, exitCode);
        return answer;
    }

    private static string Refused(params string[] args)
    {
        (int exitCode, JsonElement answer) = Planner.Json(args);
        return $"{exitCode} {answer.GetProperty("code").GetString()}";
    }

    private static string Files(JsonElement answer) => string.Join(' ', answer.GetProperty("sources").EnumerateArray().Select(source => $"{source.GetProperty("id").GetString()}:{source.GetProperty("file").GetString()}"));

    private string GroupOf(string cell)
    {
        Done("sheet", Job, "pick", "--into", folder.File("out"));
        Match stands = Regex.Match(File.ReadAllText(folder.File("out/pick.html")), $"{cell}</b></td><td[^>]*><span class=\"num\">([0-9]+)<");
        Assert.True(stands.Success);
        return stands.Groups[1].Value;
    }

    [Fact]
    public void A_file_goes_out_by_its_name_or_its_id_and_undo_brings_it_back()
    {
        Done("job", "add", Job, folder.File("cells.csv"), folder.File("groups.json"), folder.File("b/cells.csv"));

        Assert.Equal("s1:cells.csv s3:cells.csv", Files(Done("job", "remove", Job, "groups.json")));
        Assert.Equal("3 source-twice", Refused("job", "remove", Job, "cells.csv"));
        JsonElement one = Done("job", "remove", Job, "s1");
        Assert.Equal("s3:cells.csv", Files(one));
        Assert.Equal(1, one.GetProperty("counts").GetProperty("cells").GetInt32());
        Assert.Equal("s1:cells.csv s3:cells.csv", Files(Done("job", "undo", Job)));
    }

    [Fact]
    public void All_that_are_named_go_or_none()
    {
        Done("job", "add", Job, folder.File("cells.csv"), folder.File("groups.json"));

        Assert.Equal("3 unknown-source", Refused("job", "remove", Job, "groups.json", "cels.csv"));
        Assert.Equal("s1:cells.csv s2:groups.json", Files(Done("job", "show", Job)));
        Assert.Equal("", Files(Done("job", "remove", Job, folder.File("cells.csv"), "s2")));
        Assert.Equal("3 unknown-source", Refused("job", "remove", Job, "cells.csv"));
        Assert.Equal("2 words-missing", Refused("job", "remove", Job));
    }

    [Fact]
    public void What_groups_favour_is_told_and_followed()
    {
        Done("job", "add", Job, folder.File("cells.csv"));
        Assert.Equal("equal-ah", Done("job", "show", Job).GetProperty("favour").GetString());
        Assert.NotEqual(GroupOf("A"), GroupOf("C"));

        Assert.Equal("even-currents", Done("job", "favour", Job, "even-currents").GetProperty("favour").GetString());
        Assert.Contains("groups favour even-currents", Planner.Run("job", "show", Job).Output, StringComparison.Ordinal);
        // A and C hold most, so for equal Ah they part; but only C has A's resistance.
        Assert.Equal(GroupOf("A"), GroupOf("C"));
        Assert.Equal("equal-ah", Done("job", "undo", Job).GetProperty("favour").GetString());

        Assert.Equal("3 no-arrangement", Refused("job", "favour", Job, "fewest-moves"));
        Done("job", "add", Job, folder.File("groups.json"));
        Assert.Equal("fewest-moves", Done("job", "favour", Job, "fewest-moves").GetProperty("favour").GetString());
        Assert.Equal("2 unknown-favour", Refused("job", "favour", Job, "equal"));
        Assert.Equal("2 words-missing", Refused("job", "favour", Job));
    }
}
