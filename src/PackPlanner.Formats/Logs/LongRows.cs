using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>The rows of a long log as read: runs of one moment, which name, value, and what stands beside.</summary>
internal sealed class LongRows
{
    /// <summary>Moments of the runs as written, shape [runs].</summary>
    internal required double[] Moments { get; init; }

    /// <summary>Line of the first row of each run.</summary>
    internal required int[] Lines { get; init; }

    /// <summary>Place of the first row of each run in the columns.</summary>
    internal required int[] Starts { get; init; }

    /// <summary>How many rows each run has.</summary>
    internal required int[] Lengths { get; init; }

    /// <summary>Index into <see cref="Names"/> for each place in the columns; <see cref="LongColumns.NoName"/> for a row that is set aside.</summary>
    internal required ushort[] NameOf { get; init; }

    internal required double[] Values { get; init; }

    /// <summary>Figures of the other columns, shape [columns][places].</summary>
    internal required double[][] Beside { get; init; }

    /// <summary>Names in the order in which they came.</summary>
    internal required IReadOnlyList<string> Names { get; init; }

    /// <summary>Rows of each name.</summary>
    internal required IReadOnlyList<int> RowsOfName { get; init; }

    /// <summary>Rows that are used.</summary>
    internal int Count => RowsOfName.Sum();

    /// <summary>The log was written name by name: whenever its time falls back, other names come than before.</summary>
    internal bool NameByName()
    {
        if (!FallsBack(Moments))
            return false;
        int[] stretchOfName = new int[Names.Count];
        int stretch = 1;
        for (int run = 0; run < Moments.Length; run++)
        {
            stretch += run > 0 && Moments[run] < Moments[run - 1] ? 1 : 0;
            for (int row = Starts[run]; row < Starts[run] + Lengths[run]; row++)
            {
                if (NameOf[row] == LongColumns.NoName)
                    continue;
                ref int own = ref stretchOfName[NameOf[row]];
                if (own != 0 && own != stretch)
                    return false;
                own = stretch;
            }
        }

        return stretch > 1;
    }

    private static bool FallsBack(double[] moments)
    {
        for (int run = 1; run < moments.Length; run++)
            if (moments[run] < moments[run - 1])
                return true;
        return false;
    }

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
        NamesTogether names = NamesTogether.Of(read);
        if (names.Names.Count > LongColumns.MostNames)
            return Refusal.Input("not-a-log", source.Name, $"column {name.Name} holds more than {LongColumns.MostNames} different names", "Check which column names the cell or the signal.");
        SideBySide.ForEach(read.Length, i => names.Renumber(i, columns.NameOf.AsSpan(read[i].From, read[i].Used)), options.Stopped);
        foreach (LongPart part in read)
            counter.Take(part.Counter);
        foreach ((string once, int line) in names.Dropped)
            counter.SetAside(line, "a name that comes once and is no known cell or signal");
        counter.Used = names.RowsOfName.Sum();
        (int From, int Used)[] runs = [.. read.Select(part => (part.From, part.Runs))];
        return new LongRows
        {
            Moments = Stretches.Join(columns.RunMoments, runs),
            Lines = Stretches.Join(columns.RunLines, runs),
            Starts = Stretches.Join(columns.RunStarts, runs),
            Lengths = Stretches.Join(columns.RunLengths, runs),
            NameOf = columns.NameOf,
            Values = columns.Values,
            Beside = columns.BesideValues,
            Names = names.Names,
            RowsOfName = names.RowsOfName,
        };
    }
}
