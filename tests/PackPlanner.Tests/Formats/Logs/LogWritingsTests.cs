using System.Globalization;
using System.IO.Compression;
using System.Text;
using CsCheck;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>
/// One ride with charge, discharge, warmth and a shown state of charge, written wide or long, with every way of telling the time and every unit
/// that loggers use: the same figures, and the direction of the current found from the volts alone.
/// </summary>
public class LogWritingsTests
{
    private const int Groups = 3;
    private const int Rows = 80;
    private static readonly DateTime Start = new(2024, 6, 13, 9, 58, 30, DateTimeKind.Unspecified);
    private static readonly Gen<(int Ride, int Writing)> Cases = Gen.Select(Gen.Int[1, 1_000_000], Gen.Int[1, 1_000_000]);

    private static readonly (string Heading, Func<int, string> At)[] Times =
    [
        ("time (s)", i => Text(i)),
        ("time (ms)", i => Text(i * 1000)),
        ("time (min)", i => (i / 60m).ToString("0.########", CultureInfo.InvariantCulture)),
        ("timestamp", i => Text(1718272710 + i)),
        ("timestamp", i => Text((1718272710L + i) * 1000)),
        ("time", i => Stamp(i, "yyyy-MM-dd HH:mm:ss")),
        ("time", i => Stamp(i, "yyyy-MM-ddTHH:mm:ss") + "Z"),
        ("time", i => Stamp(i, "yyyy-MM-ddTHH:mm:ss") + "+02:00"),
        ("time", i => Stamp(i, "dd.MM.yyyy HH:mm:ss")),
        ("time", i => Stamp(i, "M/d/yyyy h:mm:ss tt")),
        ("time", i => Stamp(i, "d MMM yyyy HH:mm:ss")),
        ("time", i => Stamp(i, "ddd dd MMM yyyy HH:mm:ss")),
        ("time", i => Stamp(i, "yyyy年MM月dd日 HH:mm:ss")),
        ("time", i => Stamp(i, "yyyyMMddHHmmss")),
        ("time", i => Stamp(i, "HH:mm:ss")),
    ];

    [Fact]
    public void Layout_time_units_sign_order_marks_encoding_and_packing_change_no_figure() =>
        Cases.Sample(
            one =>
            {
                Ride ride = Ride.Make(new Random(one.Ride));
                (byte[] bytes, string how) = Write(ride, new Random(one.Writing));

                Assert.True(LogText.Try(bytes).Is(out PackLogReading? read, out Refusal? why), $"{how}: {why}");
                Assert.True(read.Log.Groups == Groups && read.Log.Rows == Rows, $"{how}: {read.Log.Groups} groups, {read.Log.Rows} rows");
                Near(Enumerable.Range(0, Rows).Select(i => (double)i), read.Log.TimeS, 1e-5, how + ", time");
                Near(ride.CurrentA, read.Log.CurrentA!, 1e-9, how + ", current");
                for (int group = 0; group < Groups; group++)
                    Near(ride.GroupV[group], read.Log.GroupV[group], 0, $"{how}, group {group + 1}");
                Assert.True(read.Log.TemperatureDegC.Length == 1, $"{how}: {read.Log.TemperatureDegC.Length} probes; {string.Join(" ", read.Understood)}");
                Near(ride.DegC, read.Log.TemperatureDegC.Single(), 0.051, how + ", temperature");
                Near(ride.Charge, read.Log.ShownStateOfCharge!, 0.0051, how + ", charge");
            },
            seed: "0000KOIUTPS1",
            iter: 400,
            threads: 1);

    private static void Near(IEnumerable<double> expected, double[] read, double off, string how)
    {
        double[] all = [.. expected];
        Assert.True(all.Length == read.Length, $"{how}: {read.Length} values");
        for (int i = 0; i < all.Length; i++)
            Assert.True(Math.Abs(all[i] - read[i]) <= off, string.Create(CultureInfo.InvariantCulture, $"{how}, row {i + 1}: {all[i]} read as {read[i]}"));
    }

    private static (byte[] Bytes, string How) Write(Ride ride, Random random)
    {
        (string Heading, Func<int, string> At) time = Pick(random, Times);
        bool charge = random.Next(2) == 0;
        bool isLong = random.Next(3) == 0;
        (string Unit, decimal Scale) volts = Pick(random, [("V", 1m), ("mV", 1000m), ("0.1 mV", 10000m)]);
        (string Unit, decimal Scale) amperes = Pick(random, [("A", 1m), ("mA", 1000m), ("10 mA", 100m)]);
        (string Unit, Func<decimal, decimal> Of) warmth = Pick<(string, Func<decimal, decimal>)>(random, [("°C", t => t), ("°F", t => (t * 1.8m) + 32), ("K", t => t + 273.15m), ("0.1 K", t => (t * 10) + 2731.5m)]);
        (string Unit, decimal Scale) share = Pick(random, [("", 1m), ("%", 100m)]);
        List<(string Name, string Unit, Func<int, string> At)> signals =
        [
            (Pick(random, ["current", "Strom", "Courant", "corriente", "电流"]), amperes.Unit, i => Text((decimal)ride.CurrentA[i] * amperes.Scale * (charge ? -1 : 1))),
            ("temperature", warmth.Unit, i => Text(Math.Round(warmth.Of((decimal)ride.DegC[i]), 2))),
            ("SoC", share.Unit, i => Text((decimal)ride.Charge[i] * share.Scale)),
        ];
        string cell = Pick(random, ["cell", "Zelle", "cellule", "celda", "单体电压"]);
        for (int group = 0; group < Groups; group++)
        {
            double[] own = ride.GroupV[group];
            signals.Add(($"{cell} {group + 1}", volts.Unit, i => Text((decimal)own[i] * volts.Scale)));
        }

        (string Name, string Unit, Func<int, string> At)[] inOrder = [.. signals];
        random.Shuffle(inOrder);
        bool comma = random.Next(2) == 0;
        char separator = comma ? Pick(random, [';', '\t', '|']) : Pick(random, [';', '\t', '|', ',']);
        string[] lines = isLong ? LongLines(time, inOrder, random) : WideLines(time, inOrder, random);
        string end = Pick(random, ["\n", "\r\n"]);
        string text = string.Concat(lines.Select(line => line.Replace('\u0001', separator) + end));
        text = comma ? InCommas(text, time.Heading, separator) : text;
        Encoding encoding = Pick<Encoding>(random, [new UTF8Encoding(false), new UTF8Encoding(true), Encoding.Unicode, Encoding.BigEndianUnicode]);
        byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes(text)];
        bool packed = random.Next(4) == 0;
        return (packed ? Packed(bytes) : bytes,
            $"{(isLong ? "long" : "wide")} {time.At(0)} {encoding.WebName} '{separator}' comma {comma} {volts.Unit} {amperes.Unit} {warmth.Unit} '{share.Unit}' charge {charge} packed {packed}");
    }

    private static string[] WideLines((string Heading, Func<int, string> At) time, (string Name, string Unit, Func<int, string> At)[] signals, Random random)
    {
        int[] rows = Order(time.At(0), random);
        bool below = random.Next(3) == 0 && signals.All(signal => signal.Unit.Length > 0) && time.Heading.Contains("(s)", StringComparison.Ordinal);
        string heading = below
            ? string.Join('\u0001', signals.Select(signal => signal.Name).Prepend("time")) + "\n" + string.Join('\u0001', signals.Select(signal => signal.Unit).Prepend("s"))
            : string.Join('\u0001', signals.Select(signal => signal.Unit.Length > 0 ? $"{signal.Name} ({signal.Unit})" : signal.Name).Prepend(time.Heading));
        return [.. heading.Split('\n'), .. rows.Select(row => string.Join('\u0001', signals.Select(signal => signal.At(row)).Prepend(time.At(row))))];
    }

    private static string[] LongLines((string Heading, Func<int, string> At) time, (string Name, string Unit, Func<int, string> At)[] signals, Random random)
    {
        IEnumerable<string> Of(int row) => signals.Select(signal => $"{time.At(row)}\u0001{signal.Name}{(signal.Unit.Length > 0 ? $" ({signal.Unit})" : "")}\u0001{signal.At(row)}");
        string[] rows = [.. Enumerable.Range(0, Rows).SelectMany(Of)];
        if (random.Next(3) == 0)
            rows = [.. Enumerable.Range(0, signals.Length).SelectMany(signal => Enumerable.Range(0, Rows).Select(row => Of(row).ElementAt(signal)))];
        return [$"{time.Heading}\u0001signal\u0001value", .. rows];
    }

    // A clock without a date tells nothing of rows in another order.
    private static int[] Order(string firstTime, Random random)
    {
        int[] rows = [.. Enumerable.Range(0, Rows)];
        if (random.Next(3) == 0 && !(firstTime.Length == 8 && firstTime[2] == ':'))
            random.Shuffle(rows);
        return rows;
    }

    // Every figure gets its comma; stamps with points stay, and so do headings' words.
    private static string InCommas(string text, string timeHeading, char separator) => string.Concat(text.Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Select(line => string.Join(separator, line.Split(separator).Select((field, i) => i == 0 && timeHeading == "time" ? field : field.Replace('.', ','))) + "\n"));

    private static byte[] Packed(byte[] bytes)
    {
        using MemoryStream packed = new();
        using (GZipStream zip = new(packed, CompressionLevel.Fastest, leaveOpen: true))
            zip.Write(bytes);
        return packed.ToArray();
    }

    private static string Stamp(int i, string format) => Start.AddSeconds(i).ToString(format, CultureInfo.InvariantCulture);

    private static string Text(decimal figure) => figure.ToString("0.##########", CultureInfo.InvariantCulture);

    private static T Pick<T>(Random random, T[] all) => all[random.Next(all.Length)];

    private sealed record Ride(double[] CurrentA, double[][] GroupV, double[] DegC, double[] Charge)
    {
        // Discharge, rest and a little charge by turns, long enough for their volts to tell them apart.
        internal static Ride Make(Random random)
        {
            double[] current = new double[Rows];
            double[] warm = new double[Rows];
            double[] charge = new double[Rows];
            double[][] volts = [.. Enumerable.Range(0, Groups).Select(_ => new double[Rows])];
            double level = 0;
            for (int i = 0; i < Rows; i++)
            {
                level = i % 8 != 0 ? level : (i / 8 % 4) switch { 0 or 2 => 0, 1 => Math.Round(8 + (random.NextDouble() * 20), 2), _ => Math.Round(-3 - (random.NextDouble() * 4), 2) };
                current[i] = level;
                warm[i] = Math.Round(21 + (0.02 * i), 1);
                charge[i] = Math.Round(0.9 - (0.002 * i), 3);
                for (int group = 0; group < Groups; group++)
                    volts[group][i] = Math.Round(3.9 - (0.001 * i) - (0.004 * level) - (0.002 * group) + (0.001 * random.NextDouble()), 3);
            }

            return new Ride(current, volts, warm, charge);
        }
    }
}
