using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Tables;

/// <summary>From the text of one table of cells to its rows.</summary>
internal static class CellTableReader
{
    internal static Outcome<CellFile> Read(SourceFile source, TextTable table, ReadOptions options)
    {
        TextTable? joined = MergedHeading.Joined(table);
        table = joined ?? table;
        TableFormat? format = TableFormat.All.FirstOrDefault(known => known.OneRowACell(table) is not null);
        table = format?.OneRowACell(table) ?? table;
        CellTableLayout layout = CellTableLayout.Of(table, options.Columns, options.NamesGroups);
        if (NotATable(source, table, layout) is { } not)
            return not;
        RowCounter counter = new(source.Name);
        RowWidths widths = new(table, layout);
        List<TextRow> rows = DataRows.Of(table, layout, widths, counter);
        if (rows.Count == 0)
            return Refusal.Input("no-rows", source.Name, "there is a heading, but no row with a cell below it",
                "Export the table again with its rows, or remove what stands between heading and rows.");
        List<string> understood = [.. new[] { joined is null ? null : MergedHeading.Says, format?.Says }.OfType<string>(), .. widths.Understood];
        if (!CellMarks.Decide(source, layout, rows, options).Is(out CellMarks? marks, out Refusal? why))
            return why;
        understood.AddRange(marks.Understood);
        understood.AddRange(DamageNotRead(layout, rows));
        understood.AddRange(FiguresNotUsed(layout, rows));
        CellRemarks remarks = new(counter);
        Dictionary<ColumnRole, FigureColumn> figures = ReadFigures(layout, rows, marks.Mark, remarks);
        bool nameless = layout[ColumnRole.Label] is null && layout[ColumnRole.Slot] is null;
        if (remarks.Figures > 0 && (!figures.Values.Any(column => column.HasAny) || (nameless && figures.Values.Any(column => column.HoldsWordsOnly))))
            return NotUnderstood(source, $"its figures, or those of a whole column, cannot be read{Seen(table)}");
        if (options.Decimal == "auto" && figures.Values.Where(column => column.Of == Dimension.Charge)
            .Select(column => StrayMarks.Find(source, column, rows, marks.Mark)).FirstOrDefault(found => found is not null) is { } stray)
            return stray;
        if (SettleUnits(source, figures, options, understood) is { } unsettled)
            return unsettled;
        if (Lacking(source, layout, figures, options) is { } lacking)
            return lacking;
        if (!GroupNumbers.Of(source, layout[ColumnRole.Group], rows, options.GroupsFromOne, remarks).Is(out GroupNumbers? groups, out why))
            return why;
        understood.AddRange(new[] { FallSign.Settle(figures.GetValueOrDefault(ColumnRole.SelfDischarge)), groups.Understood }.OfType<string>());
        CellRowMaker maker = new(source, layout, figures, rows, groups, remarks);
        CellRow[] cells = [.. rows.Select((row, i) => maker.Make(row, i))];
        counter.Used = cells.Length;
        understood.AddRange(maker.Understood);
        return new CellFile(cells, counter.Account(), understood, Shape(source, table, layout, figures, marks.Mark, cells.Length));
    }

    // A column whose heading says nothing is not used; but damage must not be passed over in silence, nor a supplier's name taken for it.
    private static IEnumerable<string> DamageNotRead(CellTableLayout layout, List<TextRow> rows) =>
        layout.Columns.Where(column => column.Role == ColumnRole.Unknown)
            .Select(column => (column, row: rows.Find(row => ConditionWords.NameDamage(row[column.Index]))))
            .Where(found => found.row is not null)
            .Select(found => $"Column {found.column.Name} is not used, but line {found.row!.Line} reads like damage (\"{OneLine.Of(found.row[found.column.Index])}\"): call the column remarks, and its cells are judged by it.");

    // Resting volts under a heading in a language that is not known here would otherwise be missed without a word.
    private static IEnumerable<string> FiguresNotUsed(CellTableLayout layout, List<TextRow> rows)
    {
        string[] names =
        [
            .. layout.Columns.Where(column => column.Role == ColumnRole.Unknown && 2 * rows.Count(row => row[column.Index].Any(char.IsDigit)) > rows.Count)
                .Select(column => column.Name).Where(name => name.Length > 0).Distinct(StringComparer.Ordinal),
        ];
        if (names.Length > 0)
            yield return $"Not used, since the heading is not known: {OneLine.Of(string.Join(", ", names))}. --column \"{OneLine.Of(names[0])}=meaning:unit\" says what a column is.";
    }

    private static Refusal? NotATable(SourceFile source, TextTable table, CellTableLayout layout)
    {
        if (table.Rows.Count == 0)
            return Refusal.Input("empty-file", source.Name, "the file holds no row", "Export it again; a heading line and at least one row were expected.");
        if (layout.Columns.Where(column => column.SetBy == HeadlessCells.Unsettled).Select(column => column.Name).ToArray() is { Length: > 0 } unsettled)
            return Refusal.Input("two-readings", source.Name, $"it has no heading, and {string.Join(" and ", unsettled)} can be capacities in mAh or resting volts in mV",
                "Put a heading line above the rows, such as: cell;rest voltage (mV);capacity (mAh).");
        if (layout.Columns.All(column => SaysNothingOfCells(column, table, layout)))
            return NotUnderstood(source, $"none of its columns is known as a reading of cells{Seen(table)}");
        if ((TwoCapacities(source, layout) ?? SelfDischargeHeading.Unknown(source, layout)) is { } unclear)
            return unclear;
        if (layout.HeadingRow >= 0 && layout.FirstRow >= table.Rows.Count)
            return Refusal.Input("no-rows", source.Name, "there is a heading alone, no row below it", "Export the table again with its rows.");
        return null;
    }

    // Two columns of ampere-hours under words that say nothing: either can be the one that was measured.
    private static Refusal? TwoCapacities(SourceFile source, CellTableLayout layout)
    {
        CellColumn[] bare = [.. layout.Columns.Where(column => column is { Fit: 20, Unit.Of: Dimension.Charge, Role: ColumnRole.Capacity or ColumnRole.Unknown } && FileUnit.Find(column.Heading.Raw) is null && !column.SetBy.StartsWith("--", StringComparison.Ordinal))];
        return bare.Length < 2 || bare.All(column => column.Role == ColumnRole.Unknown) ? null : Refusal.Input("two-readings", source.Name,
            $"columns {bare[0].Name} and {bare[1].Name} can both be the measured capacity",
            $"Say --column \"{bare[0].Name}=capacity\" or --column \"{bare[1].Name}=capacity\".");
    }

    private static Refusal NotUnderstood(SourceFile source, string why) => Refusal.Input("not-understood", source.Name, why,
        "Put a heading line above the rows, such as: cell;capacity (mAh);resistance (mOhm);rest voltage (V); if it is a log: time (s);current (A);cell 1 (V);cell 2 (V).");

    // A time, a temperature or a current alone is no table of cells, nor are labels that were only found by how they look.
    private static bool SaysNothingOfCells(CellColumn column, TextTable table, CellTableLayout layout) => column.Role switch
    {
        ColumnRole.Unknown or ColumnRole.Time or ColumnRole.Duration or ColumnRole.Date or ColumnRole.LaterDate or ColumnRole.Temperature or ColumnRole.Mode
            or ColumnRole.Cycle or ColumnRole.Step or ColumnRole.Power or ColumnRole.Current => true,
        ColumnRole.Label => column.SetBy == "values" || HoldsDecimals([.. table.Rows.Skip(layout.FirstRow).Take(200).Select(row => row[column.Index])]),
        _ => false,
    };

    private static bool HoldsDecimals(string[] entries) =>
        entries.Count(entry => Figures.Split(entry) is { Figure.Length: > 0, Tail.Length: 0 } split && split.Figure.AsSpan().IndexOfAny(".,") > 0) * 2 > entries.Length;

    private static string Seen(TextTable table)
    {
        string first = string.Join(", ", table.Rows[0].Fields.Where(field => field.Length > 0).Take(5));
        return first.Length == 0 ? "" : $"; the first line reads: {(first.Length > 80 ? first[..80] + "…" : first)}";
    }

    private static Dictionary<ColumnRole, FigureColumn> ReadFigures(CellTableLayout layout, List<TextRow> rows, DecimalMark mark, CellRemarks remarks)
    {
        Dictionary<ColumnRole, FigureColumn> figures = [];
        foreach (CellColumn column in layout.Columns)
            if (column.Role != ColumnRole.Unknown && ColumnNames.DimensionOf(column.Role) is not (Dimension.None or Dimension.Time))
                figures[column.Role] = new FigureColumn(column, rows, mark, remarks.Unreadable);
        return figures;
    }

    // Capacity first, because its size helps to settle the others.
    private static Refusal? SettleUnits(SourceFile source, Dictionary<ColumnRole, FigureColumn> figures, ReadOptions options, List<string> understood)
    {
        // A rated figure that no cell has (5000 for mAh) tells no unit.
        double capacityAh = options.RatedAh is { } rated && rated >= Sensible.Range(Dimension.Charge).Low && rated <= Sensible.Range(Dimension.Charge).High ? rated : double.NaN;
        foreach (FigureColumn column in figures.Values.OrderBy(column => column.Column.Role is ColumnRole.RatedCapacity ? 0 : column.Of == Dimension.Charge ? 1 : 2))
        {
            bool missing = column.Column.Unit is null;
            if (missing && CellUnits.FractionsAmongPercents(column) is { } part)
                return Refusal.Input("two-readings", $"{source.Name}, column {column.Column.Name}", $"{part} can be {part} % or {part * 100} %, beside figures that are percent",
                    "Write all of them in one unit: fractions from 0 to 1, or percent with % in the heading.");
            if (CellUnits.Settle(column, capacityAh) is { } both)
                return Refusal.Input("two-readings", $"{source.Name}, column {column.Column.Name}",
                    $"the capacities have no unit and can be {both.One} or {both.Other}",
                    "Write the unit into the heading, such as capacity (mAh), or give --rated-ah.");
            if (!missing && CellUnits.Doubt(column, capacityAh) is { } doubt)
                understood.Add(doubt);
            if (missing && column.Column.Unit is { } unit && column.Of is not (Dimension.Share or Dimension.None))
                understood.Add($"Column {column.Column.Name}: read in {unit.Name}, from {(column.Column.SetBy == "cells" ? "the units beside its figures" : CellUnits.LooksAtSize(column.Of) ? "the size of its figures" : "habit, since nothing names another")}.");
            if (column.Of == Dimension.Charge && double.IsNaN(capacityAh))
                capacityAh = Usual(column);
        }

        return null;
    }

    private static double Usual(FigureColumn column)
    {
        return Robust.UpperMedian(column.Bare.Select(figure => (column.Column.Unit ?? FileUnit.AmpereHour).Convert(figure)).Where(figure => figure > 0));
    }

    private static Refusal? Lacking(SourceFile source, CellTableLayout layout, Dictionary<ColumnRole, FigureColumn> figures, ReadOptions options)
    {
        bool Has(params ColumnRole[] roles) => roles.Any(figures.ContainsKey);
        string headings = string.Join(", ", layout.Columns.Select(column => column.Name).Take(12));
        if (options.NeedsCapacity && !Has(ColumnRole.Capacity, ColumnRole.DischargeCapacity, ColumnRole.ChargeCapacity))
            return Refusal.Input("no-capacity-column", source.Name, $"no column is known as a capacity; the headings are: {headings}",
                "Name the column capacity (mAh) or capacity (Ah), or give the table that has the capacities.");
        if (options.NeedsResistance && !Has(ColumnRole.Resistance, ColumnRole.DcResistance, ColumnRole.AcResistance))
            return Refusal.Input("no-resistance-column", source.Name, $"no column is known as a resistance; the headings are: {headings}",
                "Name the column resistance (mOhm), or give the table that has the resistances.");
        if (options.NeedsRestVoltage && !Has(ColumnRole.RestVoltage, ColumnRole.Voltage))
            return Refusal.Input("no-rest-voltage-column", source.Name, $"no column is known as a resting voltage; the headings are: {headings}",
                "Name the column rest voltage (V), or give the table that has the resting volts.");
        return null;
    }

    private static FileShape Shape(SourceFile source, TextTable table, CellTableLayout layout, Dictionary<ColumnRole, FigureColumn> figures, DecimalMark mark, int rows) => new()
    {
        File = source.Name,
        Kind = "cells",
        Layout = "wide",
        Separator = Separators.NameOf(table.Separator),
        DecimalMark = Figures.NameOf(mark),
        Encoding = source.EncodingName,
        HeadingLine = layout.HeadingRow < 0 ? null : table.Rows[layout.HeadingRow].Line,
        Rows = rows,
        Columns =
        [
            .. layout.Columns.Select(column => new ColumnReading(
                column.Name, RoleNames.Of(column.Role), figures.ContainsKey(column.Role) ? column.Unit?.Name : null,
                column.Role == ColumnRole.Unknown && column.SetBy == "heading" ? "nothing" : column.SetBy)),
        ],
    };
}
