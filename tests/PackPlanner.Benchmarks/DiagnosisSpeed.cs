using System.Diagnostics;
using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Benchmarks;

/// <summary>Time of a diagnosis against the time of reading the same file, side by side in one run, for growing rows and groups.</summary>
internal static class DiagnosisSpeed
{
    /// <summary>Writes invented logs, reads and diagnoses each, and prints a line for each.</summary>
    internal static void Run(int mostRows)
    {
        string file = Path.GetTempFileName();
        try
        {
            foreach ((int rows, int groups) in ((int, int)[])[(mostRows / 100, 16), (mostRows / 10, 16), (mostRows, 16), (mostRows / 10, 8), (mostRows / 10, 32)])
            {
                Write(file, rows, groups);
                double fromS = Seconds();
                if (!PackLogs.Read(file, new ReadOptions()).Is(out PackLogReading? reading, out Refusal? why))
                    throw new InvalidOperationException(why.ToString());
                double readS = Seconds();
                RideDiagnoser.Diagnose(reading.Log, new PackGiven(Chemistries.Find("NMC")!, groups, null, 30, 4.2, 3.0));
                double doneS = Seconds();
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{rows} rows x {groups} groups: reading {readS - fromS:f2} s, diagnosis {doneS - readS:f2} s of processor time, both {(doneS - fromS) / (readS - fromS):f1} times the reading"));
            }
        }
        finally
        {
            File.Delete(file);
        }

        static double Seconds() => Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds;
    }

    /// <summary>Steps of current between rest and 25 A from 97 to 10 % of 30 Ah and back, over and over.</summary>
    private static void Write(string file, int rows, int groups)
    {
        Random random = new(7);
        using StreamWriter text = new(file);
        text.WriteLine("t,I," + string.Join(',', Enumerable.Range(1, groups).Select(k => $"c{k}")));
        double charge = 0.97, amps = 0;
        bool charging = false;
        for (int i = 0, left = 0; i < rows; i++, left--)
        {
            charging = charge < 0.1 || (charging && charge < 0.96);
            if (left <= 0)
                (amps, left) = (random.Next(6) switch { 0 or 1 => 0, 2 => -3, 3 => 5, 4 => 10, _ => 25 }, random.Next(4, 40));
            double now = charging ? -12 : amps;
            charge -= now / 3600 / 30;
            text.Write(string.Create(CultureInfo.InvariantCulture, $"{i},{now + (0.1 * (random.NextDouble() - 0.5)):f2}"));
            for (int k = 0; k < groups; k++)
                text.Write(string.Create(CultureInfo.InvariantCulture, $",{3.1 + (1.05 * charge) - (0.002 * now) + (0.0005 * k) + (0.002 * (random.NextDouble() - 0.5)):f3}"));
            text.WriteLine();
        }
    }
}
