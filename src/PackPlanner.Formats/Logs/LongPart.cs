using System.Runtime.CompilerServices;
using CsvHelper;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Reads one part of a long log straight into its place in the columns.</summary>
internal sealed class LongPart(LogReading log, LongColumns columns, TextPart part, int from, int room)
{
    // Longer than any stamp; a longer one is read anew each time.
    private readonly byte[] _stamp = new byte[64];
    private int _stampLength = -1;

    internal int From => from;

    internal int Used { get; private set; }

    /// <summary>Runs of rows with one stamp.</summary>
    internal int Runs { get; private set; }

    internal RowCounter Counter { get; } = new(log.Source.Name);

    /// <summary>The names that came in this part.</summary>
    internal LongNames Names { get; } = new();

    /// <exception cref="InvalidDataException">The file grew since its lines were counted.</exception>
    internal void Read()
    {
        int used = 0;
        int run = from - 1;
        int looked = 0;
        using CsvReader csv = log.Open(part);
        while (csv.Read())
        {
            int line = part.FirstLine - 1 + (int)csv.LineNumber;
            if (line < log.Head.FirstDataLine)
                continue;
            if (++looked % log.RowsBetweenLooks == 0)
                log.Looked(log.RowsBetweenLooks);
            double moment = 0;
            bool sameStamp = IsSameStamp(csv);
            if ((!sameStamp && !log.Time.TryRead(csv, out moment)) || csv.IsEmpty(columns.Name))
            {
                Counter.SetAside(line, WhyNot(csv));
                continue;
            }

            if (used == room)
                throw new InvalidDataException("it grew while it was read");
            int at = from + used++;
            if (!sameStamp)
            {
                RememberStamp(csv);
                if (run < from || columns.RunMoments[run] != moment)
                    Begin(++run, moment, line, at);
            }

            columns.RunLengths[run]++;
            int name = Names.NumberOf(csv.GetSpan(columns.Name), line);
            if (name > LongColumns.MostNames)
                break;
            columns.NameOf[at] = (ushort)name;
            columns.Values[at] = csv.TryParse(columns.Value, out double figure) && !double.IsNaN(figure) ? figure : Slowly(csv, line);
            for (int i = 0; i < columns.Beside.Length; i++)
                columns.BesideValues[i][at] = csv.TryParse(columns.Beside[i], out double other) ? other : double.NaN;
        }

        (Used, Runs) = (used, run - from + 1);
        log.Looked(looked % log.RowsBetweenLooks);
    }

    private void Begin(int run, double moment, int line, int at)
    {
        columns.RunMoments[run] = moment;
        columns.RunLines[run] = line;
        columns.RunStarts[run] = at;
        columns.RunLengths[run] = 0;
    }

    // Most rows of a long log have the stamp of the row before, and comparing it is cheaper than reading it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool IsSameStamp(CsvReader csv) =>
        _stampLength > 0 && csv.FieldCount > log.Time.Column.Index && csv.GetSpan(log.Time.Column.Index).SequenceEqual(_stamp.AsSpan(0, _stampLength));

    private void RememberStamp(CsvReader csv)
    {
        ReadOnlySpan<byte> stamp = csv.GetSpan(log.Time.Column.Index);
        _stampLength = log.Time.Clock is null && stamp.Length <= _stamp.Length ? stamp.Length : -1;
        if (_stampLength > 0)
            stamp.CopyTo(_stamp);
    }

    private string WhyNot(CsvReader csv) =>
        log.NoRow(csv) ?? (log.Time.TryRead(csv, out _) ? "no cell or signal named in the row" : "no time in the row");

    private double Slowly(CsvReader csv, int line)
    {
        double figure = log.Figure(csv, columns.Value, out _, out string? word);
        if (word is not null)
            Counter.Sample(columns.ValueName, word, line);
        else if (double.IsNaN(figure))
            Counter.Sample(columns.ValueName, "blank", line);
        return figure;
    }
}
