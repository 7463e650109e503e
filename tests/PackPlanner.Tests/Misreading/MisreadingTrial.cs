using System.Globalization;

namespace PackPlanner.Tests.Misreading;

/// <summary>One trial of a long run: a table or a log drawn by seed, changed in some ways that leave its meaning as it was.</summary>
internal static class MisreadingTrial
{
    private static readonly KnownTable[] Logs =
        [.. new[] { "sample01.csv", "sample02.csv", "sample03.csv", "sample04.csv", "sample05.csv" }.Select(name => KnownTables.Log(name, 600))];

    private static readonly string[][] Lines = [["look"], ["cells"], ["match", "--series", "2", "--parallel", "2"]];

    /// <summary>The difference that the changes made, or null.</summary>
    internal static string? Of(int seed, string folder)
    {
        Random random = new(seed);
        bool log = random.Next(2) == 0;
        KnownTable table = log ? Logs[random.Next(Logs.Length)] : KnownTables.Cells[random.Next(KnownTables.Cells.Length)];
        KnownTable changed = SameMeaning.Some(table, random);
        string[] line = Lines[random.Next(Lines.Length)];
        string? difference = log ? MisreadLogs.Difference(table, changed)
            : Reading.OfWhole(table, folder, line[0], line[1..]).Difference(Reading.Of(changed, folder, line[0], line[1..]));
        return difference is null ? null : string.Create(CultureInfo.InvariantCulture, $"seed {seed}, {(log ? "log" : line[0])} {table.Name}, {changed.Done}: {difference}");
    }
}
