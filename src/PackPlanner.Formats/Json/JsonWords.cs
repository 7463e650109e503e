using System.Text.Json;

namespace PackPlanner.Formats.Json;

/// <summary>Values and faults of a JSON file in the words of its reader.</summary>
internal static class JsonWords
{
    internal static string Shown(JsonElement value) => value.ValueKind is JsonValueKind.Number or JsonValueKind.String
        ? value.GetRawText() is { Length: <= 40 } text ? text : Kind(value)
        : Kind(value);

    internal static string Kind(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Array => "a list",
        JsonValueKind.Object => "an object",
        JsonValueKind.String => "text",
        JsonValueKind.Number => "a number",
        JsonValueKind.True or JsonValueKind.False => "true or false",
        _ => "null",
    };

    // The parser's message names positions of its own; the first sentence is what a person needs.
    internal static string Cause(JsonException fault) => fault.Message.Split(". ")[0].TrimEnd('.');

    internal static string Range(double? least, double? most) => (least, most) switch
    {
        ({ } low, { } high) => $"from {low} to {high}",
        ({ } low, null) => $"at least {low}",
        _ => $"at most {most}",
    };
}
