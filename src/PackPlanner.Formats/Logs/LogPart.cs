using CsvHelper;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Reads one part of a log straight into its place in the columns. This is the loop that a season of rows goes through.</summary>
internal sealed class LogPart(LogReading log, TextPart part, int from, int room, bool mayLearnUnits)
{
    private readonly LogColumn[] _columns = log.Columns;
    private readonly (int Count, int FirstLine)[] _blank = new (int, int)[log.Columns.Length];

    // The words of the row before and what they say: no words, no direction.
    private byte[] _words = [];
    private int _direction;

    /// <summary>First place in the columns that is this part's.</summary>
    internal int From => from;

    /// <summary>Rows used so far.</summary>
    internal int Used { get; private set; }

    /// <summary>What became of the rows of this part.</summary>
    internal RowCounter Counter { get; } = new(log.Source.Name);

    /// <summary>Fields of a column where nothing is written, and the line of the first of them.</summary>
    internal (int Count, int FirstLine) Blank(int column) => _blank[column];

    /// <summary>A field carries a unit that no heading named: the parts must be read one after the other.</summary>
    internal bool MetUnit { get; private set; }

    /// <exception cref="InvalidDataException">The file grew or shrank since its lines were counted.</exception>
    internal void Read(double[] moments, double[][] figures, int[] lines)
    {
        TimeColumn time = log.Time;
        int[] fields = log.Fields;
        int used = 0;
        int looked = 0;
        using CsvReader csv = log.Open(part);
        while (csv.Read())
        {
            int line = part.FirstLine - 1 + (int)csv.LineNumber;
            if (line < log.Head.FirstDataLine)
                continue;
            if (++looked % log.RowsBetweenLooks == 0)
                log.Looked(log.RowsBetweenLooks);
            if (csv.FieldCount < log.FewestFields || !time.TryRead(csv, out double moment))
            {
                SetAside(csv, line);
                continue;
            }

            if (used == room)
                throw new InvalidDataException("it grew while it was read");
            int at = from + used;
            moments[at] = moment;
            lines[at] = line;
            for (int i = 0; i < fields.Length; i++)
            {
                // NaN is a spelling of nothing that reads as a figure.
                if (!csv.TryParse(fields[i], out double value) || double.IsNaN(value))
                    value = Slowly(csv, i, line);
                figures[i][at] = value;
            }

            used++;
        }

        Used = used;
        log.Looked(looked % log.RowsBetweenLooks);
    }

    private double Slowly(CsvReader csv, int i, int line)
    {
        if (_columns[i].HoldsDirections)
            return Direction(csv, i);
        double value = log.Figure(csv, log.Fields[i], out string tail, out string? word);
        if (tail.Length > 0)
        {
            if (FileUnit.Find(tail) is { } unit && (_columns[i].Unit is null || _columns[i].Unit!.Of == unit.Of))
                return InUnitOfColumn(_columns[i], unit, value);
            (value, word) = (double.NaN, LogReading.NotAFigure(csv.GetString(log.Fields[i]).Trim()));
        }

        if (word is not null)
            Counter.Sample(_columns[i].Name, word, line);
        else if (double.IsNaN(value))
            _blank[i] = (_blank[i].Count + 1, _blank[i].Count == 0 ? line : _blank[i].FirstLine);
        return value;
    }

    // A state lasts for many rows, and taking words apart is dear.
    private int Direction(CsvReader csv, int i)
    {
        int field = log.Fields[i];
        ReadOnlySpan<byte> words = csv.IsEmpty(field) ? [] : csv.GetSpan(field);
        if (!words.SequenceEqual(_words))
            (_words, _direction) = (words.ToArray(), _columns[i].DirectionOf(csv.GetString(field)));
        return _direction;
    }

    private double InUnitOfColumn(LogColumn column, FileUnit unit, double value)
    {
        if (column.Unit is null)
        {
            MetUnit = true;
            if (!mayLearnUnits)
                return double.NaN;
            (column.Unit, column.SetBy) = (unit, "cells");
        }

        return unit == column.Unit ? value : (unit.Convert(value) - column.Unit.Offset) / column.Unit.Scale;
    }

    private void SetAside(CsvReader csv, int line) =>
        Counter.SetAside(line, log.NoRow(csv) ?? (csv.FieldCount < log.FewestFields ? "a line cut short" : "no time in the row"));
}
