using System.Text.Json.Serialization;
using PackPlanner.Core.Sizing;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>size --json</c> prints.</summary>
public sealed record SizeAnswer : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/size";

    /// <summary>The proposed choice; null when no S serves.</summary>
    public required SizeDesignJson? Design { get; init; }

    /// <summary>Choices that no other beats, the proposed one first.</summary>
    public required IReadOnlyList<SizeDesignJson> Options { get; init; }

    /// <summary>Which two limits contradict each other; empty when there is a design.</summary>
    public required IReadOnlyList<SizingReason> Reasons { get; init; }
}

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(SizeAnswer))]
public sealed partial class SizeAnswerContext : JsonSerializerContext;
