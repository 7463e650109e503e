namespace PackPlanner.Formats.Tables;

/// <summary>The decimal mark of a table of cells, and how it was found.</summary>
internal sealed record CellMarks(DecimalMark Mark, IReadOnlyList<string> Understood)
{
    /// <summary>Decides by the option, by figures that allow one mark only, else by what the figures would mean.</summary>
    internal static Outcome<CellMarks> Decide(SourceFile source, CellTableLayout layout, IReadOnlyList<TextRow> rows, ReadOptions options)
    {
        if (options.Decimal == "point")
            return new CellMarks(DecimalMark.Point, []);
        if (options.Decimal == "comma")
            return new CellMarks(DecimalMark.Comma, []);
        DecimalVote vote = new();
        foreach (TextRow row in rows)
            foreach (CellColumn column in layout.Columns)
                if (column.Role != ColumnRole.Unknown && ColumnNames.DimensionOf(column.Role) != Dimension.None)
                    vote.Look(column.Index, row[column.Index]);
        if (vote.Points > 0 && vote.Commas > 0 && Math.Min(vote.Points, vote.Commas) * 5 > Math.Max(vote.Points, vote.Commas))
            return Refusal.Input("two-readings", source.Name,
                $"some figures have a decimal point ({vote.Examples.Point}) and others a decimal comma ({vote.Examples.Comma})",
                "Write them alike, or give --decimal point or --decimal comma: the rows of the other kind are then left out and counted.");
        if (vote.Points != vote.Commas)
            return new CellMarks(vote.Commas > vote.Points ? DecimalMark.Comma : DecimalMark.Point, []);
        return vote.Ambiguous.Count == 0 ? new CellMarks(DecimalMark.Point, []) : ByMeaning(source, layout, vote);
    }

    // "2,850": as 2.85 or as 2850, whichever a cell can have.
    private static Outcome<CellMarks> ByMeaning(SourceFile source, CellTableLayout layout, DecimalVote vote)
    {
        bool comma = vote.Ambiguous.Count(figure => figure.Comma) * 2 >= vote.Ambiguous.Count;
        DecimalMark asDecimal = comma ? DecimalMark.Comma : DecimalMark.Point;
        DecimalMark asThousands = comma ? DecimalMark.Point : DecimalMark.Comma;
        int decimalFits = 0;
        int thousandsFit = 0;
        foreach ((int index, string figure, bool _) in vote.Ambiguous)
        {
            CellColumn column = layout.Columns[index];
            decimalFits += Fits(column, figure, asDecimal) ? 1 : 0;
            thousandsFit += Fits(column, figure, asThousands) ? 1 : 0;
        }

        (int _, string example, bool _) = vote.Ambiguous[0];
        string name = layout.Columns[vote.Ambiguous[0].Column].Name;
        string mark = comma ? "comma" : "point";
        // A point is the decimal mark unless that makes no sense: thousands points alone, without one decimal comma, are rare.
        bool preferDecimal = decimalFits > thousandsFit || (!comma && decimalFits == thousandsFit);
        if (decimalFits == thousandsFit && comma)
            return Refusal.Input("two-readings", $"{source.Name}, column {name}",
                $"\"{example}\" can be {Meaning(example, asDecimal)} (decimal comma) or {Meaning(example, asThousands)} (comma between thousands), and no other figure in the file tells which",
                "Give --decimal comma for the first or --decimal point for the second.");
        string sentence = preferDecimal
            ? $"\"{example}\" is read with a decimal {mark}: {Meaning(example, asDecimal)}; the other reading is no figure of a cell."
            : $"\"{example}\" is read with a {mark} between thousands: {Meaning(example, asThousands)}; the other reading is no figure of a cell.";
        return new CellMarks(preferDecimal ? asDecimal : asThousands, comma ? [sentence] : []);
    }

    private static string Meaning(string figure, DecimalMark mark) =>
        Figures.TryRead(figure, mark, out double value, out _) ? FormattableString.Invariant($"{value}") : figure;

    // Without a unit the two readings differ by just the thousand that the unit makes up for, so the smaller unit is never ruled out here.
    private static bool Fits(CellColumn column, string figure, DecimalMark mark)
    {
        if (!Figures.TryRead(figure, mark, out double value, out _))
            return false;
        Dimension of = ColumnNames.DimensionOf(column.Role);
        FileUnit unit = column.Unit ?? FileUnit.Usual(of);
        return Sensible.Holds(of, Math.Abs(unit.Convert(value)));
    }
}
