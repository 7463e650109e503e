using System.Diagnostics;
using PackPlanner.Tests.Fuzz;

namespace PackPlanner.Fuzzing;

/// <summary>A long run over inputs spoiled by seed: faults, inputs that take over 5 s of processor time and inputs that take memory out of proportion are kept.</summary>
internal sealed class SpoiledRun
{
    private const int SlowS = 5;
    private const long LargeBytes = 1_000_000_000;

    private readonly string folder;
    private readonly string work = Directory.CreateTempSubdirectory("packplanner-fuzz-").FullName;
    private readonly long began = Stopwatch.GetTimestamp();
    private TimeSpan used = Environment.CpuUsage.TotalTime;
    private int faults, slow, large;
    private long dearest;

    private SpoiledRun(string folder) => this.folder = folder;

    internal static int Run(int count, int first, string folder)
    {
        Directory.CreateDirectory(folder);
        SpoiledRun run = new(folder);
        using Watchdog watchdog = new(TimeSpan.FromSeconds(60));
        for (int seed = first; seed < first + count; seed++)
        {
            watchdog.Begin(seed);
            run.Try(seed);
            if ((seed - first + 1) % 5000 == 0)
                run.Report(seed - first + 1);
        }

        Directory.Delete(run.work, recursive: true);
        run.Report(count);
        return run.faults + run.slow + run.large == 0 ? 0 : 1;
    }

    private void Try(int seed)
    {
        // The processor's time is dear to ask for; it is asked where the clock says that it may matter.
        long at = Stopwatch.GetTimestamp();
        if (seed % 50 == 0)
            used = Environment.CpuUsage.TotalTime;
        long allocated = GC.GetTotalAllocatedBytes();
        string? fault = FuzzTry.OfSeed(seed, work, out string[] line, out byte[] spoiled);
        allocated = GC.GetTotalAllocatedBytes() - allocated;
        dearest = Math.Max(dearest, allocated);
        double seconds = Stopwatch.GetElapsedTime(at).TotalSeconds;
        if (seconds > SlowS)
            seconds = Math.Min(seconds, (Environment.CpuUsage.TotalTime - used).TotalSeconds);
        faults += fault is null ? 0 : 1;
        if (seconds > SlowS)
        {
            slow++;
            fault ??= $"{seconds:0.0} s";
        }

        if (allocated > LargeBytes)
        {
            large++;
            fault ??= $"{allocated / 1e6:0} MB allocated";
        }

        if (fault is null)
            return;
        File.WriteAllBytes(Path.Combine(folder, $"{line[0]}-{seed}{(line[0] == "job" ? ".job.json" : ".csv")}"), spoiled);
        Console.WriteLine($"seed {seed}: {string.Join(' ', line)}: {fault}");
    }

    private void Report(int done)
    {
        using Process self = Process.GetCurrentProcess();
        Console.WriteLine(
            $"{done} inputs, {faults} faults, {slow} over {SlowS} s, {large} over 1 GB allocated (most {dearest / 1e6:0} MB); "
            + $"{done / Stopwatch.GetElapsedTime(began).TotalSeconds:0} a second, {self.TotalProcessorTime.TotalMilliseconds / done:0.0} ms of processor each, peak {self.PeakWorkingSet64 / 1e6:0} MB");
    }
}
