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
        if (column.OwnUnit is { } own)
        {
            column.Column.Unit = own;
            column.Column.SetBy = "cells";
            return null;
        }

        (FileUnit? unit, (string, string)? both) = column.Of switch
        {
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
        column.Column.SetBy = "heading and values";
        return null;
    }

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

    private static FileUnit OfShare(FigureColumn column)
    {
        double most = column.Bare.Max();
        return most <= 1.5 ? FileUnit.Fraction : most <= 150 ? FileUnit.Percent : FileUnit.Permille;
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
