using System.Text;
using System.Text.Json;

namespace PackPlanner.Formats.Words;

/// <summary>One fact a line, for --plain: the path of each value in the JSON answer, then the value.</summary>
public static class PlainFacts
{
    /// <summary>Flattens a JSON document.</summary>
    /// <param name="json">The answer as it would be printed with --json.</param>
    /// <param name="usUnits">Pounds, inches, miles and degrees Fahrenheit where the name states a metric unit; the name then states the other.</param>
    /// <returns>Lines such as <c>groups.1.capacityAh 39.276</c>; unknown is <c>-</c>.</returns>
    public static string Of(string json, bool usUnits = false)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        StringBuilder text = new();
        Write(document.RootElement, "", (path, value) =>
        {
            (string name, string says) = usUnits ? UsUnits.Fact(path, value) : (path, value);
            text.Append(name).Append(' ').Append(says).Append('\n');
        });
        return text.ToString();
    }

    private static void Write(JsonElement element, string path, Action<string, string> line)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (JsonProperty property in element.EnumerateObject())
                    Write(property.Value, path.Length == 0 ? property.Name : $"{path}.{property.Name}", line);
                break;
            case JsonValueKind.Array when element.EnumerateArray().All(item => item.ValueKind is not (JsonValueKind.Object or JsonValueKind.Array)):
                line(path, string.Join(' ', element.EnumerateArray().Select(Value)));
                break;
            case JsonValueKind.Array:
                int number = 1;
                foreach (JsonElement item in element.EnumerateArray())
                    Write(item, $"{path}.{number++}", line);
                break;
            default:
                line(path, Value(element));
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
