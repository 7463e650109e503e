using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>A cavity made by hand from typed millimetres, kept in the job as a case file would be.</summary>
internal static class TypedCase
{
    /// <summary>Reads sizes such as "310 x 190 x 95".</summary>
    /// <returns>What is wrong; null when <paramref name="mm"/> holds as many figures as wanted.</returns>
    internal static string? Sizes(string typed, IReadOnlyList<int> counts, out double[] mm)
    {
        string[] parts = typed.Replace("mm", " ", StringComparison.OrdinalIgnoreCase).Split(['x', 'X', '*', ' ', ';'], StringSplitOptions.RemoveEmptyEntries);
        mm = new double[parts.Length];
        for (int i = 0; i < parts.Length; i++)
        {
            if (!double.TryParse(parts[i].Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out mm[i]) || !double.IsFinite(mm[i]) || mm[i] < 0)
                return $"\"{parts[i]}\" is not a length in mm.";
        }

        return counts.Contains(mm.Length) ? null : $"{string.Join(" or ", counts)} figures in mm were expected, such as {string.Join(" x ", Enumerable.Repeat("70", counts[0]))}.";
    }

    /// <summary>A case of one box and one kind of cell.</summary>
    internal static JsonObject New(double[] inside, double[] cell, double[] clearances, JobGivens givens)
    {
        JsonObject body = cell.Length == 2
            ? new JsonObject { ["shape"] = "cylinder", ["diameterMm"] = cell[0], ["lengthMm"] = cell[1], ["axes"] = new JsonArray("z") }
            : new JsonObject { ["shape"] = "box", ["lengthMm"] = cell[0], ["thicknessMm"] = cell[1], ["heightMm"] = cell[2] };
        body["name"] = givens.WordOf("cellModel") ?? "cell";
        if (givens.Chemistry is { } chemistry)
            body["chemistry"] = chemistry.Name;
        JsonObject clearance = cell.Length == 2
            ? new JsonObject { ["wallMm"] = clearances[0], ["endMm"] = clearances[1], ["cellGapMm"] = clearances[2], ["layerGapMm"] = 2 * clearances[1] }
            : new JsonObject { ["wallMm"] = clearances[0], ["plateMm"] = clearances[0], ["terminalMm"] = clearances[1], ["spacerMm"] = clearances[2], ["cellGapMm"] = clearances[2] };
        JsonObject pack = new() { ["linkReachMm"] = 2.0 };
        if (givens.Series is { } series)
            pack["series"] = series;
        if (givens.Parallel is { } parallel)
            pack["parallel"] = parallel;
        return new JsonObject
        {
            ["schema"] = "packplanner-fit-case",
            ["version"] = 1,
            ["cavity"] = new JsonObject { ["parts"] = new JsonArray(BoxOf([0, 0, 0], inside)) },
            ["keepOuts"] = new JsonArray(),
            ["cell"] = body,
            ["clearance"] = clearance,
            ["pack"] = pack,
        };
    }

    /// <summary>The same case with one more box that must stay free.</summary>
    internal static JsonObject WithKeepOut(string text, double[] corner, double[] size)
    {
        JsonObject known = (JsonObject)JsonNode.Parse(text, null, new JsonDocumentOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip })!;
        if (known["keepOuts"] is not JsonArray list)
            known["keepOuts"] = list = [];
        list.Add((JsonNode)BoxOf(corner, size));
        return known;
    }

    /// <summary>The case as the job keeps it.</summary>
    internal static JobChange Change(Job job, JsonObject made, string name)
    {
        string text = made.ToJsonString(new JsonSerializerOptions { WriteIndented = true });
        JobSource source = new(job.NextSourceId, "cavity typed by hand", JobFile.FingerprintOf(Encoding.UTF8.GetBytes(text)), SourceKind.FitCase, []);
        return JobChanges.AddDocument(new JobDocument(source, text)) with { Name = name };
    }

    private static JsonObject BoxOf(double[] corner, double[] size) => new()
    {
        ["box"] = new JsonArray(corner[0], corner[1], corner[2], corner[0] + size[0], corner[1] + size[1], corner[2] + size[2]),
    };
}
