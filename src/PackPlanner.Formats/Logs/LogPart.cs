using CsvHelper;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Reads one part of a log straight into its place in the columns. This is the loop that a season of rows goes through.</summary>
internal sealed class LogPart(LogReading log, TextPart part, int from, int room, bool mayLearnUnits)
{
    private readonly LogColumn[] _columns = log.Columns;

    /// <summary>First place in the columns that is this part's.</summary>
    internal int From => from;

    /// <summary>Rows used so far.</summary>
    internal int Used { get; private set; }

    /// <summary>What became of the rows of this part.</summary>
    internal RowCounter Counter { get; } = new(log.Source.Name);

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
                if (!csv.TryParse(fields[i], out double value))
                    value = Slowly(csv, i, line);
                figures[i][at] = value;
            }

            used++;
        }

        Used = used;
        log.Looked(looked % log.RowsBetweenLooks);
    }

    // What is no plain figure: nothing, thousands marks, a figure with its unit, or a word.
    private double Slowly(CsvReader csv, int i, int line)
    {
        if (csv.IsEmpty(log.Fields[i]))
            return double.NaN;
        string text = csv.GetString(log.Fields[i]).Trim();
        if (text.Length == 0)
            return double.NaN;
        if (Figures.TryRead(text, log.Head.Mark, out double value, out string tail))
        {
            if (tail.Length == 0)
                return value;
            if (FileUnit.Find(tail) is { } unit && (_columns[i].Unit is null || _columns[i].Unit!.Of == unit.Of))
                return InUnitOfColumn(_columns[i], unit, value);
        }

        Counter.Sample(_columns[i].Name, $"\"{(text.Length > 30 ? text[..30] + "…" : text)}\" instead of a figure", line);
        return double.NaN;
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

        return unit == column.Unit ? value : value * unit.Scale / column.Unit.Scale;
    }

    private void SetAside(CsvReader csv, int line)
    {
        ReadOnlySpan<byte> raw = csv.RawRecord.Trim(" \t\r"u8);
        byte[] heading = log.Heading;
        if (raw.Trim(",;\t| "u8).IsEmpty)
            Counter.SetAside(line, "a blank row");
        else if (heading.Length > 0 && raw.SequenceEqual(heading))
            Counter.SetAside(line, "the heading again");
        else if (csv.FieldCount < log.FewestFields)
            Counter.SetAside(line, "a line cut short");
        else
            Counter.SetAside(line, "no time in the row");
    }
}
