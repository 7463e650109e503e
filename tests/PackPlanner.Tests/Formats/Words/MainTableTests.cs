using System.Globalization;
using System.Text;
using CsCheck;
using CsvHelper;
using PackPlanner.Formats.Words;

namespace PackPlanner.Tests.Formats.Words;

/// <summary>What --csv and exports write, read back by a reader of another hand (CsvHelper).</summary>
public class MainTableTests
{
    // Letters that spreadsheets, terminals and tables stumble over, beside ordinary ones.
    private static readonly Gen<string> Words = Gen.OneOf(
        Gen.String[Gen.OneOf(Array.ConvertAll("=+-@;,\"'\t\r\n |0aZé漢\u202e\u001b".ToCharArray(), letter => Gen.Const(letter))), 0, 12],
        Gen.OneOf(Array.ConvertAll<string, Gen<string>>(["=1+1", "+49 C7", "-", "@SUM(A1)", "\t=2", "C7", "2,850", "", "x;y", "\"quoted\"", "a\r\nb"], words => Gen.Const(words))));

    private static readonly Gen<object?> Entry = Gen.OneOf(
        Words.Select(words => (object?)words), Gen.Double.Select(figure => (object?)figure), Gen.Int.Select(count => (object?)count), Gen.Bool.Select(yes => (object?)yes), Gen.Bool.Select(_ => (object?)null));

    [Fact]
    public void Every_field_comes_back_in_either_notation_and_none_is_run_as_a_formula() =>
        Gen.Select(Entry.Array[3].List[0, 6], Gen.Bool).Sample(
            (rows, comma) =>
            {
                string text = new MainTable(["cell", "capacityAh", "note"], [.. rows.Select(row => (IReadOnlyList<object?>)row)]).ToCsv(comma);

                List<string[]> read = Read(text, comma);

                Assert.Equal(["cell", "capacityAh", "note"], read[0]);
                Assert.Equal(rows.Count, read.Count - 1);
                for (int i = 0; i < rows.Count; i++)
                    Assert.All(rows[i].Zip(read[i + 1]), pair => Compare(pair.First, pair.Second, comma));
            },
            seed: "0000KOIUTPS1", iter: 3000, threads: 1);

    private static void Compare(object? written, string read, bool comma)
    {
        switch (written)
        {
            case null: Assert.Equal("", read); break;
            case double figure when !double.IsFinite(figure): Assert.Equal("", read); break;
            case double figure:
                double again = double.Parse(read, NumberStyles.Float, new NumberFormatInfo { NumberDecimalSeparator = comma ? "," : ".", NumberGroupSeparator = " " });
                Assert.Equal(BitConverter.DoubleToInt64Bits(figure), BitConverter.DoubleToInt64Bits(again));
                break;
            case string words:
                string plain = read is ['\'', .. string rest] && words is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? rest : read;
                Assert.Equal(words.Length == 0 ? "" : Shown(words), plain);
                Assert.False(read is ['=' or '+' or '-' or '@' or '\t' or '\r', ..], read);
                break;
            default: Assert.Equal(string.Format(CultureInfo.InvariantCulture, "{0}", written), read); break;
        }
    }

    // What steers a terminal has a stand-in; all else stays letter by letter.
    private static string Shown(string words) =>
        string.Concat(words.Select(letter => letter is '\n' or '\r' or '\t' ? letter.ToString() : OneLine.Of(letter.ToString())));

    private static List<string[]> Read(string text, bool comma)
    {
        using CsvReader csv = CsvReader.Create(new MemoryStream(Encoding.UTF8.GetBytes(text)), new CsvReaderOptions
        {
            HasHeader = false,
            Separator = comma ? ';' : ',',
            DetectSeparatorHint = false,
            AllowLineBreaksInQuotes = true,
            TrimWhitespace = false,
        });
        List<string[]> rows = [];
        while (csv.Read())
            rows.Add([.. Enumerable.Range(0, csv.FieldCount).Select(csv.GetString)]);
        return rows;
    }
}
