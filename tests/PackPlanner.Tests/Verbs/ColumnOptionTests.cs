using System.Text.Json;

namespace PackPlanner.Tests.Verbs;

/// <summary>--column: what a user says of a column holds, is said in the answer, and is refused where it makes no sense.</summary>
public class ColumnOptionTests
{
    private const string Table = "Nr;Wert X;Ri\nA1;2850;31,2\nA2;2790;33,0\n";

    private static readonly string Log = "ms,foo,bar,v1,v2\n" + string.Concat(Enumerable.Range(0, 60).Select(i => $"{i * 1000},{(i % 20 < 10 ? 0 : 120)},3.70,{(i % 20 < 10 ? 3.800 : 3.750)},{(i % 20 < 10 ? 3.801 : 3.741)}\n"));

    [Fact]
    public void A_meaning_and_a_unit_are_taken_as_said()
    {
        JsonElement look = Look(Table, "--column", "wert x=capacity:mAh");

        JsonElement column = look.GetProperty("files")[0].GetProperty("columns")[1];
        Assert.Equal(("capacity", "mAh", "--column"), (column.GetProperty("readAs").GetString(), column.GetProperty("unit").GetString(), column.GetProperty("setBy").GetString()));
    }

    [Fact]
    public void A_column_of_a_log_becomes_the_current_and_another_a_group()
    {
        JsonElement look = Look(Log, "--column", "foo=current:0.1A", "--column", "#3=group 3");

        JsonElement file = look.GetProperty("files")[0];
        Assert.Equal(("pack-log", 3, "discharge-positive"), (file.GetProperty("kind").GetString(), file.GetProperty("groups").GetInt32(), file.GetProperty("currentSign").GetString()));
        Assert.Equal("group 3 voltage", file.GetProperty("columns")[2].GetProperty("readAs").GetString());
        Assert.Equal("0.1 A", file.GetProperty("columns")[1].GetProperty("unit").GetString());
    }

    [Fact]
    public void A_group_that_is_not_used_is_left_out()
    {
        JsonElement look = Look(Log.Replace("bar", "v3", StringComparison.Ordinal), "--column", "v3=not used", "--column", "foo=current:A");

        Assert.Equal(2, look.GetProperty("files")[0].GetProperty("groups").GetInt32());
    }

    [Theory]
    [InlineData("nothing", 2, "bad-option")]
    [InlineData("Ri=resistence", 2, "bad-option")]
    [InlineData("Ri=resistance:V", 2, "bad-option")]
    [InlineData("Ri=:furlongs", 2, "bad-option")]
    [InlineData("R9=resistance", 3, "no-such-column")]
    public void What_makes_no_sense_is_refused(string said, int exit, string code)
    {
        (int exitCode, JsonElement refused) = Run(Table, "--column", said);

        Assert.Equal((exit, code), (exitCode, refused.GetProperty("code").GetString()));
    }

    private static JsonElement Look(string text, params string[] options)
    {
        (int exitCode, JsonElement look) = Run(text, options);
        Assert.True(exitCode == 0, look.ToString());
        return look;
    }

    private static (int ExitCode, JsonElement Document) Run(string text, params string[] options)
    {
        string file = Path.Combine(Directory.CreateTempSubdirectory("packplanner-column").FullName, "file.csv");
        File.WriteAllText(file, text);
        return Planner.Json(["look", file, .. options]);
    }
}
