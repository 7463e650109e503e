using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Tables;

/// <summary>Rows with more or fewer fields than the heading: a decimal comma between commas shifts all that follows it.</summary>
internal sealed class RowWidths
{
    private readonly TextTable _table;
    private readonly CellTableLayout _layout;
    private readonly int _width;
    private readonly bool _lastIsWords;
    private readonly bool _usual;
    private readonly List<string> _lacking = [];
    private int _short, _firstShort, _beyond, _firstBeyond;

    internal RowWidths(TextTable table, CellTableLayout layout)
    {
        (_table, _layout, _width) = (table, layout, layout.HeadingRow < 0 ? int.MaxValue : layout.Columns.Count);
        _lastIsWords = layout.Columns.Count > 0 && layout.Columns[^1].Role is ColumnRole.Remark or ColumnRole.Condition or ColumnRole.Unknown;
        // Where most rows reach beyond the heading, a column has no name, and nothing is shifted.
        TextRow[] rows = [.. table.Rows.Skip(layout.FirstRow).Where(row => !row.IsBlank)];
        _usual = rows.Count(row => Filled(row) > _width) * 2 > rows.Length;
    }

    /// <summary>What was seen of the rows that are read, one sentence each.</summary>
    internal IEnumerable<string> Understood
    {
        get
        {
            if (_beyond > 0)
                yield return $"{(_beyond == 1 ? "One row has" : $"{_beyond} rows have")} more fields than the heading, the first in line {_firstBeyond}: what stands beyond it is not used.";
            if (_short > 0)
                yield return $"{(_short == 1 ? "One row ends" : $"{_short} rows end")} before the heading does, the first in line {_firstShort}: {OneLine.Of(string.Join(", ", _lacking))} {(_lacking.Count == 1 ? "is" : "are")} missing there.";
        }
    }

    /// <summary>The row as the heading has it; words that go on in further fields belong to a last column of words.</summary>
    /// <param name="row">A row of data.</param>
    /// <param name="reason">Why it cannot be told which field is which; null when it can.</param>
    internal TextRow Fitted(TextRow row, out string? reason)
    {
        reason = null;
        if (Filled(row) <= _width)
        {
            Lacks(row);
            return row;
        }

        if (_usual)
        {
            (_beyond, _firstBeyond) = (_beyond + 1, _beyond == 0 ? row.Line : _firstBeyond);
            return row;
        }

        if (_lastIsWords && !IsFigure(row[_width - 1]) && row.Fields.Skip(_width).All(field => !IsFigure(field)))
            return row with { Fields = [.. row.Fields.Take(_width - 1), string.Join($"{_table.Separator} ", row.Fields.Skip(_width - 1).Where(field => field.Length > 0))] };
        reason = $"more fields than the heading: {(_table.Separator == ',' ? "a comma within a figure or a text has no quotes round it" : "a separator too many")}";
        return row;
    }

    private static int Filled(TextRow row) => Array.FindLastIndex(row.Fields, field => field.Length > 0) + 1;

    private static bool IsFigure(string field) => Figures.Split(field) is { Figure.Length: > 0, Tail.Length: 0 };

    // Remarks are often left off; a reading that is missing because the row is cut off should be known.
    private void Lacks(TextRow row)
    {
        if (_layout.HeadingRow < 0 || row.Fields.Length >= _width)
            return;
        string[] lacking = [.. _layout.Columns.Skip(row.Fields.Length).Where(column => ColumnNames.DimensionOf(column.Role) != Dimension.None).Select(column => column.Name)];
        if (lacking.Length == 0)
            return;
        (_short, _firstShort) = (_short + 1, _short == 0 ? row.Line : _firstShort);
        _lacking.AddRange(lacking.Where(name => !_lacking.Contains(name)));
    }
}
