using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using PackPlanner.Core.Fitting;
using PackPlanner.Formats.Json;
using PackPlanner.Tests.Core.Fitting;

namespace PackPlanner.Benchmarks;

/// <summary>
/// Fitting on invented cavities, each answer looked over by the checker of the tests: <c>dotnet run -c Release --project
/// tests/PackPlanner.Benchmarks -- fitting 700</c>; a word after the work takes only cavities with that word in their name.
/// </summary>
internal static class FittingTargets
{
    internal static void Run(int work, string? only)
    {
        Console.WriteLine($"Invented cavities, --work {work}; processor seconds of both cores; bars over the least possible; faults are those of the checker");
        Console.WriteLine("| cavity | regular | free | count | bound | count/bound | S | P | floor | narrowest | bars | cpu s |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|---|");
        string file = Path.Combine(AppContext.BaseDirectory, "cavities.jsonl");
        foreach (string text in File.ReadLines(file))
        {
            using JsonDocument document = JsonDocument.Parse(text);
            string name = document.RootElement.GetProperty("id").GetString()!;
            if (only is null || name.Contains(only, StringComparison.OrdinalIgnoreCase))
                One(name, text, document.RootElement, work);
        }
    }

    private static void One(string name, string text, JsonElement root, int work)
    {
        if (!FitCaseJson.Read(JsonInput.Of(name, root), []).Is(out FitCase? fitCase, out _))
            throw new InvalidDataException(name);
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        FitAnswer a = LayoutSearch.Search(fitCase, new FitEffort(work), null, CancellationToken.None);
        double cpuS = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds;
        string json = JsonDocumentText.Of(FitAnswerJson.From(a, [], null), FitAnswerJsonContext.Default.FitAnswerJson);
        using JsonDocument answer = JsonDocument.Parse(json);
        IReadOnlyList<string> faults = PlacementChecker.Faults(text, answer.RootElement);
        double? filled = a.Bound is int bound ? (double)a.Cells.Count / bound : null;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {a.RegularCount} | {a.FreeCount} | {a.Cells.Count} | {a.Bound}{(a.Proven ? " proved" : "")} | {filled:0.00} | {a.Series} | {a.Parallel} | {a.Cells.Count / a.Series} | {a.NarrowestLink} | {a.BusbarRatio:0.00} | {cpuS:0.0} |"));
        foreach (string fault in faults.Take(3))
            Console.WriteLine($"  FAULT {fault}");
        if (a.Other is { } other)
            Console.WriteLine($"  passed over: {other.Count} places in groups of {other.Parallel}");
    }
}
