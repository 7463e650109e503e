using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>What a log says of the whole pack beside its current: its volts, and the charge that the controller showed.</summary>
internal static class PackTotals
{
    /// <summary>The pack's volts in V, in place; null where no column is the sum of the groups in any unit.</summary>
    internal static double[]? Volts(LogColumns columns, LogColumn[] groups)
    {
        LogColumn? column = columns[ColumnRole.PackVoltage] ?? columns[ColumnRole.Voltage];
        if (column is null || column.Values.Length == 0 || column.Role == ColumnRole.CellVoltage)
            return null;
        double sum = groups.Sum(group => group.Values.FirstOrDefault(double.IsFinite));
        double written = column.Values.FirstOrDefault(value => double.IsFinite(value) && value > 0);
        FileUnit? unit = column is { UnitIsChosen: true, Unit: { } chosen } ? chosen
            : new[] { column.Unit ?? FileUnit.Volt, FileUnit.Volt, FileUnit.Decivolt, FileUnit.Centivolt, FileUnit.Millivolt }
                .FirstOrDefault(each => Math.Abs((each.Convert(written) / sum) - 1) < 0.15);
        if (unit is null)
        {
            (column.Role, column.SetBy) = (ColumnRole.Unknown, "values: not the sum of the groups in any unit");
            return null;
        }

        if (column.Unit != unit && !column.IsChosen)
            column.SetBy = "heading and values";
        (column.Unit, column.Role) = (unit, ColumnRole.PackVoltage);
        double[] volts = column.Values;
        for (int i = 0; i < volts.Length; i++)
        {
            double value = unit.Convert(volts[i]);
            volts[i] = value > 0.3 * sum && value < 2 * sum ? value : double.NaN;
        }

        return volts;
    }

    /// <summary>The pack's volts over the sum of its groups, over some rows in which all are known; null where there are none.</summary>
    internal static double? OverSum(double[]? packV, LogColumn[] groups)
    {
        if (packV is null)
            return null;
        const int rows = 200;
        double[] ratios =
        [
            .. Enumerable.Range(0, rows).Select(i => (int)((long)i * packV.Length / rows)).Distinct()
                .Select(row => packV[row] / groups.Sum(group => group.Values[row])).Where(double.IsFinite),
        ];
        return ratios.Length == 0 ? null : Core.Cells.Robust.Median(ratios);
    }

    /// <summary>The state of charge that the controller showed, as a fraction, in place; null without one.</summary>
    internal static double[]? Shown(LogColumns columns)
    {
        if (columns[ColumnRole.StateOfCharge] is not { } column || column.Values.Length == 0 || !column.Values.Any(double.IsFinite))
            return null;
        FileUnit unit = column.UnitIsChosen || (column.Unit?.Of == Dimension.Share && Reaches(column.Values, 1.5)) ? column.Unit!
            : !Reaches(column.Values, 1.2) ? FileUnit.Fraction : !Reaches(column.Values, 120) ? FileUnit.Percent : FileUnit.Permille;
        if (column.Unit is null)
            column.SetBy = "heading and values";
        column.Unit = unit;
        for (int i = 0; i < column.Values.Length; i++)
        {
            double share = unit.Convert(column.Values[i]);
            column.Values[i] = share is >= -0.05 and <= 1.2 ? share : double.NaN;
        }

        return column.Values;
    }

    // More than the few figures in a thousand that may be fillers stand above the limit.
    private static bool Reaches(double[] values, double limit)
    {
        int known = 0;
        int above = 0;
        foreach (double value in values)
        {
            known += double.IsFinite(value) ? 1 : 0;
            above += double.IsFinite(value) && value > limit ? 1 : 0;
        }

        return above >= known - (int)((known - 1) * 0.999);
    }
}
