using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using System.Xml.Linq;
using Json.Schema;
using PackPlanner.Formats.Json;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Golden;

/// <summary>The JSON Schema of every document that the command line prints, made from the records that it is written from.</summary>
internal static class AnswerSchemas
{
    private static readonly Dictionary<string, string> Comments = ReadComments();

    private static readonly Dictionary<string, JsonSchema> Kept = ReadKept();

    /// <summary>Name of each document and its schema as text: <c>match</c>, <c>error</c> and so on.</summary>
    internal static IEnumerable<(string Name, string Text)> All()
    {
        foreach (Type type in typeof(Answer).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(JsonSerializerContext))).OrderBy(type => type.Name, StringComparer.Ordinal))
        {
            JsonSerializerContext context = (JsonSerializerContext)type.GetProperty("Default")!.GetValue(null)!;
            foreach (Type root in type.GetCustomAttributesData()
                .Where(attribute => attribute.AttributeType == typeof(JsonSerializableAttribute))
                .Select(attribute => (Type)attribute.ConstructorArguments[0].Value!))
                yield return Of(context.GetTypeInfo(root)!);
        }
    }

    /// <summary>Where the schema of a document is kept.</summary>
    internal static string FileOf(string name) => Repository.At("docs", "schema", $"{name}.json");

    /// <summary>What a printed document has that its schema does not allow, or lacks; empty when it is as documented.</summary>
    internal static IReadOnlyList<string> Faults(JsonElement document)
    {
        string? named = document.ValueKind == JsonValueKind.Object && document.TryGetProperty("schema", out JsonElement schema) ? schema.GetString() : null;
        return named is null || !named.StartsWith("packplanner/", StringComparison.Ordinal)
            ? [$"no schema is kept for a document that calls itself {named ?? "nothing"}"]
            : Faults(document, named["packplanner/".Length..]);
    }

    /// <summary>What a document has that the schema of this name does not allow, or lacks.</summary>
    internal static IReadOnlyList<string> Faults(JsonElement document, string name)
    {
        if (!Kept.TryGetValue(name, out JsonSchema? kept))
            return [$"docs/schema has no {name}.json"];
        EvaluationResults results = kept.Evaluate(document, new EvaluationOptions { OutputFormat = OutputFormat.Flag });
        if (results.IsValid)
            return [];
        results = kept.Evaluate(document, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return [.. (results.Details ?? []).Where(detail => detail.Errors is not null)
            .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))];
    }

    private static (string Name, string Text) Of(JsonTypeInfo root)
    {
        JsonObject schema = root.GetJsonSchemaAsNode(new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Described }).AsObject();
        string name = NameOf(root.Type);
        JsonObject document = new() { ["$schema"] = "https://json-schema.org/draft/2020-12/schema", ["title"] = $"packplanner/{name}" };
        foreach ((string key, JsonNode? value) in schema.ToArray())
        {
            schema.Remove(key);
            document[key] = value;
        }

        document["properties"]!["schema"] = new JsonObject { ["const"] = $"packplanner/{name}" };
        return (name, document.ToJsonString(new JsonSerializerOptions { WriteIndented = true, IndentSize = 1, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }) + "\n");
    }

    private static string NameOf(Type type) => type.Name.Replace("AnswerJson", "", StringComparison.Ordinal)
        .Replace("Answer", "", StringComparison.Ordinal).Replace("Json", "", StringComparison.Ordinal).ToLowerInvariant();

    // Every key is always there, but for those that are left out when they are unknown.
    private static JsonNode Described(JsonSchemaExporterContext at, JsonNode node)
    {
        if (node is not JsonObject schema)
            return node;
        if (at.TypeInfo.Kind == JsonTypeInfoKind.Object && schema.ContainsKey("properties"))
        {
            schema["required"] = new JsonArray([.. at.TypeInfo.Properties.Where(property => property.Get is not null && property.ShouldSerialize is null && schema["properties"]!.AsObject().ContainsKey(property.Name))
                .Select(property => (JsonNode)property.Name)]);
            schema["additionalProperties"] = false;
        }

        if (at.PropertyInfo is { } named && CommentOf(named) is { Length: > 0 } comment)
            schema.Insert(0, "description", comment);
        return schema;
    }

    private static string? CommentOf(JsonPropertyInfo property)
    {
        for (Type? type = property.DeclaringType; type is not null; type = type.BaseType)
        {
            PropertyInfo? member = type.GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.DeclaredOnly)
                .FirstOrDefault(one => JsonNamingPolicy.CamelCase.ConvertName(one.Name) == property.Name || one.GetCustomAttribute<JsonPropertyNameAttribute>()?.Name == property.Name);
            if (member is null)
                continue;
            return Comments.GetValueOrDefault($"P:{type.FullName}.{member.Name}") ?? Comments.GetValueOrDefault($"{type.FullName} {member.Name}");
        }

        return null;
    }

    private static Dictionary<string, string> ReadComments()
    {
        Dictionary<string, string> comments = [];
        foreach (XElement member in XDocument.Load(Path.ChangeExtension(typeof(Answer).Assembly.Location, "xml")).Descendants("member"))
        {
            string name = member.Attribute("name")!.Value;
            if (member.Element("summary") is { } summary)
                comments[name] = Words(summary);
            foreach (XElement parameter in name.StartsWith("T:", StringComparison.Ordinal) ? member.Elements("param") : [])
                comments[$"{name[2..]} {parameter.Attribute("name")!.Value}"] = Words(parameter);
        }

        return comments;
    }

    private static string Words(XElement element) => string.Join(' ', string.Concat(element.DescendantNodes()
        .Select(node => node switch
        {
            XText text => text.Value,
            XElement { Name.LocalName: "see" or "paramref" } reference => (reference.Attribute("cref") ?? reference.Attribute("name"))?.Value.Split('.', ':')[^1],
            _ => "",
        })).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static Dictionary<string, JsonSchema> ReadKept() =>
        Directory.Exists(Repository.At("docs", "schema"))
            ? Directory.GetFiles(Repository.At("docs", "schema"), "*.json").ToDictionary(file => Path.GetFileNameWithoutExtension(file), file => JsonSchema.FromText(File.ReadAllText(file)))
            : [];
}
