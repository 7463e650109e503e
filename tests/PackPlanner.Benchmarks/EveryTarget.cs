using System.Diagnostics;
using System.Reflection;
using System.Runtime.InteropServices;

namespace PackPlanner.Benchmarks;

/// <summary>Every table of targets, one after the other, each in a process of its own, so that what one leaves in memory is no part of the next.</summary>
internal static class EveryTarget
{
    // Those of seconds first; the last ones take many minutes each.
    private static readonly string[][] Lines =
    [
        ["grouping"], ["power"], ["reading"], ["diagnosis-speed"], ["screens"], ["fitting"], ["fitting-random", "200", "1", "3"],
        ["minimiser", "9000", "2"], ["diagnosis", "21000", "21210"], ["diagnosis-peer", "7000", "7064", "each"],
    ];

    /// <summary>Prints the machine and the versions, then each table.</summary>
    /// <param name="only">Words of commands; where there are any, those alone.</param>
    /// <returns>0 where each ended well.</returns>
    internal static int Run(string[] only)
    {
        Console.WriteLine($"{RuntimeInformation.OSDescription}, {RuntimeInformation.ProcessArchitecture}, {Environment.ProcessorCount} cores of {Processor()}");
        Console.WriteLine($"{RuntimeInformation.FrameworkDescription}; PackPlanner {typeof(Core.Cells.Chemistries).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion}; load when it began {Load()}");
        int failed = 0;
        foreach (string[] line in Lines.Where(line => only.Length == 0 || only.Contains(line[0])))
        {
            Console.WriteLine();
            Console.WriteLine($"== {string.Join(' ', line)}");
            using Process process = Process.Start("dotnet", [typeof(EveryTarget).Assembly.Location, .. line]);
            process.WaitForExit();
            if (process.ExitCode != 0)
                Console.WriteLine($"ended with {process.ExitCode}");
            failed += process.ExitCode == 0 ? 0 : 1;
        }

        return failed == 0 ? 0 : 1;
    }

    private static string Processor() => First("/proc/cpuinfo", line => line.StartsWith("model name", StringComparison.Ordinal))?.Split(':')[^1].Trim() ?? "a processor without a name";

    private static string Load() => First("/proc/loadavg", _ => true) ?? "unknown";

    private static string? First(string file, Func<string, bool> wanted) => File.Exists(file) ? File.ReadLines(file).FirstOrDefault(wanted) : null;
}
