using CsvHelper;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Reads the rows of a log into columns of doubles. This is the loop that a season of rows goes through.</summary>
internal sealed class LogRows
{
    private readonly SourceFile _source;
    private readonly LogHead _head;
    private readonly TimeColumn _time;
    private readonly LogColumn[] _columns;
    private readonly RowCounter _counter;
    private readonly ReadOptions _options;
    private readonly int[] _fields;
    private readonly ColumnBuffer[] _figures;
    private readonly int _fewestFields;

    private LogRows(SourceFile source, LogHead head, TimeColumn time, LogColumn[] columns, RowCounter counter, ReadOptions options)
    {
        (_source, _head, _time, _columns, _counter, _options) = (source, head, time, columns, counter, options);
        _fields = [.. columns.Select(column => column.Index)];
        _figures = [.. columns.Select(_ => new ColumnBuffer())];
        _fewestFields = Fewest(head, columns);
    }

    /// <summary>Moments of the rows as written, shape [rows].</summary>
    internal double[] Moments { get; private set; } = [];

    /// <summary>Line of each row, shape [rows].</summary>
    internal int[] Lines { get; private set; } = [];

    /// <summary>Fills the columns' values.</summary>
    /// <exception cref="CsvFormatException">A line is longer than any row of a log.</exception>
    internal static LogRows Read(SourceFile source, LogHead head, TimeColumn time, LogColumn[] columns, RowCounter counter, ReadOptions options)
    {
        LogRows rows = new(source, head, time, columns, counter, options);
        rows.ReadAll();
        return rows;
    }

    /// <summary>How every log is opened: line breaks end a row, so that one open quote cannot swallow the file.</summary>
    internal static CsvReader Open(SourceFile source, LogHead head) => CsvReader.Create(source.OpenUtf8(), new CsvReaderOptions
    {
        HasHeader = false,
        Separator = head.Separator,
        DetectSeparatorHint = false,
        TrackLineNumbers = true,
        AllowLineBreaksInQuotes = false,
        FieldCountMismatch = CsvFieldCountHandling.Allow,
        FormatProvider = Figures.FormatOf(head.Mark),
        MaxRecordSize = TextTable.LongestRowBytes,
        BufferSize = 1 << 18,
    });

    private void ReadAll()
    {
        ColumnBuffer moments = new();
        List<int[]> blocks = [];
        int[] lines = [];
        int used = 0;
        byte[] heading = _head.HeadingBytes;
        using CsvReader csv = Open(_source, _head);
        while (csv.Read())
        {
            long line = csv.LineNumber;
            if (line < _head.FirstDataLine)
                continue;
            if ((used & 0xFFFF) == 0)
            {
                _options.Stopped.ThrowIfCancellationRequested();
                _options.Progress?.Report(new ReadProgress(_source.Name, used, _source.Length > 0 ? Math.Min(1, (double)csv.ByteOffset / _source.Length) : null));
                lines = new int[0x10000];
                blocks.Add(lines);
            }

            if (csv.FieldCount < _fewestFields || !_time.TryRead(csv, out double moment))
            {
                SetAside(csv, (int)line, heading);
                continue;
            }

            lines[used & 0xFFFF] = (int)line;
            moments.Add(moment);
            for (int i = 0; i < _fields.Length; i++)
            {
                if (!csv.TryParse(_fields[i], out double value))
                    value = Slowly(csv, i, (int)line);
                _figures[i].Add(value);
            }

            used++;
        }

        _counter.Used = used;
        Moments = moments.ToArray();
        Lines = new int[used];
        for (int i = 0; i < used; i += 0x10000)
            Array.Copy(blocks[i >> 16], 0, Lines, i, Math.Min(0x10000, used - i));
        for (int i = 0; i < _columns.Length; i++)
            _columns[i].Values = _figures[i].ToArray();
    }

    // What is no plain figure: nothing, thousands marks, a figure with its unit, or a word.
    private double Slowly(CsvReader csv, int i, int line)
    {
        if (csv.IsEmpty(_fields[i]))
            return double.NaN;
        string text = csv.GetString(_fields[i]).Trim();
        if (text.Length == 0)
            return double.NaN;
        if (Figures.TryRead(text, _head.Mark, out double value, out string tail))
        {
            if (tail.Length == 0)
                return value;
            if (FileUnit.Find(tail) is { } unit && (_columns[i].Unit is null || _columns[i].Unit!.Of == unit.Of))
            {
                if (_columns[i].Unit is null)
                    (_columns[i].Unit, _columns[i].SetBy) = (unit, "cells");
                return unit == _columns[i].Unit ? value : value * unit.Scale / _columns[i].Unit!.Scale;
            }
        }

        _counter.Sample(_columns[i].Name, $"\"{(text.Length > 30 ? text[..30] + "…" : text)}\" instead of a figure", line);
        return double.NaN;
    }

    private void SetAside(CsvReader csv, int line, byte[] heading)
    {
        ReadOnlySpan<byte> raw = csv.RawRecord.Trim(" \t\r"u8);
        if (raw.Trim(",;\t| "u8).IsEmpty)
            _counter.SetAside(line, "a blank row");
        else if (heading.Length > 0 && raw.SequenceEqual(heading))
            _counter.SetAside(line, "the heading again");
        else if (csv.FieldCount < _fewestFields)
            _counter.SetAside(line, "a line cut short");
        else
            _counter.SetAside(line, "no time in the row");
    }

    // A row must reach the last column of cell volts, unless rows in this file end early as a habit.
    private static int Fewest(LogHead head, LogColumn[] columns)
    {
        int last = columns.Length == 0 ? 0 : columns.Max(column => column.Index) + 1;
        int usual = head.Rows.Count(row => row.Count >= last);
        return usual * 10 >= head.Rows.Count * 9 ? last : 1;
    }
}
