using System.Collections.Concurrent;
using System.Diagnostics;

namespace PackPlanner.Mutation;

/// <summary>A worker in a process of its own, whose processor time is watched.</summary>
internal sealed class WorkerProcess : IDisposable
{
    private const double MostIdleS = 240;
    private readonly Process process;
    private readonly BlockingCollection<string> answers = [];

    internal WorkerProcess(string folder, int changeFromStart)
    {
        ProcessStartInfo start = new("dotnet", [typeof(WorkerProcess).Assembly.Location, "worker", folder])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        // A change that lets memory grow is to fail, not to fill the machine.
        start.Environment["DOTNET_GCHeapHardLimit"] = "0x70000000";
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["PACKPLANNER_MUTANT"] = changeFromStart.ToString(System.Globalization.CultureInfo.InvariantCulture);
        process = Process.Start(start)!;
        process.OutputDataReceived += (_, line) =>
        {
            if (line.Data is null)
                answers.CompleteAdding();
            else
                answers.Add(line.Data);
        };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>Milliseconds of processor time that it has taken.</summary>
    internal double ProcessorMs
    {
        get
        {
            try
            {
                process.Refresh();
                return process.TotalProcessorTime.TotalMilliseconds;
            }
            catch (InvalidOperationException)
            {
                return 0;
            }
        }
    }

    internal void Order(string line)
    {
        try
        {
            process.StandardInput.Write(line + "\n");
            process.StandardInput.Flush();
        }
        catch (IOException)
        {
            // It has died; the next answer tells.
        }
    }

    /// <summary>The next answer.</summary>
    /// <param name="mostMs">Milliseconds of processor time that it may take from now on.</param>
    /// <returns>The line; null where it died, and an empty one where it took too long.</returns>
    internal string? Answer(double mostMs)
    {
        double begun = ProcessorMs;
        Stopwatch clock = Stopwatch.StartNew();
        while (true)
        {
            if (answers.TryTake(out string? line, 200))
                return line;
            if (answers.IsCompleted)
                return null;
            // What waits for ever takes no processor time at all.
            if (ProcessorMs - begun > mostMs || clock.Elapsed.TotalSeconds > MostIdleS + mostMs / 10)
                return "";
        }
    }

    public void Dispose()
    {
        if (!process.HasExited)
            process.Kill(entireProcessTree: true);
        process.WaitForExit();
        process.Dispose();
        answers.Dispose();
    }
}
