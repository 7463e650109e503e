using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>The rows of a long log as read: moment, which name, value, and what stands beside.</summary>
internal sealed class LongRows
{
    internal required double[] Moments { get; init; }

    /// <summary>Index into <see cref="Names"/> for each row.</summary>
    internal required int[] NameOf { get; init; }

    internal required double[] Values { get; init; }

    /// <summary>Figures of the other columns, shape [columns][rows].</summary>
    internal required double[][] Beside { get; init; }

    internal required int[] Lines { get; init; }

    /// <summary>Names in the order in which they came.</summary>
    internal required IReadOnlyList<string> Names { get; init; }

    internal static Outcome<LongRows> Read(
        SourceFile source, LogHead head, TimeColumn time, LogColumn name, LogColumn value, LogColumn[] beside, RowCounter counter, ReadOptions options)
    {
        if (!TextParts.Of(source, TextParts.MostBytes, options.PartBytes, options.Stopped).Is(out TextPart[]? parts, out Refusal? why))
            return why;
        LogReading log = new(source, head, time, [], parts, options);
        (int[] from, int[] room, int rows) = LogReading.Places(parts, head);
        long figures = (long)rows * (beside.Length + 3);
        if (figures > LogReading.MostFigures)
            return LogReading.TooManyFigures(source, figures);
        LongColumns columns = new(name.Index, value.Index, [.. beside.Select(column => column.Index)], value.Name, rows);
        LongPart[] read = [.. parts.Select((part, i) => new LongPart(log, columns, part, from[i], room[i]))];
        SideBySide.ForEach(read.Length, i => read[i].Read(), options.Stopped);
        string[] names = NamesTogether(read, columns.NameOf);
        if (names.Length > LongColumns.MostNames)
            return Refusal.Input("not-a-log", source.Name, $"column {name.Name} holds more than {LongColumns.MostNames} different names", "Check which column names the cell or the signal.");
        (int From, int Used)[] stretches = [.. read.Select(part => (part.From, part.Used))];
        foreach (LongPart part in read)
            counter.Take(part.Counter);
        counter.Used = read.Sum(part => part.Used);
        return new LongRows
        {
            Moments = Stretches.Join(columns.Moments, stretches),
            NameOf = Stretches.Join(columns.NameOf, stretches),
            Values = Stretches.Join(columns.Values, stretches),
            Beside = [.. columns.BesideValues.Select(column => Stretches.Join(column, stretches))],
            Lines = Stretches.Join(columns.Lines, stretches),
            Names = names,
        };
    }

    // Each part numbered the names as they came to it; in the file they come part by part.
    private static string[] NamesTogether(LongPart[] parts, int[] nameOf)
    {
        Dictionary<string, int> all = new(StringComparer.Ordinal);
        foreach (LongPart part in parts)
        {
            int[] ids = [.. part.Names.Select(name => all.TryGetValue(name, out int id) ? id : all[name] = all.Count)];
            if (all.Count > LongColumns.MostNames)
                break;
            bool same = Enumerable.Range(0, ids.Length).SequenceEqual(ids);
            for (int i = part.From; !same && i < part.From + part.Used; i++)
                nameOf[i] = ids[nameOf[i]];
        }

        return [.. all.OrderBy(name => name.Value).Select(name => name.Key)];
    }
}
