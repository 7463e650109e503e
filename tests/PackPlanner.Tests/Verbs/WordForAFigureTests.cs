namespace PackPlanner.Tests.Verbs;

/// <summary>A word where a figure was expected.</summary>
public sealed class WordForAFigureTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("word").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void The_row_of_the_cell_and_its_reasons_say_the_word_that_was_found()
    {
        string table = Path.Combine(folder, "cells.csv");
        File.WriteAllText(table, "cell,capacity_Ah,IR mOhm,V\nA,2.5,30,3.6\nB,2.5,dead?,3.6\nC,2.4,31,3.6\nD,2.6,32,3.6\n");

        Assert.Contains("resistance not checked; the table says \"dead?\"", Planner.Run("cells", table).Output, StringComparison.Ordinal);
        Assert.Contains("\"dead?\"", Planner.Run("cells", table, "--why", "B").Output.Split("so ")[0], StringComparison.Ordinal);
    }
}
