using System.Collections.Concurrent;
using System.Reflection;

namespace PackPlanner.Formats.Tables;

/// <summary>The one table of names that columns go by, in all languages; it is read from names.txt.</summary>
internal static class ColumnNames
{
    private static readonly (ColumnRole Role, Dimension Of, string Plain, bool OnlyWithUnit)[] Known = Load();

    private const int MostFound = 5000;
    private static readonly ConcurrentDictionary<(string Words, Dimension? Unit), IReadOnlyList<(ColumnRole Role, int Fit)>> Found = new();

    /// <summary>What a heading is most likely the name of.</summary>
    /// <param name="heading">The heading, taken apart.</param>
    /// <param name="unit">The unit it carries, which rules out names of other quantities; null when it has none.</param>
    /// <returns>The roles that its words allow with how well they fit (a whole match has 1000 added), best first.</returns>
    internal static IReadOnlyList<(ColumnRole Role, int Fit)> RolesOf(HeadingWords heading, FileUnit? unit)
    {
        // Cell 1 to cell 400 are the same words.
        (string, Dimension?) words = (heading.Words, unit?.Of);
        if (Found.TryGetValue(words, out IReadOnlyList<(ColumnRole Role, int Fit)>? found))
            return found;
        if (Found.Count > MostFound)
            Found.Clear();
        return Found[words] = Compare(heading, unit);
    }

    private static IReadOnlyList<(ColumnRole Role, int Fit)> Compare(HeadingWords heading, FileUnit? unit)
    {
        Dictionary<ColumnRole, int> fits = [];
        foreach ((ColumnRole role, Dimension of, string plain, bool onlyWithUnit) in Known)
        {
            if ((unit is not null && of != unit.Of) || (onlyWithUnit && (unit is null || heading.Joined != plain)))
                continue;
            int fit = heading.FitOf(plain, unit is not null);
            if (fit > fits.GetValueOrDefault(role))
                fits[role] = fit;
        }

        return [.. fits.Select(fit => (fit.Key, fit.Value)).OrderByDescending(fit => fit.Value).ThenBy(fit => fit.Key)];
    }

    /// <summary>The quantity of a role, none for text.</summary>
    internal static Dimension DimensionOf(ColumnRole role) => Known.FirstOrDefault(known => known.Role == role).Of;

    private static (ColumnRole Role, Dimension Of, string Plain, bool OnlyWithUnit)[] Load()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("PackPlanner.Formats.Tables.names.txt")!;
        using StreamReader reader = new(stream);
        List<(ColumnRole, Dimension, string, bool)> known = [];
        while (reader.ReadLine() is { } line)
        {
            if (line.Length == 0 || line[0] == '#')
                continue;
            string[] parts = line.Split('|', StringSplitOptions.TrimEntries);
            ColumnRole role = Enum.Parse<ColumnRole>(parts[0]);
            Dimension of = Enum.Parse<Dimension>(parts[1]);
            known.AddRange(parts[2]
                .Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Select(name => (role, of, HeadingWords.Plain(name), name.EndsWith('!')))
                .Distinct());
        }

        return [.. known];
    }
}
