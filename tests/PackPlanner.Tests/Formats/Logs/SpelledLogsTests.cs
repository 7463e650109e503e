using System.Globalization;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>
/// The same invented ride as many loggers would write it: every file under Data/spellings/logs against its line in logs.expected.txt, which
/// was written together with the files from the ride itself.
/// </summary>
public class SpelledLogsTests
{
    private static readonly string Folder = Repository.Data("spellings");

    /// <summary>Name, kind, groups, sign, rows, last second, mean current, mean volts of each group, mean of each probe.</summary>
    public static TheoryData<string> Expected { get; } = [.. File.ReadLines(Path.Combine(Folder, "logs.expected.txt")).Where(line => line.Length > 0)];

    [Theory]
    [MemberData(nameof(Expected))]
    public void A_ride_is_the_same_in_every_spelling(string line)
    {
        string[] parts = line.Split('\t');
        string file = Path.Combine(Folder, "logs", parts[0] + ".csv");

        Assert.True(FileLooks.Look(file, new ReadOptions()).Is(out FileLook? look, out Refusal? why), why?.ToString());
        Assert.Equal(parts[1], look.Shape.Kind);
        Assert.True(PackLogs.Read(file, new ReadOptions()).Is(out PackLogReading? read, out why), why?.ToString());
        Assert.Equal(int.Parse(parts[2], CultureInfo.InvariantCulture), read.Log.Groups);
        Assert.Equal(parts[3], read.Shape.CurrentSign ?? "-");
        Assert.Equal(int.Parse(parts[4], CultureInfo.InvariantCulture), read.Account.RowsUsed);
        Assert.Equal(F(parts[5]), read.Log.TimeS[^1], 0.01);
        Assert.Equal(F(parts[6]), Mean(read.Log.CurrentA!), 1e-4);
        Assert.Equal(All(parts[7]), read.Log.GroupV.Select(Mean), (one, other) => Math.Abs(one - other) < 6e-5);
        Assert.Equal(All(parts[8]), read.Log.TemperatureDegC.Select(Mean), (one, other) => Math.Abs(one - other) < 6e-3);
    }

    private static double[] All(string figures) => figures == "-" ? [] : [.. figures.Split(' ').Select(F)];

    private static double F(string figure) => double.Parse(figure, CultureInfo.InvariantCulture);

    private static double Mean(double[] values) => values.Where(double.IsFinite).Average();
}
