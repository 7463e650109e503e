using System.Text.Json;

namespace PackPlanner.Tests.Misreading;

/// <summary>What an answer claims, without where it was written in the file, and what it says of how the file was read.</summary>
/// <param name="ExitCode">0 or the refusal's.</param>
/// <param name="Figures">Path to figure or word.</param>
/// <param name="Said">Every sentence on the reading, every caution and every count of rows and samples set aside; the refusal.</param>
internal sealed record AnswerFacts(int ExitCode, IReadOnlyDictionary<string, JsonElement> Figures, IReadOnlySet<string> Said)
{
    private static readonly string[] HowItWasWritten =
    [
        "file", "line", "delimiter", "decimalMark", "encoding", "headingLine", "setBy", "unit", "name", "tests", "firstLine", "layout",
        "understood", "cautions", "rowsSetAside", "rowsSetAsideCounts", "samplesSetAside", "rowsRead", "message", "where", "next",
    ];

    internal static AnswerFacts Of(int exitCode, JsonElement document)
    {
        Dictionary<string, JsonElement> figures = [];
        Collect(document, "", figures);
        HashSet<string> said = [];
        foreach (string name in new[] { "understood", "cautions", "rowsSetAsideCounts", "samplesSetAside" })
            if (document.TryGetProperty(name, out JsonElement list) && list.ValueKind == JsonValueKind.Array)
                said.UnionWith(list.EnumerateArray().Select(one => Words(name, one)));
        if (document.TryGetProperty("cells", out JsonElement cells))
            foreach (JsonElement cell in cells.EnumerateArray().Where(cell => cell.TryGetProperty("reasons", out _)))
                said.UnionWith(cell.GetProperty("reasons").EnumerateArray().Select(reason => $"{cell.GetProperty("cell").GetString()}: {reason.GetProperty("code").GetString()} {reason.GetProperty("value").GetRawText()}"));
        if (document.TryGetProperty("message", out JsonElement message))
            said.Add($"{document.GetProperty("code").GetString()}: {document.GetProperty("where").GetString()}: {message.GetString()}");
        return new AnswerFacts(exitCode, figures, said);
    }

    /// <summary>The first figure that differs by more than rounding, in words; null when the answers are the same.</summary>
    internal string? Difference(AnswerFacts other)
    {
        if (ExitCode != other.ExitCode)
            return $"exit {ExitCode} became {other.ExitCode}: {string.Join("; ", other.Said.Except(Said).Take(2))}";
        foreach (string path in Figures.Keys.Union(other.Figures.Keys).Order(StringComparer.Ordinal))
            if (!Figures.TryGetValue(path, out JsonElement one) || !other.Figures.TryGetValue(path, out JsonElement two))
                return $"{path} is in one answer only";
            else if (!Same(one, two))
                return $"{path} was {one.GetRawText()} and is {two.GetRawText()}";
        return null;
    }

    private static bool Same(JsonElement one, JsonElement two)
    {
        if (one.ValueKind != two.ValueKind)
            return false;
        if (one.ValueKind != JsonValueKind.Number)
            return one.GetRawText() == two.GetRawText();
        double a = one.GetDouble();
        double b = two.GetDouble();
        return Math.Abs(a - b) <= 1e-9 + (1e-7 * Math.Max(Math.Abs(a), Math.Abs(b)));
    }

    private static string Words(string name, JsonElement one) => name switch
    {
        "understood" => one.GetString()!,
        "cautions" => $"{one.GetProperty("code").GetString()} {one.GetProperty("where").GetString()}: {one.GetProperty("saw").GetString()}",
        "rowsSetAsideCounts" => $"{one.GetProperty("count").GetInt32()} rows: {one.GetProperty("reason").GetString()}",
        _ => $"{one.GetProperty("count").GetInt32()} samples of {one.GetProperty("column").GetString()}: {one.GetProperty("kind").GetString()}",
    };

    // Cells and groups go by their label, so that the order of rows and columns does not matter.
    private static void Collect(JsonElement value, string path, Dictionary<string, JsonElement> figures)
    {
        if (value.ValueKind == JsonValueKind.Object)
        {
            foreach (JsonProperty property in value.EnumerateObject().Where(property => !HowItWasWritten.Contains(property.Name)))
                Collect(property.Value, $"{path}.{property.Name}", figures);
        }
        else if (value.ValueKind == JsonValueKind.Array)
        {
            int at = 0;
            Dictionary<string, int> met = [];
            IEnumerable<JsonElement> all = value.EnumerateArray().Where(one => one.ValueKind != JsonValueKind.Object || !one.TryGetProperty("readAs", out JsonElement role) || role.GetString() != "not used");
            // Lists of labels come in the order of the file.
            foreach (JsonElement one in all.All(one => one.ValueKind == JsonValueKind.String) ? all.OrderBy(one => one.GetString(), StringComparer.Ordinal) : all)
                Collect(one, $"{path}[{Key(one, met, at++)}]", figures);
        }
        else
        {
            figures[path] = value.Clone();
        }
    }

    private static string Key(JsonElement one, Dictionary<string, int> met, int at)
    {
        string? key = null;
        foreach (string name in new[] { "cell", "readAs", "slot" })
            if (one.ValueKind == JsonValueKind.Object && one.TryGetProperty(name, out JsonElement label) && label.ValueKind == JsonValueKind.String)
                key ??= label.GetString();
        if (key is null)
            return at.ToString(System.Globalization.CultureInfo.InvariantCulture);
        met[key] = met.GetValueOrDefault(key) + 1;
        return $"{key} {met[key]}";
    }
}
