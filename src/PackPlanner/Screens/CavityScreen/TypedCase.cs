using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>A cavity made by hand from typed millimetres, kept in the job as a case file would be.</summary>
internal static class TypedCase
{
    private const double MmPerInch = 25.4;

    private static readonly JsonDocumentOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    /// <summary>Reads lengths such as "310 x 190 x 95", or in inches where "in" stands at the end.</summary>
    /// <returns>What is wrong, with an example of what is right; null when <paramref name="mm"/> holds as many figures as wanted.</returns>
    internal static string? Sizes(string typed, IReadOnlyList<int> counts, out double[] mm, bool mayBeNegative = false, string? example = null)
    {
        string text = typed.Trim();
        bool inches = text.EndsWith("in", StringComparison.OrdinalIgnoreCase) || text.EndsWith('"');
        text = text.TrimEnd('"', 'i', 'n', 'I', 'N').Replace("mm", " ", StringComparison.OrdinalIgnoreCase);
        string[] parts = text.Split(['x', 'X', '*', ' ', ';'], StringSplitOptions.RemoveEmptyEntries);
        mm = new double[parts.Length];
        for (int i = 0; i < parts.Length; i++)
        {
            if (!Length(parts[i].Replace(',', '.'), inches, out mm[i]))
                return $"\"{parts[i]}\" is not a length in mm.";
            if (mm[i] < 0 && !mayBeNegative)
                return $"{parts[i]} is below zero; a size is not.";
        }

        return counts.Contains(mm.Length) ? null : $"{string.Join(" or ", counts)} figures in mm were expected, such as {example ?? string.Join(" x ", Enumerable.Repeat("70", counts[0]))}.";
    }

    /// <summary>Reads the corners of an outline: "0,0 420,0 420,150", or with ; between the corners.</summary>
    /// <returns>What is wrong; null when <paramref name="corners"/> holds three or more.</returns>
    internal static string? Corners(string typed, out double[][] corners)
    {
        bool inches = typed.TrimEnd().EndsWith("in", StringComparison.OrdinalIgnoreCase);
        string text = typed.Trim().TrimEnd('i', 'n', 'I', 'N');
        bool apart = text.Contains(';');
        string[] pairs = text.Split(apart ? ';' : ' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        corners = new double[pairs.Length][];
        for (int i = 0; i < pairs.Length; i++)
        {
            string[] pair = pairs[i].Split(apart ? [' ', 'x'] : [','], StringSplitOptions.RemoveEmptyEntries);
            corners[i] = new double[2];
            if (pair.Length != 2 || !Length(pair[0].Replace(',', '.'), inches, out corners[i][0]) || !Length(pair[1].Replace(',', '.'), inches, out corners[i][1]))
                return $"\"{pairs[i]}\" is not a corner: write each as 120,40, or with decimals as 120.5,40.";
        }

        return corners.Length >= 3 ? null : $"An outline has three corners or more; so far {corners.Length}.";
    }

    /// <summary>A case of one part of the cavity and one kind of cell.</summary>
    internal static JsonObject New(JsonObject part, double[] cell, double[] clearances, JobGivens givens)
    {
        JsonObject body = Cell(cell);
        body["name"] = givens.WordOf("cellModel") ?? "cell";
        if (givens.Chemistry is { } chemistry)
            body["chemistry"] = chemistry.Name;
        JsonObject pack = new() { ["linkReachMm"] = 2.0 };
        if (givens.Series is { } series)
            pack["series"] = series;
        if (givens.Parallel is { } parallel)
            pack["parallel"] = parallel;
        return new JsonObject
        {
            ["schema"] = "packplanner-fit-case",
            ["version"] = 1,
            ["cavity"] = new JsonObject { ["parts"] = new JsonArray(part) },
            ["keepOuts"] = new JsonArray(),
            ["cell"] = body,
            ["clearance"] = Clearance(clearances, round: cell.Length == 2),
            ["pack"] = pack,
        };
    }

    /// <summary>The body of a cell from two figures, round, or three, flat.</summary>
    internal static JsonObject Cell(double[] mm) => mm.Length == 2
        ? new JsonObject { ["shape"] = "cylinder", ["diameterMm"] = mm[0], ["lengthMm"] = mm[1], ["axes"] = new JsonArray("z") }
        : new JsonObject { ["shape"] = "box", ["lengthMm"] = mm[0], ["thicknessMm"] = mm[1], ["heightMm"] = mm[2] };

    /// <summary>Clearances from three figures: to the walls, at ends or terminals, between cells.</summary>
    internal static JsonObject Clearance(double[] mm, bool round) => round
        ? new JsonObject { ["wallMm"] = mm[0], ["endMm"] = mm[1], ["cellGapMm"] = mm[2], ["layerGapMm"] = 2 * mm[1] }
        : new JsonObject { ["wallMm"] = mm[0], ["plateMm"] = mm[0], ["terminalMm"] = mm[1], ["spacerMm"] = mm[2], ["cellGapMm"] = mm[2] };

    /// <summary>The same for a case that has clearances already: what hangs on a figure that stays as it was, such as the gap between layers, stays too.</summary>
    internal static JsonObject Clearance(double[] mm, bool round, JsonObject? known)
    {
        JsonObject made = Clearance(mm, round);
        double[]? before = Clearances(known, round);
        foreach ((string key, JsonNode? value) in known ?? [])
        {
            int of = Array.FindIndex(OfFigure, keys => keys.Contains(key));
            if (of < 0 || before?[of] == mm[of])
                made[key] = value?.DeepClone();
        }

        return made;
    }

    // Which fields hang on the first, second and third figure as typed.
    private static readonly string[][] OfFigure = [["wallMm", "plateMm"], ["endMm", "terminalMm", "layerGapMm"], ["spacerMm", "cellGapMm"]];

    /// <summary>The three figures that are typed for clearances; null without any.</summary>
    internal static double[]? Clearances(JsonObject? known, bool round) => known is null ? null : round
        ? [Mm(known, "wallMm"), Mm(known, "endMm"), Mm(known, "cellGapMm")]
        : [Mm(known, "wallMm"), Mm(known, "terminalMm"), Mm(known, "spacerMm")];

    /// <summary>The figures that are typed for a cell, two for a round one; null without any.</summary>
    internal static double[]? CellSizes(JsonObject? known) => known is null ? null : known.ContainsKey("diameterMm")
        ? [Mm(known, "diameterMm"), Mm(known, "lengthMm")]
        : [Mm(known, "lengthMm"), Mm(known, "thicknessMm"), Mm(known, "heightMm")];

    /// <summary>A box by its lower left front corner and its size.</summary>
    internal static JsonObject Box(double[] corner, double[] size) => new()
    {
        ["box"] = new JsonArray(corner[0], corner[1], corner[2], corner[0] + size[0], corner[1] + size[1], corner[2] + size[2]),
    };

    /// <summary>An outline drawn out at right angles to its plane.</summary>
    internal static JsonObject Outline(string plane, double[][] corners, double from, double to) => new()
    {
        ["prism"] = new JsonObject
        {
            ["plane"] = plane,
            ["outline"] = new JsonArray([.. corners.Select(corner => (JsonNode)new JsonArray(corner[0], corner[1]))]),
            ["from"] = from,
            ["to"] = to,
        },
    };

    /// <summary>A round bar between two points.</summary>
    internal static JsonObject Tube(double[] from, double[] to, double diameter) => new()
    {
        ["tube"] = new JsonObject { ["from"] = Numbers(from), ["to"] = Numbers(to), ["diameterMm"] = diameter },
    };

    internal static JsonArray Numbers(double[] mm) => [.. mm.Select(value => (JsonNode)value)];

    /// <summary>The case of a job as it can be changed; null without one.</summary>
    internal static JsonObject? Of(Job job)
    {
        try
        {
            return job.FitCase is { } document ? JsonNode.Parse(document.Text, null, Lenient) as JsonObject : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>Reads a case as it would be read from a file.</summary>
    internal static Outcome<FitCase> Read(Job job, JsonObject made) => JobFit.Case(job with { FitCase = Document(job, made) });

    /// <summary>The case as the job keeps it.</summary>
    internal static JobChange Change(Job job, JsonObject made, string name) => JobChanges.AddDocument(Document(job, made)) with { Name = name };

    private static JobDocument Document(Job job, JsonObject made)
    {
        string text = made.ToJsonString(new JsonSerializerOptions { WriteIndented = true });
        JobSource source = new(job.NextSourceId, "cavity typed by hand", JobFile.FingerprintOf(Encoding.UTF8.GetBytes(text)), SourceKind.FitCase, []);
        return new JobDocument(source, text);
    }

    private static double Mm(JsonObject node, string key) => CasePart.Number(node[key]) ?? 0;

    private static bool Length(string text, bool inches, out double mm)
    {
        bool read = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out mm) && double.IsFinite(mm);
        if (inches)
            mm = Math.Round(mm * MmPerInch, 3);
        return read;
    }
}
