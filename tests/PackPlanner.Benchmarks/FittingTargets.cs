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

        if (only is null)
            Growth();
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

    /// <summary>The same frame drawn larger and in more layers: slope of log seconds over log places, regular nests and groups only.</summary>
    private static void Growth()
    {
        (int Cells, double Seconds)[] runs = [.. new[] { 1.0, 1.4, 2.0, 2.8, 4.0 }.Select(Larger)];
        Console.WriteLine();
        Console.WriteLine("| places, regular nests | cpu s |");
        Console.WriteLine("|---|---|");
        foreach ((int cells, double seconds) in runs)
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {cells} | {seconds:0.00} |"));
        double slope = Math.Log(runs[^1].Seconds / runs[0].Seconds) / Math.Log((double)runs[^1].Cells / runs[0].Cells);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"log-log slope {slope:0.00}"));
    }

    private static (int Cells, double Seconds) Larger(double by)
    {
        OutlinePointMm[] outline = [new(0, 0), new(420 * by, 0), new(360 * by, 210 * by), new(40 * by, 180 * by)];
        FitCase fitCase = new(
            [new NamedSolid("frame", new Solid.Prism(Axis.Y, outline, 0, 85))], [], "18650", new CellBody.Cylinder(18.6, 65.3, [Axis.Y]), 47,
            new Clearances(2, 6, 0, 0, 0.6, 0, 8), Series: 13, LinkReachMm: 2);
        LayoutSearch.Search(fitCase, FitEffort.Quick, null, CancellationToken.None);
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        FitAnswer answer = LayoutSearch.Search(fitCase, FitEffort.Quick, null, CancellationToken.None);
        return (answer.Cells.Count, (Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds);
    }
}
