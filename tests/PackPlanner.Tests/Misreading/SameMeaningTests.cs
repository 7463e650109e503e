using System.Globalization;

namespace PackPlanner.Tests.Misreading;

/// <summary>Real tables and logs written in another way: the same answer. The long run is in tests/PackPlanner.Fuzzing.</summary>
public sealed class SameMeaningTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("packplanner-misreading-").FullName;

    /// <summary>The changes by name.</summary>
    public static TheoryData<string> Changes { get; } = [.. SameMeaning.All.Keys];

    [Theory]
    [MemberData(nameof(Changes))]
    public void A_table_of_cells_gives_the_same_answer(string change)
    {
        List<string> faults = [];
        foreach (KnownTable table in KnownTables.Cells)
            if (SameMeaning.All[change](table, new Random(1)) is { } changed)
                foreach (string[] line in new[] { ["look"], ["cells"], (string[])["match", "--series", "2", "--parallel", "2"] })
                    if (Reading.OfWhole(table, folder, line[0], line[1..]).Difference(Reading.Of(changed, folder, line[0], line[1..])) is { } difference)
                        faults.Add($"{line[0]}, {table.Name}: {difference}");
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    [Fact]
    public void Several_changes_at_once_give_the_same_answer()
    {
        List<string> faults = [];
        for (int seed = 1; seed <= 60 && faults.Count < 5; seed++)
            if (MisreadingTrial.Of(seed, folder) is { } fault)
                faults.Add(fault);
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    [Theory]
    [MemberData(nameof(Changes))]
    public void A_log_is_understood_alike(string change)
    {
        List<string> faults = [];
        foreach (string name in Logs)
        {
            KnownTable table = KnownTables.Log(name, 600);
            if (SameMeaning.All[change](table, new Random(1)) is not { } changed)
                continue;
            if (MisreadLogs.Difference(table, changed) is { } difference)
                faults.Add(string.Create(CultureInfo.InvariantCulture, $"{name}: {difference}"));
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    private static readonly string[] Logs = ["sample01.csv", "sample02.csv", "sample03.csv", "sample04.csv", "sample05.csv"];

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(folder, recursive: true);
}
