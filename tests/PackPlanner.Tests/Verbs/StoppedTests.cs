using System.Text.Json;
using PackPlanner.Formats;
using PackPlanner.Tests.House;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.Verbs;

/// <summary>What is stopped before it has an answer says so, as one document where that was asked for.</summary>
public class StoppedTests
{
    [Theory]
    [InlineData("match", "trike/cells.csv", "--series", "13", "--parallel", "9")]
    [InlineData("cells", "trike/cells.csv")]
    [InlineData("diagnose", "tractor/ride-october.csv", "--chemistry", "LFP", "--rated-ah", "105Ah")]
    public void A_limit_that_leaves_no_time_for_an_answer_is_an_error_that_scripts_can_read(string verb, string file, params string[] options)
    {
        (int exitCode, JsonElement error) = Planner.Json([verb, Repository.At(["sample-data", .. file.Split('/')]), .. options, "--time-limit", "0s"]);

        Assert.Equal(ExitCodes.Stopped, exitCode);
        Assert.Equal("packplanner/error", error.GetProperty("schema").GetString());
        Assert.Equal("stopped", error.GetProperty("code").GetString());
        Assert.Contains("nothing was written", error.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Equal("--time-limit", error.GetProperty("where").GetString());
    }

    [Fact]
    public void The_users_stop_is_told_too()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();
        using StringWriter output = new(), notes = new();

        int exitCode = CommandLine.Run(["cells", Repository.At("sample-data", "trike", "cells.csv"), "--json"], () => Stream.Null, output, notes, stop.Token);

        Assert.Equal(ExitCodes.Stopped, exitCode);
        using JsonDocument error = JsonDocument.Parse(output.ToString());
        Assert.Equal("it was stopped; nothing was written", error.RootElement.GetProperty("message").GetString());
    }
}
