using System.Text.Json;
using PackPlanner.Core.Fitting;
using PackPlanner.Screens.CavityScreen;
using PackPlanner.Tests.Core.Fitting;

namespace PackPlanner.Tests.Screens;

/// <summary>Step 4: which count is whose, on the screen, in the verb, of all places or of the cells used.</summary>
public class CavityCountsTests
{
    // What "=" says of the verb: with --quick it counts as what is drawn, without as the line of the full search.
    [Fact]
    public void The_verb_counts_as_the_two_lines_say_that_it_does()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");
        bench.Press("4");
        bench.Text(120, 36);
        FitAnswer drawn = bench.Desk.Answers.Fit!.Answer!, most = bench.Desk.Answers.MostPlaces!;
        string fitCase = bench.Desk.Job!.FitCase!.Text;

        JsonElement quick = FitRun.Checked(fitCase, "--quick").Answer, full = FitRun.Checked(fitCase, "--work", "2").Answer;

        Assert.Equal(drawn.Cells.Count, quick.GetProperty("count").GetInt32());
        Assert.Equal(drawn.MarginMm[1], quick.GetProperty("marginMm").GetProperty("+x").GetDouble(), 0.01);
        Assert.Equal((most.Cells.Count, most.RegularCount), (full.GetProperty("count").GetInt32(), full.GetProperty("regularCount").GetInt32()));
        // Rows as a quick look lays them, and rows drawn out to the walls, are told apart.
        Assert.True(most.RegularCount > drawn.Cells.Count);
        Assert.EndsWith($"not in rows; in rows {most.RegularCount}", CavityWords.OfFullSearch(bench.Desk, drawn, most));
        bench.Press("Home", "Down");
        Assert.Contains(bench.Desk.Step.WhereFrom()!.Lines, line => line.Says.StartsWith("packplanner fit CASE.json --quick counts the same", StringComparison.Ordinal));
        while (!bench.Desk.Step.WhereFrom()!.Title.StartsWith("full search", StringComparison.Ordinal))
            bench.Press("Down");
        Assert.Contains(bench.Desk.Step.WhereFrom()!.Lines, line => line.Says.StartsWith($"{most.RegularCount} in a regular nest drawn out", StringComparison.Ordinal));
    }

    // 14s6p takes 84 of 95 places: the room to the walls is that of all, the block that of the 84.
    [Fact]
    public void Which_cells_the_room_and_the_block_are_those_of_is_said()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("scooter");
        bench.Press("4");

        string text = bench.Text(120, 36);

        Assert.Contains("room of 95  left ", text);
        Assert.Contains("block of 84", text);
    }
}
