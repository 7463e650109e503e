using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>picture --json</c> prints.</summary>
public sealed record PictureAnswer : WrittenFilesAnswer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/picture";
}

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PictureAnswer))]
public sealed partial class PictureAnswerContext : JsonSerializerContext;
