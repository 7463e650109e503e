using System.Text.Json;
using PackPlanner.Core;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>The places of a fit answer that a job holds.</summary>
internal static class GivenPlaces
{
    /// <summary>Reads them and holds them against a case.</summary>
    /// <param name="document">The answer of fit.</param>
    /// <param name="fitCase">The case, with the numbers that the job says.</param>
    /// <returns>The places; refused with the first rule that they break.</returns>
    internal static Outcome<FitAnswer> Of(JobDocument document, FitCase fitCase)
    {
        if (!JobDocuments.Root(document).Is(out JsonInput? input, out Refusal? why))
            return why;
        PlacedCell[] places = [.. input.Parts("cells").Select((cell, i) => Place(cell, i + 1))];
        if (input.Wrong is { } wrong)
            return wrong;
        if (GivenLayout.Of(fitCase, places, document.Source.File, out Problem? problem) is { } answer)
            return answer;
        return Refusal.Input("places-not-possible", $"{document.Source.File}, {problem!.Where}", problem.Why, problem.Remedy);
    }

    private static PlacedCell Place(JsonInput cell, int number)
    {
        PointMm centre = new(cell.NumberNeeded("x") ?? 0, cell.NumberNeeded("y") ?? 0, cell.NumberNeeded("z") ?? 0);
        PointMm size = cell.Numbers("size", 3) is [var x, var y, var z] ? new PointMm(x, y, z) : default;
        Axis? round = cell.Text("axis") is { } named ? Along(cell, named) : null;
        // Groups of a table may be called by words; those of an answer of ours are numbers, and a spare has none.
        int? group = cell.Raw("group") is { ValueKind: JsonValueKind.Number } ? cell.Whole("group", 1) : null;
        return new PlacedCell(cell.Whole("cell", 1) ?? number, centre, size, round, cell.Text("plus"), cell.Text("terminals"), group);
    }

    private static Axis? Along(JsonInput cell, string named)
    {
        Axis[] found = [.. Enum.GetValues<Axis>().Where(axis => axis.ToString().Equals(named, StringComparison.OrdinalIgnoreCase))];
        if (found.Length == 1)
            return found[0];
        cell.Refuse("axis", $"is \"{named}\"; x, y or z was expected", "Correct the axis.");
        return null;
    }
}
