using System.Text;
using PackPlanner.Core.Cells;
using PackPlanner.Formats;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Tables;

/// <summary>Reads a table that stands in the test itself.</summary>
internal static class TableText
{
    internal static CellTableReading Read(string text, ReadOptions? options = null) => Read(Encoding.UTF8.GetBytes(text), options);

    internal static CellTableReading Read(byte[] bytes, ReadOptions? options = null)
    {
        Assert.True(Try(bytes, options).Is(out CellTableReading? reading, out Refusal? why), why?.ToString());
        RowAccount account = reading.Account;
        Assert.Equal(account.RowsRead, account.RowsUsed + account.Counts.Sum(count => count.Count));
        Assert.Equal(account.RowsUsed, reading.Rows.Count);
        return reading;
    }

    internal static Refusal Refused(string text, ReadOptions? options = null) => Refused(Encoding.UTF8.GetBytes(text), options);

    internal static Refusal Refused(byte[] bytes, ReadOptions? options = null)
    {
        Assert.False(Try(bytes, options).Is(out _, out Refusal? why), "it was read");
        Assert.NotEmpty(why!.Problem.Where);
        Assert.NotEmpty(why.Problem.Why);
        Assert.NotEmpty(why.Problem.Remedy);
        return why;
    }

    internal static CellRow Row(this CellTableReading reading, string label) => reading.Rows.Single(row => row.Label == label);

    private static Outcome<CellTableReading> Try(byte[] bytes, ReadOptions? options) =>
        CellTables.Read(["-"], (options ?? new ReadOptions()) with { StandardInput = () => new MemoryStream(bytes) });
}
