using System.Text.Json;
using System.Text.Json.Nodes;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.JobFiles;

/// <summary>A fit case with what the job was told besides, so that the verb fit answers of it what the job's screens do.</summary>
public static class CaseAsAsked
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    /// <summary>The text of the case; as it was read where the job has nothing to add.</summary>
    /// <param name="space">The case as the job keeps it.</param>
    /// <param name="givens">What the job was told, which wins over the case but for the weight of its cell.</param>
    /// <returns>JSON.</returns>
    public static string Text(JobDocument space, JobGivens givens)
    {
        ArgumentNullException.ThrowIfNull(space);
        ArgumentNullException.ThrowIfNull(givens);
        JsonObject? known;
        try
        {
            known = JsonNode.Parse(space.Text, null, JobDocuments.Lenient) as JsonObject;
        }
        catch (JsonException)
        {
            known = null;
        }

        if (known is null)
            return space.Text;
        string before = known.ToJsonString();
        Tell(known, "pack", "series", givens.Series);
        Tell(known, "pack", "parallel", givens.Parallel);
        Tell(known, "limits", "cellMassKg", givens.NumberOf("cellMassLimitKg"));
        Tell(known, "cell", "nominalV", givens.NominalV);
        Tell(known, "cell", "fullV", givens.FullV);
        if ((known["cell"] as JsonObject)?["massG"] is null)
            Tell(known, "cell", "massG", givens.NumberOf("cellMassKg") * 1000);
        if (givens.TickOf("vents") is { } vents)
            known["ventPath"] = vents;
        return known.ToJsonString() == before ? space.Text : known.ToJsonString(Indented);
    }

    private static void Tell(JsonObject known, string part, string key, double? value)
    {
        // What cannot be read as this part stays as it was written.
        if (value is not { } told || known[part] is not (null or JsonObject))
            return;
        if (known[part] is not JsonObject holder)
            known[part] = holder = [];
        holder[key] = JsonValue.Create(told);
    }
}
