using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>explain --json</c> prints.</summary>
/// <param name="Code">The code asked for.</param>
/// <param name="Title">A few words.</param>
/// <param name="When">When it is raised or found.</param>
/// <param name="Why">Why it matters.</param>
/// <param name="Do">What to do.</param>
/// <param name="DoNot">What not to do; empty where nothing needs forbidding.</param>
/// <param name="Source">Keys of the source register.</param>
public sealed record ExplainAnswer(
    string Code, string Title, string When, string Why, string Do, string DoNot, string Source) : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/explain";
}

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ExplainAnswer))]
public sealed partial class ExplainAnswerContext : JsonSerializerContext;
