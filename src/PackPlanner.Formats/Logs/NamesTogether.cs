using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>The names of all parts of a long log under one numbering.</summary>
/// <remarks>
/// Each part numbered the names as they came to it; in the file they come part by part. A name that comes once, that no
/// known name fits, and that is not one of a row of numbered names, is a spoilt row and no signal: it is dropped and told.
/// </remarks>
internal sealed class NamesTogether
{
    private readonly ushort[][] _numbers;

    private NamesTogether(ushort[][] numbers) => _numbers = numbers;

    /// <summary>In the order in which they came.</summary>
    internal required IReadOnlyList<string> Names { get; init; }

    internal required IReadOnlyList<int> RowsOfName { get; init; }

    /// <summary>Names that are none, with their line.</summary>
    internal required IReadOnlyList<(string Name, int Line)> Dropped { get; init; }

    internal static NamesTogether Of(LongPart[] parts)
    {
        Dictionary<string, int> all = new(StringComparer.Ordinal);
        List<(string Name, int Times, int FirstLine)> met = [];
        foreach ((string name, int times, int line) in parts.SelectMany(part => part.Names.All))
        {
            if (!all.TryGetValue(name, out int at))
            {
                all[name] = met.Count;
                met.Add((name, times, line));
            }
            else
            {
                met[at] = met[at] with { Times = met[at].Times + times };
            }
        }

        HashSet<string> spoilt = Spoilt(met);
        (string Name, int Times, int FirstLine)[] kept = [.. met.Where(name => !spoilt.Contains(name.Name))];
        Dictionary<string, ushort> numbers = kept.Take(LongColumns.MostNames).Select((name, i) => (name.Name, i)).ToDictionary(name => name.Name, name => (ushort)name.i, StringComparer.Ordinal);
        return new NamesTogether([.. parts.Select(part => part.Names.All.Select(name => numbers.GetValueOrDefault(name.Name, LongColumns.NoName)).ToArray())])
        {
            Names = [.. kept.Select(name => name.Name)],
            RowsOfName = [.. kept.Select(name => name.Times)],
            Dropped = [.. met.Where(name => spoilt.Contains(name.Name)).Select(name => (name.Name, name.FirstLine))],
        };
    }

    /// <summary>Gives the rows of one part the numbers of the whole file.</summary>
    internal void Renumber(int part, Span<ushort> nameOf)
    {
        ushort[] numbers = _numbers[part];
        bool same = true;
        for (int i = 0; i < numbers.Length && same; i++)
            same = numbers[i] == i;
        if (same)
            return;
        foreach (ref ushort name in nameOf)
            name = numbers[name];
    }

    private static HashSet<string> Spoilt(List<(string Name, int Times, int FirstLine)> met)
    {
        (string Name, int Times, int FirstLine)[] once = [.. met.Where(name => name.Times == 1)];
        if (once.Length == 0 || once.Length == met.Count)
            return [];
        HashSet<string> families = [.. met.Where(name => name.Times > 1).Select(name => new HeadingWords(name.Name).Family)];
        return [.. once.Select(name => name.Name).Where(name => !name.All(char.IsAsciiDigit) && new HeadingWords(name) is var words
            && !families.Contains(words.Family) && words.Unit is null && ColumnNames.RolesOf(words, null).Count == 0)];
    }
}
