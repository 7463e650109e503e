using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;

namespace PackPlanner.Formats.Json;

/// <summary>Writes one JSON document the same way each time.</summary>
public static class JsonDocumentText
{
    // All scripts are written as themselves; control characters and what HTML could run stay escaped.
    internal static readonly JsonWriterOptions Options = new()
    {
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        Indented = true,
        NewLine = "\n",
    };

    /// <summary>Writes a value as indented JSON, ending in a line feed.</summary>
    /// <typeparam name="T">The record to write.</typeparam>
    /// <param name="value">The record.</param>
    /// <param name="type">Its source-generated description.</param>
    /// <returns>The document.</returns>
    public static string Of<T>(T value, JsonTypeInfo<T> type)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter writer = new(bytes, Options))
            JsonSerializer.Serialize(writer, value, type);
        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length) + "\n";
    }
}
