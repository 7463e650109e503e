namespace PackPlanner.Formats.Tables;

/// <summary>Decides a missing unit in a table of cells from the size of its figures.</summary>
internal static class CellUnits
{
    /// <summary>Gives a unit to a column that has none.</summary>
    /// <param name="column">The figures.</param>
    /// <param name="capacityAh">Usual capacity of the cells where it is known already; NaN where not.</param>
    /// <returns>Null when it is settled; else the two readings that remain.</returns>
    internal static (string One, string Other)? Settle(FigureColumn column, double capacityAh)
    {
        double middle = column.Middle();
        if (column.Column.Unit is not null || double.IsNaN(middle))
            return null;
        if (column.OwnUnit is { } own && !MovesAThousandfold(column, own, middle))
        {
            column.Column.Unit = own;
            column.Column.SetBy = "cells";
            return null;
        }

        (FileUnit? unit, (string, string)? both) = column.Of switch
        {
            Dimension.Charge when column.Column.Role == ColumnRole.ChargeOffset => (OfOffset(column.Bare.Max(Math.Abs), capacityAh), null),
            Dimension.Charge => OfCharge(Math.Abs(middle), capacityAh),
            Dimension.Voltage => (Math.Abs(middle) < 100 ? FileUnit.Volt : FileUnit.Millivolt, null),
            Dimension.Resistance => (OfResistance(middle, capacityAh), null),
            Dimension.Current => (OfCurrent(Math.Abs(middle), capacityAh), null),
            Dimension.Share => (OfShare(column), null),
            _ => (FileUnit.Usual(column.Of), ((string, string)?)null),
        };
        if (unit is null)
            return both;
        column.Column.Unit = unit;
        column.Column.SetBy = LooksAtSize(column.Of) ? "heading and values" : column.Column.SetBy;
        return null;
    }

    // One "2850mAh" among 2.79 and 2.81: in its unit the others would be a thousandth of a cell, so their size tells.
    private static bool MovesAThousandfold(FigureColumn column, FileUnit own, double middle)
    {
        double ratio = own.Convert(middle) / column.MiddleWithUnit();
        return column.Of is Dimension.Charge or Dimension.Voltage or Dimension.Resistance or Dimension.Current && ratio > 0 && Math.Abs(Math.Log10(ratio)) > 2;
    }

    /// <summary>Says that a heading's unit makes figures of no lithium cell, where another unit would make ordinary ones.</summary>
    /// <param name="column">The figures of a resistance, with the unit that its heading states.</param>
    /// <param name="capacityAh">Usual capacity of the cells; NaN where not known.</param>
    /// <returns>A sentence, or null where the stated unit is believable. The figures stay as the heading says.</returns>
    internal static string? Doubt(FigureColumn column, double capacityAh)
    {
        double middle = column.Middle();
        if (column.Of != Dimension.Resistance || column.Column.Unit is not { } stated || !(middle > 0) || !(capacityAh > 0))
            return null;
        // Within thirty of 0.08 ohm ampere-hours lies every cell, large and small, new and worn, DC and 1 kHz (common practice, no source).
        double Off(FileUnit unit) => Math.Abs(Math.Log(unit.Convert(middle) * capacityAh / 80));
        FileUnit likely = OfResistance(middle, capacityAh);
        return likely != stated && Off(stated) > Math.Log(30) && Off(likely) < Math.Log(30)
            ? Invariant($"Column {column.Column.Name}: its heading says {stated.Name}, but {middle} {stated.Name} is no resistance of a cell of {capacityAh:0.###} Ah, and {middle} {likely.Name} would be; it is read as the heading says. Mend the heading if the unit is wrong.")
            : null;
    }

    /// <summary>A unit of this quantity is told by the size of the figures; else it is the usual one.</summary>
    internal static bool LooksAtSize(Dimension of) => of is Dimension.Charge or Dimension.Voltage or Dimension.Resistance or Dimension.Current or Dimension.Share;

    // Cells of 1 mAh to 0.3 Ah are not built into packs, nor single ones above some hundred Ah: below 350 it is Ah, above 600 mAh.
    private static (FileUnit? Unit, (string One, string Other)? Both) OfCharge(double middle, double capacityAh)
    {
        if (!double.IsNaN(capacityAh) && capacityAh > 0)
            return (Math.Abs(Math.Log(middle / capacityAh)) < Math.Abs(Math.Log(middle / 1000 / capacityAh)) ? FileUnit.AmpereHour : FileUnit.MilliampereHour, null);
        return middle switch
        {
            < 350 => (FileUnit.AmpereHour, null),
            > 600 => (FileUnit.MilliampereHour, null),
            _ => (null, (Invariant($"{middle} Ah"), Invariant($"{middle} mAh"))),
        };
    }

    // Half a pack's charge may be missing from one group, and hardly more; a hundredth of it and less is not worth a column. Our choice.
    private static FileUnit OfOffset(double most, double capacityAh) =>
        most <= (capacityAh > 0 ? capacityAh / 2 : 20) ? FileUnit.AmpereHour : FileUnit.MilliampereHour;

    // Resistance times capacity is about 0.08 ohm ampere-hours for lithium cells of all sizes (common practice, no source).
    private static FileUnit OfResistance(double middle, double capacityAh)
    {
        if (!double.IsNaN(capacityAh) && capacityAh > 0 && middle > 0)
            return new[] { FileUnit.Milliohm, FileUnit.Ohm, FileUnit.Microohm }
                .MinBy(unit => Math.Abs(Math.Log(unit.Convert(middle) * capacityAh / 80)))!;
        return middle < 0.2 ? FileUnit.Ohm : FileUnit.Milliohm;
    }

    private static FileUnit OfCurrent(double middle, double capacityAh)
    {
        double usual = double.IsNaN(capacityAh) || capacityAh <= 0 ? 3 : capacityAh / 2;
        return middle <= 0 || Math.Abs(Math.Log(middle / usual)) < Math.Abs(Math.Log(middle / 1000 / usual)) ? FileUnit.Ampere : FileUnit.Milliampere;
    }

    /// <summary>A state of charge between 0 and 1 in a column without a unit, where others are percent: nine tenths, or nearly nothing.</summary>
    /// <param name="column">The figures.</param>
    /// <returns>The first such figure; null where there is none, or the column is none of states of charge.</returns>
    internal static double? FractionsAmongPercents(FigureColumn column) =>
        column.Column.Role == ColumnRole.StateOfCharge && column.Bare.Any(figure => figure is > 1.5 and <= 150)
            ? column.Bare.Where(figure => figure is > 0 and < 1).Select(figure => (double?)figure).FirstOrDefault()
            : null;

    private static FileUnit OfShare(FigureColumn column)
    {
        double most = column.Bare.Max();
        return most <= 1.5 ? FileUnit.Fraction : most <= 150 ? FileUnit.Percent : FileUnit.Permille;
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
