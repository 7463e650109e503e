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
    /// <summary>Writes invented logs, reads and diagnoses each, and prints a line for each, then the slopes of time over rows and over groups.</summary>
    internal static void Run(int mostRows)
    {
        string file = Path.GetTempFileName();
        List<(int Rows, int Groups, double Seconds)> taken = [];
        try
        {
            foreach ((int rows, int groups) in ((int, int)[])[(mostRows / 100, 16), (mostRows / 100, 16), (mostRows / 10, 16), (mostRows, 16), (mostRows / 10, 8), (mostRows / 10, 32), (mostRows / 10, 64)])
            {
                Write(file, rows, groups);
                double fromS = Seconds();
                if (!PackLogs.Read(file, new ReadOptions()).Is(out PackLogReading? reading, out Refusal? why))
                    throw new InvalidOperationException(why.ToString());
                double readS = Seconds();
                RideDiagnoser.Diagnose(reading.Log, new PackGiven(Chemistries.Find("NMC")!, groups, null, 30, 4.2, 3.0));
                double doneS = Seconds();
                taken.Add((rows, groups, doneS - readS));
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{rows} rows x {groups} groups: reading {readS - fromS:f2} s, diagnosis {doneS - readS:f2} s of processor time, both {(doneS - fromS) / (readS - fromS):f1} times the reading"));
            }
            // The first run also compiles the program.
            taken.RemoveAt(0);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"log-log slope of the diagnosis over rows {Slope([.. taken.Where(t => t.Groups == 16).Select(t => ((double)t.Rows, t.Seconds))]):f2}, over groups {Slope([.. taken.Where(t => t.Rows == mostRows / 10).Select(t => ((double)t.Groups, t.Seconds))]):f2}; memory at most {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:f0} MB"));
        }
        finally
        {
            File.Delete(file);
        }

        static double Seconds() => Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds;
    }

    private static double Slope((double Size, double Seconds)[] points)
    {
        double x = points.Average(p => Math.Log(p.Size)), y = points.Average(p => Math.Log(p.Seconds));
        return points.Sum(p => (Math.Log(p.Size) - x) * (Math.Log(p.Seconds) - y)) / points.Sum(p => (Math.Log(p.Size) - x) * (Math.Log(p.Size) - x));
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
