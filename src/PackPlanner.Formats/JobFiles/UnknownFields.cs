using System.Text.Json.Nodes;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Fields of a file that this version does not know. They are written back where they stood.</summary>
/// <param name="Fields">Fields of this object.</param>
/// <param name="Inside">The same for the objects that are known, by name.</param>
internal sealed record UnknownFields(JsonObject Fields, IReadOnlyDictionary<string, UnknownFields> Inside)
{
    internal static UnknownFields None { get; } = new([], new Dictionary<string, UnknownFields>());

    private bool IsEmpty => Fields.Count == 0 && Inside.Count == 0;

    /// <summary>Compares what was read with what this version would write for it.</summary>
    /// <remarks>Lists are taken as a whole: a list that is known has no unknown items.</remarks>
    internal static UnknownFields Of(JsonObject read, JsonObject known)
    {
        JsonObject fields = [];
        Dictionary<string, UnknownFields> inside = [];
        foreach ((string name, JsonNode? value) in read)
        {
            if (!known.ContainsKey(name))
                fields[name] = value?.DeepClone();
            else if (value is JsonObject below && known[name] is JsonObject knownBelow && Of(below, knownBelow) is { IsEmpty: false } deeper)
                inside[name] = deeper;
        }

        return new UnknownFields(fields, inside);
    }

    /// <summary>Puts the fields back into what is about to be written. An object that is gone takes its unknown fields with it.</summary>
    internal void PutBack(JsonObject target)
    {
        foreach ((string name, JsonNode? value) in Fields)
        {
            if (!target.ContainsKey(name))
                target[name] = value?.DeepClone();
        }

        foreach ((string name, UnknownFields deeper) in Inside)
        {
            if (target[name] is JsonObject below)
                deeper.PutBack(below);
        }
    }

    /// <summary>What is unknown below one name.</summary>
    internal UnknownFields Below(string name) => Inside.GetValueOrDefault(name) ?? None;
}
