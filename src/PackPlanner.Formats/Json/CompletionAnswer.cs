using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>completion --json</c> prints.</summary>
/// <param name="Shell">bash, zsh, fish or pwsh.</param>
/// <param name="Script">The script to load.</param>
public sealed record CompletionAnswer(string Shell, string Script) : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/completion";
}

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(CompletionAnswer))]
public sealed partial class CompletionAnswerContext : JsonSerializerContext;
