using System.Text.Json.Nodes;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Differences between two JSON objects, and how to apply them. Source: [RFC7396].</summary>
/// <remarks>A patch cannot set null, so the objects it is used on hold none: unknown is left out.</remarks>
internal static class MergePatch
{
    /// <summary>Changes an object in place.</summary>
    internal static void Apply(JsonObject target, JsonObject patch)
    {
        foreach ((string name, JsonNode? value) in patch)
        {
            if (value is null)
            {
                target.Remove(name);
            }
            else if (value is JsonObject inner)
            {
                if (target[name] is not JsonObject below)
                    target[name] = below = [];
                Apply(below, inner);
            }
            else
            {
                target[name] = value.DeepClone();
            }
        }
    }

    /// <summary>The patch that makes one object into the other.</summary>
    /// <returns>Empty when they are equal.</returns>
    internal static JsonObject Between(JsonObject before, JsonObject after)
    {
        JsonObject patch = [];
        foreach ((string name, JsonNode? _) in before)
        {
            if (!after.ContainsKey(name))
                patch[name] = null;
        }

        foreach ((string name, JsonNode? value) in after)
        {
            if (before[name] is JsonObject was && value is JsonObject now)
            {
                JsonObject inner = Between(was, now);
                if (inner.Count > 0)
                    patch[name] = inner;
            }
            else if (!JsonNode.DeepEquals(before[name], value))
            {
                patch[name] = value!.DeepClone();
            }
        }

        return patch;
    }
}
