namespace PackPlanner.Formats.Tables;

/// <summary>Words found where figures were expected: counted, and kept with their row.</summary>
internal sealed class CellRemarks(RowCounter counter)
{
    private readonly Dictionary<int, List<string>> _byLine = [];

    internal void Unreadable(TextRow row, CellColumn column, string field)
    {
        string shown = field.Length > 40 ? field[..40] + "…" : field;
        counter.Sample(column.Name, $"\"{shown}\" instead of a figure", row.Line);
        if (!RowWords.IsNoFigure(field))
            Add(row.Line, field);
    }

    internal void OutsideSense(TextRow row, CellColumn column, string field)
    {
        counter.Sample(column.Name, "a figure that no cell has", row.Line);
        Add(row.Line, $"{column.Name} {field}");
    }

    internal void Add(int line, string words)
    {
        if (!_byLine.TryGetValue(line, out List<string>? list))
            _byLine[line] = list = [];
        if (!list.Contains(words))
            list.Add(words);
    }

    internal string? Of(int line) => _byLine.TryGetValue(line, out List<string>? list) ? string.Join("; ", list) : null;
}
