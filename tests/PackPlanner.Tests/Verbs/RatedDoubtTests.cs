using System.Text.Json;
using PackPlanner.Core.Cells;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

/// <summary>A rated capacity that what was measured contradicts strongly is said to be doubtful.</summary>
public class RatedDoubtTests
{
    private static readonly string Tractor = Path.Combine(Repository.Root, "sample-data", "tractor", "ride-october.csv");

    [Theory]
    [InlineData("5000", "if 5000 mAh are meant, say 5 Ah")]
    [InlineData("0.005", "say 5 Ah")]
    [InlineData("1", "% of the rated 1 Ah")]
    [InlineData("5", null)]
    public void A_lot_tells(string rated, string? says)
    {
        (int exitCode, JsonElement answer) = Planner.Json("cells", Path.Combine(Repository.Root, "sample-data", "trike", "cells.csv"), "--rated-ah", rated);

        Assert.Equal(0, exitCode);
        Told(answer, says);
    }

    // 70.6 Ah of 105 flow in that ride, from full to the first group's knee.
    [Theory]
    [InlineData("1", "70.6")]
    [InlineData("800", "contradict each other")]
    [InlineData("105", null)]
    public void A_log_tells(string rated, string? says)
    {
        (int exitCode, JsonElement answer) = Planner.Json("diagnose", Tractor, "--chemistry", "LFP", "--rated-ah", rated);

        Assert.Equal(0, exitCode);
        Told(answer, says);
    }

    // By hand: 2.9 of 10 is 29 %, 3.1 is 31 %; 15.1 of 10 is more than half as much again.
    [Theory]
    [InlineData(10.0, 2.9, true)]
    [InlineData(10.0, 3.1, false)]
    [InlineData(10.0, 14.9, false)]
    [InlineData(10.0, 15.1, true)]
    public void Between_three_tenths_and_half_as_much_again_nothing_is_said(double ratedAh, double seenAh, bool doubted) =>
        Assert.Equal(doubted, RatedDoubt.Of(ratedAh, seenAh, "the test shows") is not null);

    private static void Told(JsonElement answer, string? says)
    {
        string[] doubts = [.. answer.GetProperty("understood").EnumerateArray().Select(line => line.GetString()!).Where(line => line.Contains("contradict each other", StringComparison.Ordinal))];
        if (says is null)
            Assert.Empty(doubts);
        else
            Assert.Contains(doubts, line => line.Contains(says, StringComparison.Ordinal));
    }
}
