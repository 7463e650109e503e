namespace PackPlanner.Tests.House;

public class LayoutTests
{
    [Fact]
    public void The_top_level_holds_only_what_belongs_there()
    {
        string[] allowed =
        [
            "README.md", "DEVELOPERS.md", "LICENSE", "PackPlanner.sln", "src", "tests", "sample-data", "docs",
            "global.json", "Directory.Build.props", "Directory.Packages.props",
        ];

        // What a run leaves behind and git ignores, such as the runner's TestResults, is no part of the house.
        string[] ignored = [.. File.ReadLines(Repository.At(".gitignore")).Select(line => line.TrimEnd('/'))];

        string[] strangers =
        [
            .. Directory.EnumerateFileSystemEntries(Repository.Root)
                .Select(path => Path.GetFileName(path)!)
                .Where(name => !name.StartsWith('.') && !allowed.Contains(name) && !ignored.Contains(name)),
        ];

        Assert.Empty(strangers);
    }
}
