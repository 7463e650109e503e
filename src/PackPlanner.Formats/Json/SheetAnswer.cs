using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>sheet --json</c> prints.</summary>
public sealed record SheetAnswer : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/sheet";

    /// <summary>The job's title.</summary>
    public required string Title { get; init; }

    /// <summary>Its revision, which stands on every block.</summary>
    public required int Revision { get; init; }

    /// <summary>The day on the sheets.</summary>
    public required string Date { get; init; }

    /// <summary>Files written, in the order of the sheets.</summary>
    public required IReadOnlyList<SheetFileJson> Files { get; init; }

    /// <summary>Sheets that could not be made.</summary>
    public required IReadOnlyList<SheetMissingJson> Missing { get; init; }
}

/// <summary>One file.</summary>
/// <param name="Name">The sheet.</param>
/// <param name="File">Where it lies.</param>
public sealed record SheetFileJson(string Name, string File);

/// <summary>A sheet that could not be made.</summary>
/// <param name="Name">The sheet.</param>
/// <param name="Why">What it lacks.</param>
public sealed record SheetMissingJson(string Name, string Why);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(SheetAnswer))]
public sealed partial class SheetAnswerContext : JsonSerializerContext;
