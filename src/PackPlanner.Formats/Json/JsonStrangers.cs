using System.Text.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Json;

/// <summary>
/// Fields of an input that nobody asked for, though a field of nearly the same name was looked for and is not there:
/// <c>wallCm</c> where <c>wallMm</c> is meant. Unknown fields are ignored, but not such ones in silence.
/// </summary>
internal sealed class JsonStrangers
{
    private readonly Dictionary<string, (JsonElement Element, HashSet<string> Asked)> objects = new(StringComparer.Ordinal);

    /// <summary>Remembers that a field of an object was looked for.</summary>
    internal void Ask(string path, JsonElement element, string name)
    {
        if (!objects.TryGetValue(path, out (JsonElement Element, HashSet<string> Asked) one))
            objects[path] = one = (element, new HashSet<string>(StringComparer.Ordinal));
        one.Asked.Add(name);
    }

    /// <summary>One sentence for each such field, in the order of the file's objects.</summary>
    internal IEnumerable<string> Sentences()
    {
        foreach ((string path, (JsonElement element, HashSet<string> asked)) in objects.OrderBy(one => one.Key, StringComparer.Ordinal))
        {
            HashSet<string> there = [.. element.EnumerateObject().Select(field => field.Name)];
            string[] missing = [.. asked.Except(there).Order(StringComparer.Ordinal)];
            foreach (string stranger in there.Except(asked).Order(StringComparer.Ordinal))
                if (missing.Length > 0 && NearestName.Of(stranger, missing) is var near && NearestName.IsNear(stranger, near))
                    yield return $"Field {(path.Length == 0 ? "" : path + ".")}{OneLine.Of(stranger)} is not known and was not read; {near} was looked for and is not there.";
        }
    }
}
