using System.Globalization;
using System.Text.Json;
using PackPlanner.Core.Fitting;
using PackPlanner.Formats.Json;
using PackPlanner.Tests.Core.Fitting;

namespace PackPlanner.Benchmarks;

/// <summary>
/// Cavities drawn at random, each fitted and its answer looked over by the checker of the tests: <c>dotnet run -c Release --project
/// tests/PackPlanner.Benchmarks -- fitting-random 200 1 10</c>, for so many cases from a first seed on, with so much work each.
/// </summary>
internal static class RandomCavities
{
    internal static int Run(int cases, int firstSeed, int work)
    {
        SortedDictionary<string, int> seen = new(StringComparer.Ordinal);
        int faulty = 0, refused = 0, cells = 0;
        for (int seed = firstSeed; seed < firstSeed + cases; seed++)
        {
            string text = RandomCavity.Of(seed).ToJsonString();
            using JsonDocument document = JsonDocument.Parse(text);
            if (!FitCaseJson.Read(JsonInput.Of("random", document.RootElement), []).Is(out FitCase? fitCase, out _) || FitCaseCheck.Problems(fitCase).Count > 0)
            {
                refused++;
                continue;
            }

            FitAnswer answer = LayoutSearch.Search(fitCase, new FitEffort(work), null, CancellationToken.None);
            using JsonDocument told = JsonDocument.Parse(JsonDocumentText.Of(FitAnswerJson.From(answer, [], null), FitAnswerJsonContext.Default.FitAnswerJson));
            IReadOnlyList<string> faults = PlacementChecker.Faults(text, told.RootElement);
            cells += answer.Cells.Count;
            faulty += faults.Count > 0 ? 1 : 0;
            string kind = $"{(fitCase.Cell is CellBody.Box ? "boxes" : "round")}, {(answer.Cells.Count == 0 ? "no place" : answer.Fits ? "fits" : "does not fit")}";
            seen[kind] = seen.GetValueOrDefault(kind) + 1;
            Console.WriteLine($"{seed}: {kind}, {answer.Cells.Count} places, P {answer.Parallel}, {faults.Count} faults");
            foreach (string fault in faults.Take(5))
                Console.WriteLine($"  FAULT {fault}");
            if (faults.Count > 0)
                Console.WriteLine($"  {text}");
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{cases} cases, {refused} refused as contradictory, {cells} places looked over, {faulty} answers with faults; {string.Join("; ", seen.Select(s => $"{s.Key} {s.Value}"))}"));
        return faulty == 0 ? 0 : 1;
    }
}
