using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Everything a job file holds of the files that were added, by their names inside the job.</summary>
internal sealed class JobSources(IReadOnlyDictionary<string, object> byId)
{
    /// <summary>The tables or logs that a field of the state names.</summary>
    internal IEnumerable<T> Of<T>(JsonInput state, string field)
        where T : class
    {
        foreach (string id in state.Texts(field) ?? [])
        {
            if (byId.GetValueOrDefault(id) is T found)
                yield return found;
            else
                state.Refuse(field, $"names \"{id}\", which sources does not hold", "Take the file from a copy that is whole.");
        }
    }

    /// <summary>The document that a field of the state names; null when it names none.</summary>
    internal JobDocument? One(JsonInput state, string field)
    {
        if (state.Text(field) is not { } id)
            return null;
        if (byId.GetValueOrDefault(id) is JobDocument found)
            return found;
        state.Refuse(field, $"names \"{id}\", which sources does not hold", "Take the file from a copy that is whole.");
        return null;
    }
}
