using System.Diagnostics;
using System.Globalization;
using CsvHelper;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Benchmarks;

/// <summary>The figures of docs/methods/reading.md: our reading of a log against a bare loop over its fields, side by side in one run.</summary>
internal static class ReadingTargets
{
    private const int Rounds = 5;
    private const double MostRatio = 1.3;

    /// <summary>Makes the files, reads each by both ways in turn, and prints the table.</summary>
    /// <param name="sizes">Megabytes of the wide logs.</param>
    internal static void Run(IReadOnlyList<int> sizes)
    {
        string folder = Directory.CreateTempSubdirectory("reading").FullName;
        try
        {
            Console.WriteLine("| log | rows | MB | bare loop s | ours s | ratio | processor s | ours | peak MB | allowed MB |");
            Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
            List<(double Megabytes, double Seconds)> wide = [];
            foreach (int size in sizes)
            {
                string file = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"wide{size}.csv"));
                ReadingLogs.Wide(file, size);
                if (wide.Count == 0)
                    WarmUp(file);
                wide.Add(Compare("wide, 20 columns", file));
                if (size == sizes[^1])
                    Stop(file);
                File.Delete(file);
            }

            string longFile = Path.Combine(folder, "long.csv");
            ReadingLogs.Long(longFile, 3_000_000);
            Compare("long, 3 million rows", longFile);
            if (wide.Count > 1)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"log-log slope of time over size: {Slope(wide):0.00}"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Reads one file in this process, which does nothing else, and prints its peak of memory in bytes.</summary>
    internal static void Memory(string file)
    {
        Read(file, new ReadOptions());
        using Process self = Process.GetCurrentProcess();
        Console.WriteLine(self.PeakWorkingSet64);
    }

    // Both ways some times unmeasured, so that the compiler has done its work before the first figure.
    private static void WarmUp(string file)
    {
        for (int round = 0; round < Rounds; round++)
        {
            BareLoop(file);
            Read(file, new ReadOptions());
        }
    }

    private static (double Megabytes, double Seconds) Compare(string name, string file)
    {
        double bare = double.MaxValue;
        double ours = double.MaxValue;
        (double Bare, double Ours) worked = (double.MaxValue, double.MaxValue);
        int rows = 0;
        // In turn, and the best of each: what else the machine does slows some rounds of both.
        for (int round = 0; round < Rounds; round++)
        {
            GC.Collect();
            double processor = Processor();
            long at = Stopwatch.GetTimestamp();
            BareLoop(file);
            bare = Math.Min(bare, Stopwatch.GetElapsedTime(at).TotalSeconds);
            worked.Bare = Math.Min(worked.Bare, Processor() - processor);
            GC.Collect();
            processor = Processor();
            at = Stopwatch.GetTimestamp();
            rows = Read(file, new ReadOptions());
            ours = Math.Min(ours, Stopwatch.GetElapsedTime(at).TotalSeconds);
            worked.Ours = Math.Min(worked.Ours, Processor() - processor);
        }

        double megabytes = new FileInfo(file).Length / 1e6;
        double peak = PeakOfItsOwnProcess(file) / 1e6;
        string verdict = ours / bare <= MostRatio ? "" : string.Create(CultureInfo.InvariantCulture, $" (over {MostRatio})");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {rows} | {megabytes:0} | {bare:0.00} | {ours:0.00} | {ours / bare:0.00}{verdict} | {worked.Bare:0.00} | {worked.Ours:0.00} | {peak:0} | {100 + (2 * megabytes):0} |"));
        return (megabytes, ours);
    }

    // Of all threads: what beside other work tells more than the clock.
    private static double Processor()
    {
        using Process self = Process.GetCurrentProcess();
        return self.TotalProcessorTime.TotalSeconds;
    }

    private static int Read(string file, ReadOptions options) => PackLogs.Read(file, options).Is(out PackLogReading? reading, out Refusal? why)
        ? reading.Account.RowsRead
        : throw new InvalidDataException(why.Problem.Why);

    // Every field by TryParse<double>, one thread, lines counted: nothing is kept.
    private static double BareLoop(string file)
    {
        using CsvReader csv = CsvReader.FromFile(file, new CsvReaderOptions
        {
            TrackLineNumbers = true,
            AllowLineBreaksInQuotes = false,
            FieldCountMismatch = CsvFieldCountHandling.Allow,
            FormatProvider = CultureInfo.InvariantCulture,
        });
        csv.ReadHeader();
        double sum = 0;
        while (csv.Read())
            for (int i = 0; i < csv.FieldCount; i++)
                if (csv.TryParse(i, out double value))
                    sum += value;
        return sum;
    }

    private static void Stop(string file)
    {
        using CancellationTokenSource stop = new();
        int reports = 0;
        long asked = 0;
        Told progress = new(told =>
        {
            reports++;
            if (told.Rows <= 100_000 || asked != 0)
                return;
            asked = Stopwatch.GetTimestamp();
            stop.Cancel();
        });
        try
        {
            Read(file, new ReadOptions { Stopped = stop.Token, Progress = progress });
            Console.WriteLine("a stop was not answered");
        }
        catch (OperationCanceledException)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"a stop was answered after {Stopwatch.GetElapsedTime(asked).TotalMilliseconds:0} ms; {reports} reports of progress before it"));
        }
    }

    private static long PeakOfItsOwnProcess(string file)
    {
        ProcessStartInfo start = new(Environment.ProcessPath!) { RedirectStandardOutput = true };
        if (Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet")
            start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "PackPlanner.Benchmarks.dll"));
        foreach (string word in (string[])["reading-memory", file])
            start.ArgumentList.Add(word);
        using Process child = Process.Start(start)!;
        string told = child.StandardOutput.ReadToEnd();
        child.WaitForExit();
        return long.Parse(told, CultureInfo.InvariantCulture);
    }

    private static double Slope(List<(double Megabytes, double Seconds)> points)
    {
        double meanX = points.Average(point => Math.Log(point.Megabytes));
        double meanY = points.Average(point => Math.Log(point.Seconds));
        return points.Sum(point => (Math.Log(point.Megabytes) - meanX) * (Math.Log(point.Seconds) - meanY))
            / points.Sum(point => Math.Pow(Math.Log(point.Megabytes) - meanX, 2));
    }

    private sealed class Told(Action<ReadProgress> told) : IProgress<ReadProgress>
    {
        public void Report(ReadProgress value) => told(value);
    }
}
