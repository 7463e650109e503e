using System.Text;
using System.Text.Json;

namespace PackPlanner.Formats.Words;

/// <summary>One fact a line, for --plain: the path of each value in the JSON answer, then the value.</summary>
public static class PlainFacts
{
    /// <summary>Flattens a JSON document.</summary>
    /// <param name="json">The answer as it would be printed with --json.</param>
    /// <returns>Lines such as <c>groups.1.capacityAh 39.276</c>; unknown is <c>-</c>.</returns>
    public static string Of(string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        StringBuilder text = new();
        Write(document.RootElement, "", text);
        return text.ToString();
    }

    private static void Write(JsonElement element, string path, StringBuilder text)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (JsonProperty property in element.EnumerateObject())
                    Write(property.Value, path.Length == 0 ? property.Name : $"{path}.{property.Name}", text);
                break;
            case JsonValueKind.Array when element.EnumerateArray().All(item => item.ValueKind is not (JsonValueKind.Object or JsonValueKind.Array)):
                text.Append(path).Append(' ').AppendJoin(' ', element.EnumerateArray().Select(Value)).Append('\n');
                break;
            case JsonValueKind.Array:
                int number = 1;
                foreach (JsonElement item in element.EnumerateArray())
                    Write(item, $"{path}.{number++}", text);
                break;
            default:
                text.Append(path).Append(' ').Append(Value(element)).Append('\n');
                break;
        }
    }

    private static string Value(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Null => "-",
        JsonValueKind.String => OneLine.Of(element.GetString()!),
        _ => element.GetRawText(),
    };
}
