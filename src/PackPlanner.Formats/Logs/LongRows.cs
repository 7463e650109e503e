using System.Text;
using CsvHelper;
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

    internal static LongRows Read(
        SourceFile source, LogHead head, TimeColumn time, LogColumn name, LogColumn value, LogColumn[] beside, RowCounter counter, ReadOptions options)
    {
        Dictionary<string, int> known = new(StringComparer.Ordinal);
        Dictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> lookup = known.GetAlternateLookup<ReadOnlySpan<char>>();
        List<string> names = [];
        ColumnBuffer moments = new();
        ColumnBuffer values = new();
        ColumnBuffer[] others = [.. beside.Select(_ => new ColumnBuffer())];
        List<int> nameOf = [];
        List<int> lines = [];
        byte[] heading = head.HeadingBytes;
        Span<char> letters = stackalloc char[256];
        using CsvReader csv = LogRows.Open(source, head);
        while (csv.Read())
        {
            long line = csv.LineNumber;
            if (line < head.FirstDataLine)
                continue;
            if ((lines.Count & 0xFFFF) == 0)
            {
                options.Stopped.ThrowIfCancellationRequested();
                options.Progress?.Report(new ReadProgress(source.Name, lines.Count, source.Length > 0 ? Math.Min(1, (double)csv.ByteOffset / source.Length) : null));
            }

            if (WhyNot(csv, time, name, heading, out double moment) is { } reason)
            {
                counter.SetAside((int)line, reason);
                continue;
            }

            ReadOnlySpan<byte> entry = csv.GetSpan(name.Index).Trim(" \t"u8);
            ReadOnlySpan<char> text = letters[..Encoding.UTF8.GetChars(entry[..Math.Min(entry.Length, 80)], letters)];
            if (!lookup.TryGetValue(text, out int id))
            {
                id = names.Count;
                names.Add(text.ToString());
                lookup[text] = id;
            }

            moments.Add(moment);
            nameOf.Add(id);
            lines.Add((int)line);
            values.Add(Figure(csv, value, head, counter, (int)line));
            for (int i = 0; i < others.Length; i++)
                others[i].Add(csv.TryParse(beside[i].Index, out double figure) ? figure : double.NaN);
        }

        counter.Used = lines.Count;
        return new LongRows
        {
            Moments = moments.ToArray(),
            NameOf = [.. nameOf],
            Values = values.ToArray(),
            Beside = [.. others.Select(column => column.ToArray())],
            Lines = [.. lines],
            Names = names,
        };
    }

    private static string? WhyNot(CsvReader csv, TimeColumn time, LogColumn name, byte[] heading, out double moment)
    {
        moment = 0;
        if (csv.RawRecord.Trim(",;\t| \r"u8).IsEmpty)
            return "a blank row";
        if (heading.Length > 0 && csv.RawRecord.Trim(" \t\r"u8).SequenceEqual(heading))
            return "the heading again";
        if (!time.TryRead(csv, out moment))
            return "no time in the row";
        return csv.IsEmpty(name.Index) ? "no cell or signal named in the row" : null;
    }

    private static double Figure(CsvReader csv, LogColumn value, LogHead head, RowCounter counter, int line)
    {
        if (csv.TryParse(value.Index, out double figure))
            return figure;
        if (csv.IsEmpty(value.Index))
            return double.NaN;
        string text = csv.GetString(value.Index).Trim();
        if (Figures.TryRead(text, head.Mark, out figure, out _))
            return figure;
        counter.Sample(value.Name, $"\"{(text.Length > 30 ? text[..30] + "…" : text)}\" instead of a figure", line);
        return double.NaN;
    }
}
