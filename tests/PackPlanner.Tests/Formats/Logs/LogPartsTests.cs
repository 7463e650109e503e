using System.Globalization;
using System.IO.Compression;
using System.Text;
using CsCheck;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Logs;

public class LogPartsTests
{
    private static readonly Gen<(int Seed, int PartBytes)> Cuts = Gen.Select(Gen.Int[1, 100_000], Gen.Int[40, 3000]);

    [Fact]
    public void A_wide_log_is_read_alike_whole_and_in_parts_of_any_length() =>
        Cuts.Sample(cut => SameInParts(Wide(new Random(cut.Seed)), cut.PartBytes), seed: "0000KOIUTPS1", iter: 60, threads: 1);

    [Fact]
    public void A_long_log_is_read_alike_whole_and_in_parts_of_any_length() =>
        Cuts.Sample(cut => SameInParts(Long(new Random(cut.Seed)), cut.PartBytes), seed: "0000KOIUTPS1", iter: 60, threads: 1);

    [Fact]
    public void A_packed_log_reads_like_the_plain_one()
    {
        byte[] plain = Encoding.UTF8.GetBytes(Wide(new Random(5)));
        using MemoryStream packed = new();
        using (GZipStream zip = new(packed, CompressionLevel.Fastest, leaveOpen: true))
            zip.Write(plain);

        Same(LogText.Pack(plain), LogText.Pack(packed.ToArray()));
    }

    [Fact]
    public void A_log_whose_lines_are_long_is_known_as_one_by_more_than_its_first_quarter_of_a_megabyte()
    {
        const int Groups = 10_000;
        StringBuilder text = new("time_s,current_a");
        for (int group = 1; group <= Groups; group++)
            text.Append(CultureInfo.InvariantCulture, $",cell_{group}_v");
        for (int row = 0; row < 12; row++)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{row},{row / 3 % 2 * 10}");
            for (int group = 1; group <= Groups; group++)
                text.Append(CultureInfo.InvariantCulture, $",{3.7 - (row * 0.001):0.000}");
        }

        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, text.ToString());
            Assert.True(FileLooks.Look(file, new ReadOptions()).Is(out FileLook? look, out Refusal? why), why?.ToString());
            Assert.Equal(("pack-log", Groups, 12), (look.Shape.Kind, look.Shape.Groups, look.Shape.Rows));
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void Of_a_long_log_nine_rows_of_ten_spoilt_in_their_names_each_is_set_aside_and_told()
    {
        Random random = new(11);
        StringBuilder text = new("time (s),signal,value\n");
        int sound = 0;
        for (int row = 0; row < 200; row++)
            for (int signal = 0; signal < 3; signal++)
            {
                string name = signal == 0 ? "current" : $"cell {signal}";
                bool keeps = random.Next(10) == 0 || row < 2;
                sound += keeps ? 1 : 0;
                string spoilt = new([.. Enumerable.Range(0, 9).Select(_ => "qwxzkvj"[random.Next(7)])]);
                text.Append(CultureInfo.InvariantCulture, $"{row},{(keeps ? name : spoilt)},{(signal == 0 ? row / 10 % 2 * 5 : 3.7 - (row / 10 % 2 * 0.02)):0.000}\n");
            }

        PackLogReading read = LogText.Pack(text.ToString());

        Assert.Equal((2, sound, 600 - sound), (read.Log.Groups, read.Account.RowsUsed, read.Account.Counts.Sum(count => count.Count)));
    }

    [Theory]
    [InlineData('\f')]
    [InlineData('\u0085')]
    [InlineData('\u2028')]
    public void A_mark_above_the_heading_that_ends_no_line_costs_no_row(char mark)
    {
        PackLogReading read = LogText.Pack($"made{mark}in a{mark}shed\n" + Wide(new Random(5)));

        Assert.Equal(LogText.Pack(Wide(new Random(5))).Account.RowsRead, read.Account.RowsRead);
    }

    [Fact]
    public void A_stop_asked_before_reading_ends_it()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();

        Assert.ThrowsAny<OperationCanceledException>(() =>
            LogText.Try(Encoding.UTF8.GetBytes(Wide(new Random(6))), new ReadOptions { PartBytes = 500, Stopped = stop.Token }));
    }

    private static void SameInParts(string text, int partBytes) =>
        Same(LogText.Pack(text, new ReadOptions { PartBytes = int.MaxValue }), LogText.Pack(text, new ReadOptions { PartBytes = partBytes }));

    private static void Same(PackLogReading expected, PackLogReading read)
    {
        Assert.True(expected.Log.Rows > 100);
        Assert.Equal(expected.Log.TimeS, read.Log.TimeS);
        Assert.Equal(expected.Log.CurrentA!, read.Log.CurrentA!);
        Assert.Equal(expected.Log.GroupV, read.Log.GroupV);
        Assert.Equal(expected.Understood, read.Understood);
        Assert.Equal(expected.Account.RowsRead, read.Account.RowsRead);
        Assert.Equal(expected.Account.RowsSetAside, read.Account.RowsSetAside);
        Assert.Equal(expected.Account.Counts, read.Account.Counts);
        Assert.Equal(expected.Account.Samples, read.Account.Samples);
    }

    // After twenty sound rows that show what the log is: rows that are cut short, blank or a heading again, words and lost samples among figures, both line ends.
    private static string Wide(Random random)
    {
        const string Heading = "time (s),current (A),cell 1 (V),cell 2 (V),cell 3 (V)";
        StringBuilder text = new(Heading + "\n");
        for (int i = 0; i < 300; i++)
        {
            double current = i / 5 % 2 * 10;
            string row = string.Create(CultureInfo.InvariantCulture, $"{i},{current},{Volts(i, 1)},{Volts(i, 2)},{Volts(i, 3)}");
            text.Append(i < 20 ? row : Spoilt(random, row, Heading)).Append(random.Next(3) == 0 ? "\r\n" : "\n");
        }

        return random.Next(2) == 0 ? text.ToString() : text.ToString().TrimEnd();
    }

    private static string Long(Random random)
    {
        const string Heading = "time (s),name,value";
        StringBuilder text = new(Heading + "\n");
        string[] names = ["pack_current", "cell_1_voltage", "cell_2_voltage", "cell_3_voltage"];
        for (int i = 0; i < 200; i++)
            for (int name = 0; name < names.Length; name++)
            {
                string figure = name == 0 ? (i / 5 % 2 * 10).ToString(CultureInfo.InvariantCulture) : Volts(i, name);
                string row = $"{i},{names[name]},{figure}";
                text.Append(i < 20 ? row : Spoilt(random, row, Heading)).Append(random.Next(3) == 0 ? "\r\n" : "\n");
            }

        return text.ToString();
    }

    private static string Volts(int row, int group) =>
        (3.71 - (0.01 * group) - (row / 5 % 2 * 0.03) - (row * 0.0005)).ToString("0.0000", CultureInfo.InvariantCulture);

    private static string Spoilt(Random random, string row, string heading) => random.Next(60) switch
    {
        0 => row[..row.IndexOf(',', StringComparison.Ordinal)],
        1 => "",
        2 => ",,,,",
        3 => heading + "\n" + row,
        4 => row[..(row.LastIndexOf(',') + 1)] + "n/a",
        5 => row[..(row.LastIndexOf(',') + 1)],
        6 => "lost" + row[row.IndexOf(',', StringComparison.Ordinal)..],
        _ => row,
    };
}
