using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Formats;

/// <summary>Spellings that are not read: every file under Data/spellings/refused is refused, with the code that stands beside its name, and never read as something else.</summary>
public class RefusedSpellingsTests
{
    public static TheoryData<string> Expected { get; } = [.. File.ReadLines(Repository.Data("spellings", "refused.expected.txt")).Where(line => line.Length > 0)];

    [Theory]
    [MemberData(nameof(Expected))]
    public void It_is_refused_with_a_reason_and_a_way_on(string line)
    {
        string[] parts = line.Split('\t');

        Assert.False(FileLooks.Look(Repository.Data("spellings", "refused", parts[0] + ".csv"), new ReadOptions()).Is(out _, out Refusal? why), parts[0]);
        Assert.Equal((ExitCodes.Input, parts[1]), (why!.ExitCode, why.Code));
        Assert.NotEmpty(why.Problem.Remedy);
    }

    [Theory]
    [InlineData("elapsed=time:s", 119)]
    [InlineData("elapsed=time:min", 7140)]
    public void Two_numbers_from_nought_on_are_settled_by_the_option_that_the_refusal_names(string choice, double lastS)
    {
        ReadOptions options = new() { Columns = new ColumnChoices([ColumnChoice.Read(choice, out _)!], "--column") };

        Assert.True(PackLogs.Read(Repository.Data("spellings", "refused", "minutes-or-hours.csv"), options).Is(out PackLogReading? read, out Refusal? why), why?.ToString());

        Assert.Equal(lastS, read.Log.TimeS[^1]);
    }
}
