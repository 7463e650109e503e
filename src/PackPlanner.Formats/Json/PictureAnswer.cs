using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>picture --json</c> prints.</summary>
public sealed record PictureAnswer : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/picture";

    /// <summary>The job's title.</summary>
    public required string Title { get; init; }

    /// <summary>Its revision, which stands in every picture.</summary>
    public required int Revision { get; init; }

    /// <summary>Files written, a PNG and an SVG for each picture.</summary>
    public required IReadOnlyList<PictureFileJson> Files { get; init; }

    /// <summary>Pictures that could not be drawn.</summary>
    public required IReadOnlyList<PictureMissingJson> Missing { get; init; }
}

/// <summary>One file.</summary>
/// <param name="Name">The picture.</param>
/// <param name="File">Where it lies.</param>
public sealed record PictureFileJson(string Name, string File);

/// <summary>A picture that could not be drawn.</summary>
/// <param name="Name">The picture.</param>
/// <param name="Why">What it lacks.</param>
public sealed record PictureMissingJson(string Name, string Why);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PictureAnswer))]
public sealed partial class PictureAnswerContext : JsonSerializerContext;
