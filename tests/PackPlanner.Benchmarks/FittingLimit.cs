using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using PackPlanner.Tests.Core.Fitting;

namespace PackPlanner.Benchmarks;

/// <summary>
/// The heaviest invented cavities under <c>--time-limit</c>, through the verb: what an answer holds by then, and what it still costs after
/// the limit: <c>-- fitting-limit 1 5</c>, seconds.
/// </summary>
internal static class FittingLimit
{
    internal static void Run(double[] limitsS, string? only)
    {
        Console.WriteLine("After the limit: processor seconds of both cores, and wall seconds, until the answer stood; faults are those of the checker, up to 2,500 places");
        Console.WriteLine("| cavity | limit s | places | S | P | floor | bars | cpu s before | cpu s after | wall s after | exit |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|");
        foreach (string text in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "heavy-cavities.jsonl")))
        {
            string name = JsonDocument.Parse(text).RootElement.GetProperty("id").GetString()!;
            if (only is not null && !name.Contains(only, StringComparison.OrdinalIgnoreCase))
                continue;
            foreach (double limitS in limitsS)
                One(name, text, limitS);
        }
    }

    private static void One(string name, string text, double limitS)
    {
        string file = Path.GetTempFileName();
        File.WriteAllText(file, text);
        TimeSpan start = Used(), atLimit = start;
        using ManualResetEventSlim done = new();
        // A thread of its own: the pool's are all at work on the search.
        Thread watcher = new(() =>
        {
            if (!done.Wait(TimeSpan.FromSeconds(limitS)))
                atLimit = Used();
        });
        watcher.Start();
        Stopwatch watch = Stopwatch.StartNew();
        using StringWriter output = new();
        string seconds = string.Create(CultureInfo.InvariantCulture, $"{limitS}s");
        int exit = Verbs.CommandLine.Run(["fit", file, "--json", "--time-limit", seconds], () => Stream.Null, output, TextWriter.Null, CancellationToken.None);
        double wallS = watch.Elapsed.TotalSeconds;
        TimeSpan end = Used();
        done.Set();
        watcher.Join();
        File.Delete(file);
        using JsonDocument answer = JsonDocument.Parse(output.ToString());
        JsonElement root = answer.RootElement;
        int places = root.GetProperty("count").GetInt32(), series = root.GetProperty("series").GetInt32();
        double? bars = root.GetProperty("links") is { ValueKind: JsonValueKind.Object } links ? links.GetProperty("busbarRatio").GetDouble() : null;
        bool cut = atLimit > start;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {limitS} | {places} | {series} | {root.GetProperty("parallel")} | {places / series} | {bars:0.00} | {((cut ? atLimit : end) - start).TotalSeconds:0.0} | {(cut ? (end - atLimit).TotalSeconds : 0):0.00} | {(cut ? wallS - limitS : 0):0.00} | {exit} |"));
        // The checker looks at every pair of places.
        if (places > 2500)
            return;
        foreach (string fault in PlacementChecker.Faults(text, root).Take(3))
            Console.WriteLine($"  FAULT {fault}");
    }

    private static TimeSpan Used() => Process.GetCurrentProcess().TotalProcessorTime;
}
