using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>help --json</c> prints.</summary>
/// <param name="Verbs">Verbs with their options.</param>
public sealed record HelpAnswer(IReadOnlyList<HelpVerbJson> Verbs) : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/help";
}

/// <summary>One verb.</summary>
/// <param name="Verb">Its name.</param>
/// <param name="Summary">What it does.</param>
/// <param name="Examples">Command lines.</param>
/// <param name="Options">Its own options.</param>
public sealed record HelpVerbJson(string Verb, string Summary, IReadOnlyList<string> Examples, IReadOnlyList<string> Options);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(HelpAnswer))]
public sealed partial class HelpAnswerContext : JsonSerializerContext;
