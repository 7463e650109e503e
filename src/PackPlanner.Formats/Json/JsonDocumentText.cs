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
            JsonSerializer.Serialize(writer, value, SchemaFirst<T>.Of(type));
        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length) + "\n";
    }

    // An override does not inherit its order, so each answer's schema would stand where its record happens to put it.
    private static class SchemaFirst<T>
    {
        private static JsonTypeInfo<T>? ordered;

        internal static JsonTypeInfo<T> Of(JsonTypeInfo<T> type) => ordered ??= (JsonTypeInfo<T>)new JsonSerializerOptions(type.Options)
        {
            TypeInfoResolver = type.OriginatingResolver!.WithAddedModifier(Order),
        }.GetTypeInfo(typeof(T));

        private static void Order(JsonTypeInfo info)
        {
            foreach (JsonPropertyInfo property in info.Properties.Where(property => info.Kind == JsonTypeInfoKind.Object && property.Name == "schema"))
                property.Order = -100;
        }
    }
}
