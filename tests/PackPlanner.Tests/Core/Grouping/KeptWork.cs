using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>Lines of counted work that are kept under Golden/Work; ACCEPT_GOLDEN=1 writes them anew.</summary>
internal static class KeptWork
{
    internal static void Hold(string name, IReadOnlyCollection<string> found)
    {
        string file = Repository.At("tests", "PackPlanner.Tests", "Golden", "Work", name);
        if (Environment.GetEnvironmentVariable("ACCEPT_GOLDEN") == "1")
            File.WriteAllText(file, string.Join('\n', found) + "\n");
        Assert.Equal(File.ReadAllLines(file), found);
    }
}
