using System.Globalization;
using System.Text;
using CsCheck;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>One ride written in any way that means the same is read as the same figures, bit for bit.</summary>
public class LogPropertiesTests
{
    private const int Groups = 4;
    private const int Rows = 60;
    private static readonly Gen<(int Ride, int Writing)> Cases = Gen.Select(Gen.Int[1, 1_000_000], Gen.Int[1, 1_000_000]);

    [Fact]
    public void Order_of_columns_and_rows_units_marks_encoding_and_separator_change_no_figure() =>
        Cases.Sample(
            one =>
            {
                Ride ride = Ride.Make(new Random(one.Ride));
                (byte[] bytes, string how) = Write(ride, new Random(one.Writing));

                PackLogReading read = LogText.Pack(bytes, new ReadOptions { CurrentSign = "discharge" });

                Assert.Equal(ride.TimeS, read.Log.TimeS);
                Assert.True(ride.CurrentA.SequenceEqual(read.Log.CurrentA!), how);
                for (int group = 0; group < Groups; group++)
                    Assert.True(ride.GroupV[group].SequenceEqual(read.Log.GroupV[group]), $"{how}, group {group + 1}");
            },
            seed: "0000KOIUTPS1",
            iter: 300,
            threads: 1);

    [Fact]
    public void Figures_are_those_that_the_framework_parses_bit_for_bit() =>
        Gen.Double[3.0, 4.1].Array[40].Sample(
            volts =>
            {
                string[] written = [.. volts.Select((v, i) => v.ToString(i % 3 == 0 ? "R" : i % 3 == 1 ? "0.0000000" : "0.00000E+0", CultureInfo.InvariantCulture))];
                string text = "time (s),current (A),cell 1 (V),cell 2 (V)\n" + string.Concat(written.Select((figure, i) => $"{i},5,{figure},3.5\n"));

                PackLogReading read = LogText.Pack(text);

                Assert.Equal(written.Select(figure => double.Parse(figure, CultureInfo.InvariantCulture)), read.Log.GroupV[0]);
            },
            seed: "0000KOIUTPS1",
            iter: 100,
            threads: 1);

    private static (byte[] Bytes, string How) Write(Ride ride, Random random)
    {
        bool comma = random.Next(2) == 0;
        char separator = comma ? ";\t|"[random.Next(3)] : ";\t|,"[random.Next(4)];
        int voltScale = new[] { 1, 1000, 10000 }[random.Next(3)];
        int currentScale = new[] { 1, 1000 }[random.Next(2)];
        int timeScale = new[] { 1, 1000 }[random.Next(2)];
        string voltUnit = voltScale == 1 ? "V" : voltScale == 1000 ? "mV" : "0.1 mV";
        List<(string Name, Func<int, string> At)> columns =
        [
            (timeScale == 1 ? "time (s)" : "time (ms)", i => ((decimal)ride.TimeS[i] * timeScale).ToString(CultureInfo.InvariantCulture)),
            (currentScale == 1 ? "current (A)" : "current (mA)", i => ((decimal)ride.CurrentA[i] * currentScale).ToString(CultureInfo.InvariantCulture)),
        ];
        for (int group = 0; group < Groups; group++)
        {
            double[] volts = ride.GroupV[group];
            columns.Add(($"cell {group + 1} ({voltUnit})", i => ((decimal)volts[i] * voltScale).ToString(CultureInfo.InvariantCulture)));
        }

        (string Name, Func<int, string> At)[] inOrder = [.. columns];
        random.Shuffle(inOrder);
        int[] rows = [.. Enumerable.Range(0, Rows)];
        if (random.Next(2) == 0)
            random.Shuffle(rows);
        string end = random.Next(2) == 0 ? "\r\n" : "\n";
        StringBuilder text = new(string.Join(separator, inOrder.Select(column => column.Name.Replace("0.1", comma ? "0,1" : "0.1", StringComparison.Ordinal))) + end);
        foreach (int row in rows)
            text.Append(string.Join(separator, inOrder.Select(column => comma ? column.At(row).Replace('.', ',') : column.At(row)))).Append(end);
        Encoding[] encodings = [new UTF8Encoding(false), new UTF8Encoding(true), Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.Latin1];
        Encoding encoding = encodings[random.Next(encodings.Length)];
        byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes(text.ToString())];
        return (bytes, $"{encoding.WebName} '{separator}' comma {comma} {voltUnit} current x{currentScale} time x{timeScale} shuffled {rows[0] != 0}");
    }

    private sealed record Ride(double[] TimeS, double[] CurrentA, double[][] GroupV)
    {
        // Rides of full and half load by turns; figures with as many digits as loggers write.
        internal static Ride Make(Random random)
        {
            double[] current = new double[Rows];
            double[][] volts = [.. Enumerable.Range(0, Groups).Select(_ => new double[Rows])];
            for (int i = 0; i < Rows; i++)
            {
                current[i] = i % 6 < 3 ? 0 : Math.Round(5 + (random.NextDouble() * 20), 2);
                for (int group = 0; group < Groups; group++)
                    volts[group][i] = Math.Round(3.9 - (0.001 * i) - (0.004 * current[i]) - (0.002 * group) + (0.001 * random.NextDouble()), 3);
            }

            return new Ride([.. Enumerable.Range(0, Rows).Select(i => (double)i)], current, volts);
        }
    }
}
