using System.Text;
using CsvHelper;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Reads one part of a long log straight into its place in the columns.</summary>
internal sealed class LongPart(LogReading log, LongColumns columns, TextPart part, int from, int room)
{
    private const int LongestName = 80;
    private readonly List<byte[]> _names = [];
    private readonly Dictionary<string, int> _known = new(StringComparer.Ordinal);
    private readonly List<int> _after = [];

    internal int From => from;

    internal int Used { get; private set; }

    internal RowCounter Counter { get; } = new(log.Source.Name);

    /// <summary>Names in the order in which they came in this part.</summary>
    internal IEnumerable<string> Names => _known.OrderBy(name => name.Value).Select(name => name.Key);

    /// <exception cref="InvalidDataException">The file grew since its lines were counted.</exception>
    internal void Read()
    {
        int used = 0;
        int looked = 0;
        int last = -1;
        using CsvReader csv = log.Open(part);
        while (csv.Read())
        {
            int line = part.FirstLine - 1 + (int)csv.LineNumber;
            if (line < log.Head.FirstDataLine)
                continue;
            if (++looked % log.RowsBetweenLooks == 0)
                log.Looked(log.RowsBetweenLooks);
            if (!log.Time.TryRead(csv, out double moment) || csv.IsEmpty(columns.Name))
            {
                Counter.SetAside(line, WhyNot(csv));
                continue;
            }

            if (used == room)
                throw new InvalidDataException("it grew while it was read");
            int at = from + used++;
            last = NameOf(csv.GetSpan(columns.Name), last);
            if (last > LongColumns.MostNames)
                break;
            columns.Moments[at] = moment;
            columns.Lines[at] = line;
            columns.NameOf[at] = last;
            columns.Values[at] = csv.TryParse(columns.Value, out double figure) ? figure : Slowly(csv, line);
            for (int i = 0; i < columns.Beside.Length; i++)
                columns.BesideValues[i][at] = csv.TryParse(columns.Beside[i], out double other) ? other : double.NaN;
        }

        Used = used;
        log.Looked(looked % log.RowsBetweenLooks);
    }

    // The names of a long log come in the same turn again and again, so the one that followed last time is tried first.
    private int NameOf(ReadOnlySpan<byte> field, int last)
    {
        ReadOnlySpan<byte> entry = field.Trim(" \t"u8);
        if (last >= 0 && _after[last] is >= 0 and int next && entry.SequenceEqual(_names[next]))
            return next;
        byte[] bytes = entry[..Math.Min(entry.Length, LongestName)].ToArray();
        string name = Encoding.UTF8.GetString(bytes);
        if (!_known.TryGetValue(name, out int id))
        {
            id = _names.Count;
            _known[name] = id;
            _names.Add(bytes);
            _after.Add(-1);
        }

        if (last >= 0)
            _after[last] = id;
        return id;
    }

    private string WhyNot(CsvReader csv) =>
        log.NoRow(csv) ?? (log.Time.TryRead(csv, out _) ? "no cell or signal named in the row" : "no time in the row");

    private double Slowly(CsvReader csv, int line)
    {
        double figure = log.Figure(csv, columns.Value, out _, out string? word);
        if (word is not null)
            Counter.Sample(columns.ValueName, word, line);
        return figure;
    }
}
