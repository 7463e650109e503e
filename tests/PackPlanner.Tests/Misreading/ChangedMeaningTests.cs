using System.Text.RegularExpressions;

namespace PackPlanner.Tests.Misreading;

/// <summary>Damage that changes what a file means: the answer is as before, the file is refused, or the answer says it.</summary>
public sealed class ChangedMeaningTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("packplanner-misreading-").FullName;

    /// <summary>Damages of tables by name.</summary>
    public static TheoryData<string> OfCells { get; } = [.. ChangedMeaning.OfCells.Select(change => change.Name)];

    /// <summary>Damages of logs by name.</summary>
    public static TheoryData<string> OfLogs { get; } = [.. ChangedMeaning.OfLogs.Select(change => change.Name)];

    [Theory]
    [MemberData(nameof(OfCells))]
    public void A_table_of_cells_does_not_change_its_meaning_in_silence(string name) =>
        Check(ChangedMeaning.OfCells.Single(change => change.Name == name), KnownTables.Cells, "cells");

    [Theory]
    [MemberData(nameof(OfLogs))]
    public void A_log_does_not_change_its_meaning_in_silence(string name) =>
        Check(ChangedMeaning.OfLogs.Single(change => change.Name == name),
            Logs, "look");

    private static readonly KnownTable[] Logs = [.. new[] { "sample01.csv", "sample02.csv", "sample03.csv", "sample05.csv" }.Select(log => KnownTables.Log(log, 600))];

    private void Check(ChangedMeaning change, KnownTable[] tables, string verb)
    {
        List<string> faults = [];
        foreach (KnownTable table in tables)
        {
            if (change.Change(table) is not { } changed)
                continue;
            AnswerFacts whole = Reading.OfWhole(table, folder, verb);
            AnswerFacts damaged = Reading.Of(changed, folder, verb);
            if (whole.Difference(damaged) is { } difference && !damaged.Said.Except(whole.Said).Any(said => Regex.IsMatch(said, change.Told)))
                faults.Add($"{table.Name}: {difference}; said: {string.Join(" | ", damaged.Said.Except(whole.Said).Take(4))}");
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(folder, recursive: true);
}
