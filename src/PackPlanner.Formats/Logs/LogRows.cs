using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>The rows of a log as columns of doubles.</summary>
/// <param name="Moments">Moments of the rows as written, shape [rows].</param>
/// <param name="Lines">Line of each row, shape [rows].</param>
internal sealed record LogRows(double[] Moments, int[] Lines)
{
    private const int ManyColumns = 1000;

    /// <summary>Fills the columns' values.</summary>
    /// <exception cref="CsvHelper.CsvFormatException">A line is longer than any row of a log.</exception>
    /// <exception cref="InvalidDataException">The file changed while it was read.</exception>
    internal static Outcome<LogRows> Read(SourceFile source, LogHead head, TimeColumn time, LogColumn[] columns, RowCounter counter, ReadOptions options)
    {
        if (!TextParts.Of(source, TextParts.MostBytes, options.PartBytes, options.Stopped).Is(out TextPart[]? parts, out Refusal? why))
            return why;
        long fields = parts.Sum(part => (long)part.Lines) * (columns.Length + 2);
        if (fields > LogReading.MostFigures)
            return LogReading.TooManyFigures(source, fields);
        LogReading log = new(source, head, time, columns, parts, options);
        // What thousands of headings left behind goes before room is made for their figures.
        if (columns.Length > ManyColumns)
            GC.Collect();
        (int[] from, int[] room, int rows) = LogReading.Places(parts, head);
        double[] moments = LargeArray.Of<double>(rows);
        int[] lines = LargeArray.Of<int>(rows);
        double[][] figures = [.. columns.Select(_ => LargeArray.Of<double>(rows))];
        LogPart[] read = [.. parts.Select((part, i) => new LogPart(log, part, from[i], room[i], mayLearnUnits: false))];
        SideBySide.ForEach(read.Length, i => read[i].Read(moments, figures, lines), options.Stopped);
        if (Array.Exists(read, part => part.MetUnit))
        {
            // A unit beside a figure holds for the whole column, so the parts are read again one after the other.
            read = [.. parts.Select((part, i) => new LogPart(log, part, from[i], room[i], mayLearnUnits: true))];
            foreach (LogPart part in read)
                part.Read(moments, figures, lines);
        }

        (int From, int Used)[] stretches = [.. read.Select(part => (part.From, part.Used))];
        foreach (LogPart part in read)
            counter.Take(part.Counter);
        counter.Used = read.Sum(part => part.Used);
        CountBlanks(read, columns, counter);
        for (int i = 0; i < columns.Length; i++)
            (columns[i].Values, figures[i]) = (Stretches.Join(figures[i], stretches), []);
        return new LogRows(Stretches.Join(moments, stretches), Stretches.Join(lines, stretches));
    }

    // A column that is blank from end to end lost nothing: it was never filled.
    private static void CountBlanks(LogPart[] read, LogColumn[] columns, RowCounter counter)
    {
        for (int i = 0; i < columns.Length; i++)
        {
            (int Count, int FirstLine)[] blank = [.. read.Select(part => part.Blank(i)).Where(part => part.Count > 0)];
            int count = blank.Sum(part => part.Count);
            if (count > 0 && count < counter.Used)
                counter.Sample(columns[i].Name, "blank", blank[0].FirstLine, count);
        }
    }
}
