namespace PackPlanner.Formats.Tables;

/// <summary>Words found where figures were expected: counted, and kept with their row.</summary>
internal sealed class CellRemarks(RowCounter counter)
{
    // By the row itself: in a table on its side, or with cells beside one another, several cells stand in one line.
    private readonly Dictionary<TextRow, List<string>> _ofRow = new(ReferenceEqualityComparer.Instance);

    /// <summary>Fields with a figure in them that could not be read.</summary>
    internal int Figures { get; private set; }

    internal void Unreadable(TextRow row, CellColumn column, string field)
    {
        counter.Sample(column.Name, $"\"{Shown(field)}\" instead of a figure", row.LineOf(column.Index));
        Figures += field.Any(char.IsAsciiDigit) ? 1 : 0;
        if (!RowWords.IsNoFigure(field))
            Add(row, field);
    }

    internal void OutsideSense(TextRow row, CellColumn column, string field)
    {
        counter.Sample(column.Name, "a figure that no cell has", row.LineOf(column.Index));
        Add(row, $"{column.Name} {field}");
    }

    internal void NoGroup(TextRow row, CellColumn column) => counter.Sample(column.Name, $"\"{Shown(row[column.Index])}\" instead of a group's number", row.LineOf(column.Index));

    internal void NoDate(TextRow row, CellColumn column) => counter.Sample(column.Name, $"\"{Shown(row[column.Index])}\" instead of a date", row.LineOf(column.Index));

    private static string Shown(string field) => field.Length > 40 ? field[..40] + "…" : field;

    private void Add(TextRow row, string words)
    {
        if (!_ofRow.TryGetValue(row, out List<string>? list))
            _ofRow[row] = list = [];
        if (!list.Contains(words))
            list.Add(words);
    }

    internal string? Of(TextRow row) => _ofRow.TryGetValue(row, out List<string>? list) ? string.Join("; ", list) : null;
}
