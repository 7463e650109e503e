using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Where groups stand, in the file.</summary>
internal static class PlacementParts
{
    internal static JsonNode? Write(Job job)
    {
        JobPlacement placement = job.Placement;
        JsonObject node = [];
        if (!placement.Turned.IsEmpty)
            node["turned"] = new JsonArray([.. placement.Turned.Select(group => (JsonNode)group)]);
        if (placement.EndsSwapped)
            node["endsSwapped"] = true;
        if (!placement.Exchanged.IsEmpty)
        {
            JsonObject exchanged = [];
            foreach ((int place, int group) in placement.Exchanged)
                exchanged[place.ToString(CultureInfo.InvariantCulture)] = group;
            node["exchanged"] = exchanged;
        }

        return node.Count == 0 ? null : node;
    }

    internal static JobPlacement Read(JsonInput state)
    {
        if (state.Part("placement") is not { } part)
            return JobPlacement.AsFitted;
        ImmutableSortedDictionary<int, int>.Builder exchanged = ImmutableSortedDictionary.CreateBuilder<int, int>();
        JsonInput? places = part.Part("exchanged");
        foreach (string place in places?.Names ?? [])
        {
            if (int.TryParse(place, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && places!.Whole(place, 1) is { } group)
                exchanged[number] = group;
            else
                places!.Refuse(place, "is not the number of a place", "Count places from 1.");
        }

        return new JobPlacement
        {
            Turned = [.. (part.Numbers("turned") ?? []).Select(group => (int)group)],
            EndsSwapped = part.Flag("endsSwapped") ?? false,
            Exchanged = exchanged.ToImmutable(),
        };
    }
}
