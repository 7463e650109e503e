using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

public class JobVerbTests
{
    private const string Cells = "Nr;Kapazität;Ri\nT001;4 437,0;32,6\nT002;4 401,5;33,1\nT002;4 390,0;33,0\nSumme;13 000,0;\n";

    private static JsonElement Given(JsonElement answer, string key) =>
        answer.GetProperty("givens").EnumerateArray().Single(given => given.GetProperty("key").GetString() == key);

    private static JsonElement Done(params string[] args)
    {
        (int exitCode, JsonElement answer) = Planner.Json(args);
        Assert.True(exitCode == 0, answer.ToString());
        return answer;
    }

    private static string Refused(int expected, params string[] args)
    {
        (int exitCode, JsonElement error) = Planner.Json(args);
        Assert.Equal(expected, exitCode);
        Assert.Equal("packplanner/error", error.GetProperty("schema").GetString());
        return error.GetProperty("code").GetString()!;
    }

    [Fact]
    public void A_job_grows_from_the_command_line_and_every_step_can_be_undone()
    {
        using Folder folder = new();
        string job = folder.File("trike.job.json");
        File.WriteAllText(folder.File("cells.csv"), Cells);

        Done("job", "new", job, "chemistry=nmc", "series=13");
        JsonElement told = Done("job", "set", job, "ratedAh=5000mAh", "reserve=10%", "fuse=yes");
        JsonElement added = Done("job", "add", job, folder.File("cells.csv"));
        Done("job", "edit", job, "T002#2", "capacityAh=4.3");
        JsonElement judged = Done("job", "verdict", job, "T001", "hold", "--reason", "smells");
        JsonElement undone = Done("job", "undo", job);

        Assert.Equal(5.0, Given(told, "ratedAh").GetProperty("value").GetDouble());
        Assert.Equal(0.1, Given(told, "reserve").GetProperty("value").GetDouble());
        Assert.True(Given(told, "fuse").GetProperty("ticked").GetBoolean());
        Assert.Equal(4, added.GetProperty("rowsRead").GetInt32());
        Assert.Equal(3, added.GetProperty("rowsUsed").GetInt32());
        Assert.Equal(64, added.GetProperty("sources")[0].GetProperty("sha256").GetString()!.Length);
        Assert.Equal("hold T001", judged.GetProperty("undo").GetString());
        Assert.Equal("hold T001", undone.GetProperty("redo").GetString());
        Assert.Equal(9, undone.GetProperty("revision").GetInt32());
        Assert.Contains("T002,4.3,33", File.ReadAllText(Export(job, folder)), StringComparison.Ordinal);
    }

    private static string Export(string job, Folder folder) =>
        Done("job", "export", job, "--into", folder.File("out")).GetProperty("files")[0].GetString()!;

    [Fact]
    public void What_was_added_is_in_the_job_and_the_file_is_not_needed_again()
    {
        using Folder folder = new();
        string job = folder.File("trike.job.json");
        File.WriteAllText(folder.File("cells.csv"), Cells);
        Done("job", "new", job);
        Done("job", "add", job, folder.File("cells.csv"));
        File.Delete(folder.File("cells.csv"));

        Done("job", "copy", job, folder.File("friend"));

        Assert.Equal(2, Done("job", "show", folder.File("friend.job.json")).GetProperty("counts").GetProperty("cells").GetInt32());
    }

    [Fact]
    public void Documents_are_told_apart_by_what_they_hold()
    {
        using Folder folder = new();
        string job = folder.File("trike.job.json");
        Done("job", "new", job);
        File.WriteAllText(folder.File("a.json"), """{"schema":"packplanner/match","groups":[{"group":1,"cells":["T001"]},{"group":2,"cells":["T002"]}]}""");
        File.WriteAllText(folder.File("b.json"), """{"cavity":{"parts":[{"box":[0,0,0,60,60,80]}]},"cell":{"name":"21700","shape":"cylinder","diameterMm":21.2,"lengthMm":70.2,"axes":["z"]}}""");
        File.WriteAllText(folder.File("c.json"), """{"count":1,"cells":[{"cell":1,"x":30,"y":30,"z":40,"axis":"z","plus":"+z","group":1}]}""");
        File.WriteAllText(folder.File("d.json"), """{"cell":{},"need":{}}""");
        File.WriteAllText(folder.File("e.json"), """{"chemistry":"NMC","series":14,"parallel":4,"ratedGroupAh":10.0,"fullVoltage":4.2,"emptyVoltage":3.0,"later":1}""");

        JsonElement answer = Done(["job", "add", job, .. "abcde".Select(name => folder.File($"{name}.json"))]);

        Assert.Equal(["groups", "fit-case", "fit-answer", "size-need"], answer.GetProperty("sources").EnumerateArray().Select(source => source.GetProperty("kind").GetString()));
        Assert.Equal(2, answer.GetProperty("counts").GetProperty("groups").GetInt32());
        Assert.Equal(2.5, Given(answer, "ratedAh").GetProperty("value").GetDouble());
        Assert.Equal(3.0, Given(answer, "emptyV").GetProperty("value").GetDouble());
    }

    [Fact]
    public void When_one_file_cannot_be_added_none_is()
    {
        using Folder folder = new();
        string job = folder.File("trike.job.json");
        File.WriteAllText(folder.File("cells.csv"), Cells);
        File.WriteAllText(folder.File("other.json"), """{"weather":"rain"}""");
        Done("job", "new", job);
        byte[] before = File.ReadAllBytes(job);

        Assert.Equal("no-place-in-a-job", Refused(3, "job", "add", job, folder.File("cells.csv"), folder.File("other.json")));
        Assert.Equal(before, File.ReadAllBytes(job));
    }

    [Theory]
    [InlineData("unknown-action", "job", "sett", "JOB")]
    [InlineData("unknown-given", "job", "set", "JOB", "serie=3")]
    [InlineData("bad-given", "job", "set", "JOB", "series=2.5")]
    [InlineData("bad-given", "job", "set", "JOB", "reserve=10")]
    [InlineData("bad-given", "job", "set", "JOB", "fullV=4,2")]
    [InlineData("bad-given", "job", "set", "JOB", "chemistry=lead")]
    [InlineData("no-equals", "job", "set", "JOB", "series")]
    [InlineData("words-missing", "job", "add", "JOB")]
    [InlineData("no-reason", "job", "verdict", "JOB", "T001", "reject")]
    [InlineData("bad-verdict", "job", "verdict", "JOB", "T001", "1", "--reason", "x")]
    public void A_command_that_cannot_be_right_is_refused_and_nothing_changes(string code, params string[] args)
    {
        using Folder folder = new();
        string job = folder.File("trike.job.json");
        Done("job", "new", job);
        byte[] before = File.ReadAllBytes(job);

        Assert.Equal(code, Refused(2, [.. args.Select(word => word == "JOB" ? job : word)]));
        Assert.Equal(before, File.ReadAllBytes(job));
    }

    [Fact]
    public void An_unknown_cell_is_answered_with_the_nearest_one()
    {
        using Folder folder = new();
        string job = folder.File("trike.job.json");
        File.WriteAllText(folder.File("cells.csv"), Cells);
        Done("job", "new", job);
        Done("job", "add", job, folder.File("cells.csv"));

        (int exitCode, JsonElement error) = Planner.Json("job", "lock", job, "T02=1");

        Assert.Equal(3, exitCode);
        Assert.Contains("T002", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_to_undo_is_said_with_exit_4()
    {
        using Folder folder = new();
        Done("job", "new", folder.File("x"));

        Assert.Equal("nothing-to-undo", Refused(4, "job", "undo", folder.File("x")));
        Assert.Equal("job-exists", Refused(3, "job", "new", folder.File("x")));
        Assert.Equal("job-not-found", Refused(3, "job", "show", folder.File("y")));
    }
}
