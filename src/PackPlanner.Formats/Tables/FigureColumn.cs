using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Tables;

/// <summary>The figures of one column of a table of cells, as written and in our own unit.</summary>
internal sealed class FigureColumn
{
    private readonly double?[] _written;
    private readonly FileUnit?[] _ownUnits;

    /// <summary>Reads every field of the column strictly.</summary>
    /// <param name="column">Its place and name.</param>
    /// <param name="rows">The rows of data.</param>
    /// <param name="mark">The decided decimal mark.</param>
    /// <param name="unreadable">Told of each field that holds something else than a figure.</param>
    internal FigureColumn(CellColumn column, IReadOnlyList<TextRow> rows, DecimalMark mark, Action<TextRow, CellColumn, string> unreadable)
    {
        Column = column;
        Of = ColumnNames.DimensionOf(column.Role);
        _written = new double?[rows.Count];
        _ownUnits = new FileUnit?[rows.Count];
        for (int i = 0; i < rows.Count; i++)
        {
            string field = rows[i][column.Index];
            if (field.Length == 0)
                continue;
            if (Figures.TryRead(field, mark, out double value, out string unitText) && (unitText.Length == 0 || FileUnit.Find(unitText)?.Of == Of))
            {
                _written[i] = value;
                _ownUnits[i] = unitText.Length == 0 ? null : FileUnit.Find(unitText);
                Decimals = Math.Max(Decimals, DecimalsOf(Figures.Split(field).Figure, mark));
            }
            else
            {
                unreadable(rows[i], column, field);
                HoldsWordsOnly = true;
            }
        }

        HoldsWordsOnly &= !HasAny;
    }

    /// <summary>Fields are filled, and not one holds a figure.</summary>
    internal bool HoldsWordsOnly { get; }

    internal CellColumn Column { get; }

    internal Dimension Of { get; }

    /// <summary>The most decimals that any figure has.</summary>
    internal int Decimals { get; private set; }

    /// <summary>Some fields carry their own unit.</summary>
    internal FileUnit? OwnUnit => _ownUnits.FirstOrDefault(unit => unit is not null);

    /// <summary>Some field holds a figure.</summary>
    internal bool HasAny => Array.Exists(_written, value => value is not null);

    /// <summary>Figures without a unit of their own, which need the column's.</summary>
    internal IEnumerable<double> Bare => _written.Where((value, i) => value is not null && _ownUnits[i] is null).Select(value => value!.Value);

    /// <summary>The column writes its figures with the other sign.</summary>
    internal bool IsTurned { get; set; }

    /// <summary>Figures in our own unit: the field's unit, else the column's.</summary>
    internal double? this[int row] => _written[row] is { } written ? (_ownUnits[row] ?? Column.Unit ?? FileUnit.Usual(Of)).Convert(IsTurned ? -written : written) : null;

    /// <summary>All its figures in our own unit.</summary>
    internal IEnumerable<double> All => Enumerable.Range(0, _written.Length).Select(row => this[row]).OfType<double>();

    /// <summary>The smallest step in which this column writes its figures, in our own unit.</summary>
    internal double Step => (OwnUnit ?? Column.Unit ?? FileUnit.Usual(Of)).Scale * Math.Pow(10, -Decimals);

    /// <summary>The middle figure without a unit of its own; NaN when there is none.</summary>
    internal double Middle() => Robust.UpperMedian(Bare);

    /// <summary>The middle figure of those with a unit of their own, in our own unit; NaN when there is none.</summary>
    internal double MiddleWithUnit() => Robust.UpperMedian(_written.Select((value, i) => (value, unit: _ownUnits[i])).Where(one => one.value is not null && one.unit is not null).Select(one => one.unit!.Convert(one.value!.Value)));

    private static int DecimalsOf(string figure, DecimalMark mark)
    {
        int at = figure.LastIndexOf(mark == DecimalMark.Point ? '.' : ',');
        return at < 0 ? 0 : figure[(at + 1)..].TakeWhile(char.IsAsciiDigit).Count();
    }
}
