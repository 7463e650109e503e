using System.Globalization;
using System.Text;
using CsCheck;
using PackPlanner.Core.Cells;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Tables;

/// <summary>One lot written in any way that means the same is read as the same figures, bit for bit.</summary>
public class TablePropertiesTests
{
    private static readonly Gen<(int Lot, int Writing)> Cases = Gen.Select(Gen.Int[1, 1_000_000], Gen.Int[1, 1_000_000]);

    [Fact]
    public void Order_of_columns_and_rows_units_marks_encoding_and_separator_change_no_figure() =>
        Cases.Sample(
            one =>
            {
                (string Label, decimal Mah, decimal Milliohm, decimal Millivolt)[] lot = Lot(new Random(one.Lot));
                (byte[] bytes, string how) = Write(lot, new Random(one.Writing));

                CellTableReading read = TableText.Read(bytes);

                Assert.True(lot.Length == read.Rows.Count, how);
                foreach ((string label, decimal mah, decimal milliohm, decimal millivolt) in lot)
                {
                    CellRow row = read.Row(label);
                    Assert.True((double)(mah / 1000) == row.CapacityAh, $"{how}: {mah} mAh read as {row.CapacityAh}");
                    Assert.True((double)milliohm == row.ResistanceMilliohm, $"{how}: {milliohm} mOhm");
                    Assert.True((double)(millivolt / 1000) == row.RestV, $"{how}: {millivolt} mV read as {row.RestV}");
                }
            },
            seed: "0000KOIUTPS1",
            iter: 400,
            threads: 1);

    private static (string, decimal, decimal, decimal)[] Lot(Random random) =>
    [
        .. Enumerable.Range(1, random.Next(3, 30)).Select(i => ($"C{i}", (decimal)random.Next(2400, 3100), random.Next(200, 600) / 10m, (decimal)random.Next(3400, 3700))),
    ];

    private static (byte[] Bytes, string How) Write((string Label, decimal Mah, decimal Milliohm, decimal Millivolt)[] lot, Random random)
    {
        bool comma = random.Next(2) == 0;
        char separator = comma ? ";\t|"[random.Next(3)] : ";\t|,"[random.Next(4)];
        bool ampere = random.Next(2) == 0;
        bool volt = random.Next(2) == 0;
        bool inCells = random.Next(2) == 0;
        (string Name, string Unit, Func<int, string> At)[] columns =
        [
            ("cell", "", i => lot[i].Label),
            ("capacity", ampere ? "Ah" : "mAh", i => T(ampere ? lot[i].Mah / 1000 : lot[i].Mah)),
            ("resistance", "mOhm", i => T(lot[i].Milliohm)),
            ("rest voltage", volt ? "V" : "mV", i => T(volt ? lot[i].Millivolt / 1000 : lot[i].Millivolt)),
        ];
        random.Shuffle(columns);
        int[] rows = [.. Enumerable.Range(0, lot.Length)];
        random.Shuffle(rows);
        string end = random.Next(2) == 0 ? "\r\n" : "\n";
        StringBuilder text = new(string.Join(separator, columns.Select(column => inCells || column.Unit.Length == 0 ? column.Name : $"{column.Name} ({column.Unit})")) + end);
        foreach (int row in rows)
            text.Append(string.Join(separator, columns.Select(column => Field(column.At(row), inCells ? column.Unit : "", comma && column.Unit.Length > 0)))).Append(end);
        Encoding[] encodings = [new UTF8Encoding(false), new UTF8Encoding(true), Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.Latin1];
        Encoding encoding = encodings[random.Next(encodings.Length)];
        return ([.. encoding.GetPreamble(), .. encoding.GetBytes(text.ToString())], $"{encoding.WebName} '{separator}' comma {comma} {(ampere ? "Ah" : "mAh")} {(volt ? "V" : "mV")} units in cells {inCells}");
    }

    private static string Field(string figure, string unit, bool comma) => (comma ? figure.Replace('.', ',') : figure) + (unit.Length > 0 ? " " + unit : "");

    private static string T(decimal figure) => figure.ToString(CultureInfo.InvariantCulture);
}
