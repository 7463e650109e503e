using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>An error as scripts read it.</summary>
/// <param name="Code">Stable short name of the kind of error.</param>
/// <param name="Message">What was found and what was expected.</param>
/// <param name="Where">File, line and column, or the option.</param>
/// <param name="Next">What to do.</param>
public sealed record ErrorJson(string Code, string Message, string Where, string Next)
{
    /// <summary>Name of this document's shape.</summary>
    [JsonPropertyOrder(-100)]
    public string Schema { get; } = "packplanner/error";

    /// <summary>Version of this document's shape.</summary>
    [JsonPropertyOrder(-99)]
    public int Version { get; } = 1;
}

/// <summary>Source-generated descriptions of the documents that every verb may print.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ErrorJson))]
public sealed partial class ErrorJsonContext : JsonSerializerContext;
