namespace PackPlanner.Tests.House;

/// <summary>Finds the checkout that the tests were built from.</summary>
internal static class Repository
{
    /// <summary>
    /// The folder of PackPlanner.sln. Found by walking up from the test program, because caller file paths are
    /// rewritten when ContinuousIntegrationBuild is on.
    /// </summary>
    internal static string Root { get; } = Find();

    internal static string Data(params string[] parts) =>
        Path.Combine([Root, "tests", "PackPlanner.Tests", "Data", .. parts]);

    internal static string At(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string Find()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "PackPlanner.sln")))
                return folder.FullName;
        throw new InvalidOperationException($"No PackPlanner.sln above {AppContext.BaseDirectory}.");
    }
}
