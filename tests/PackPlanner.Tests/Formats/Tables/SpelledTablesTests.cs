using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Formats;
using PackPlanner.Formats.Tables;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Formats.Tables;

/// <summary>
/// The same invented lot as many hands and testers would write it: every file under Data/spellings/cells against its line in
/// cells.expected.txt, which was written together with the files from the lot itself.
/// </summary>
public class SpelledTablesTests
{
    private static readonly string Folder = Repository.Data("spellings");

    /// <summary>Name, rows used, rows set aside, and each row as label, Ah, milliohm and resting volts.</summary>
    public static TheoryData<string> Expected { get; } = [.. File.ReadLines(Path.Combine(Folder, "cells.expected.txt")).Where(line => line.Length > 0)];

    [Theory]
    [MemberData(nameof(Expected))]
    public void A_lot_is_the_same_in_every_spelling(string line)
    {
        string[] parts = line.Split('\t');
        string file = Path.Combine(Folder, "cells", parts[0] + ".csv");

        Assert.True(FileLooks.Look(file, new ReadOptions()).Is(out FileLook? look, out Refusal? why), why?.ToString());
        Assert.Equal("cells", look.Shape.Kind);
        Assert.True(CellTables.Read([file], new ReadOptions()).Is(out CellTableReading? read, out why), why?.ToString());
        Assert.Equal(parts[3..], read.Rows.Select(Words));
        Assert.Equal((int.Parse(parts[1], CultureInfo.InvariantCulture), int.Parse(parts[2], CultureInfo.InvariantCulture)), (read.Account.RowsUsed, read.Account.RowsRead - read.Account.RowsUsed));
    }

    private static string Words(CellRow row) => $"{row.Label}|{F(row.CapacityAh)}|{F(row.ResistanceMilliohm)}|{F(row.RestV)}";

    private static string F(double? figure) => figure?.ToString("G6", CultureInfo.InvariantCulture) ?? "-";
}
