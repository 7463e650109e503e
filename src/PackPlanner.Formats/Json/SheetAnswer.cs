using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>sheet --json</c> prints.</summary>
public sealed record SheetAnswer : WrittenFilesAnswer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/sheet";

    /// <summary>The day on the sheets.</summary>
    [JsonPropertyOrder(-88)]
    public required string Date { get; init; }
}

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(SheetAnswer))]
public sealed partial class SheetAnswerContext : JsonSerializerContext;
