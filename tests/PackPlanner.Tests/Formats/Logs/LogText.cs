using System.Text;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>Reads a log that stands in the test itself.</summary>
internal static class LogText
{
    internal static PackLogReading Pack(string text, ReadOptions? options = null) => Pack(Encoding.UTF8.GetBytes(text), options);

    internal static PackLogReading Pack(byte[] bytes, ReadOptions? options = null)
    {
        Assert.True(Try(bytes, options).Is(out PackLogReading? reading, out Refusal? why), why?.ToString());
        Assert.Equal(reading.Account.RowsRead, reading.Account.RowsUsed + reading.Account.Counts.Sum(count => count.Count));
        return reading;
    }

    internal static Outcome<PackLogReading> Try(byte[] bytes, ReadOptions? options = null) =>
        PackLogs.Read("-", (options ?? new ReadOptions()) with { StandardInput = () => new MemoryStream(bytes) });
}
