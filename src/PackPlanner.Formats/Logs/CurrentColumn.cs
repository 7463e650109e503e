using System.Globalization;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>The current of a log: its unit and its fillers.</summary>
internal static class CurrentColumn
{
    /// <summary>Finds the unit from the size of the figures where the heading has none.</summary>
    /// <param name="column">Figures as written.</param>
    /// <param name="ratedAh">Capacity that the user named, ampere-hours.</param>
    /// <param name="packUnit">Unit in which the pack's volts were found to be written without saying so; null where that is not known.</param>
    /// <param name="both">The two readings that remain.</param>
    /// <returns>Null when two units remain equally plausible; both are then named.</returns>
    internal static FileUnit? UnitOf(LogColumn column, double? ratedAh, FileUnit? packUnit, out (string One, string Other) both)
    {
        both = default;
        if (column.Unit is { Of: Dimension.Current } given)
            return given;
        double[] sizes = [.. column.Values.Where(double.IsFinite).Select(Math.Abs).Order()];
        if (sizes.Length == 0)
            return FileUnit.Ampere;
        column.SetBy = "heading and values";
        double high = sizes[(int)((sizes.Length - 1) * 0.995)];
        bool whole = column.Values.Take(5000).All(value => !double.IsFinite(value) || value == Math.Floor(value));
        if (!whole)
            return high > 3000 ? FileUnit.Milliampere : FileUnit.Ampere;
        if (ratedAh is { } rated && high > 0)
        {
            // A pack is seldom drawn beyond five times its capacity an hour, nor its largest current below a twentieth.
            FileUnit[] fits = [.. new[] { FileUnit.Ampere, FileUnit.Deciampere, FileUnit.Centiampere, FileUnit.Milliampere }
                .Where(unit => unit.Convert(high) / rated is > 0.05 and < 5)];
            if (fits.Length == 1)
                return fits[0];
            if (fits.Length > 1)
                return fits.Contains(FileUnit.Ampere) ? FileUnit.Ampere : fits.Contains(FileUnit.Milliampere) ? FileUnit.Milliampere : fits[0];
        }

        if (packUnit == FileUnit.Decivolt || packUnit == FileUnit.Centivolt || packUnit == FileUnit.Millivolt)
            return packUnit == FileUnit.Decivolt ? FileUnit.Deciampere : packUnit == FileUnit.Centivolt ? FileUnit.Centiampere : FileUnit.Milliampere;
        if (high is < 400)
            return FileUnit.Ampere;
        if (high > 2000)
            return FileUnit.Milliampere;
        both = (Text(high, "A"), Text(high, "mA"));
        return null;
    }

    /// <summary>Takes out fillers: one sample far beyond all others, or the largest figure that a counter can hold.</summary>
    internal static void Clean(LogColumn column, FileUnit unit, int[] lines, RowCounter counter)
    {
        double[] values = column.Values;
        double least = 300 / unit.Scale;
        double largest = 0;
        foreach (double value in values)
            largest = Math.Max(largest, double.IsNaN(value) ? 0 : Math.Abs(value));
        if (largest <= least)
        {
            // Nothing can be a filler, so the figures need not be sorted to find one.
            if (unit.Scale != 1)
                for (int i = 0; i < values.Length; i++)
                    values[i] = unit.Convert(values[i]);
            return;
        }

        double[] sizes = [.. values.Where(double.IsFinite).Select(Math.Abs).Order()];
        double usualHigh = sizes.Length == 0 ? 0 : sizes[(int)((sizes.Length - 1) * 0.998)];
        double limit = Math.Max(5 * usualHigh, least);
        for (int i = 0; i < values.Length; i++)
        {
            double size = Math.Abs(values[i]);
            bool lone = size > limit
                && !(i > 0 && Math.Abs(values[i - 1]) > limit / 2)
                && !(i + 1 < values.Length && Math.Abs(values[i + 1]) > limit / 2);
            bool filler = size is 65535 or 32768 or 32767 or 6553.5 or 3276.7 or 655.35 or 327.67;
            if (lone || (filler && size > limit) || double.IsInfinity(values[i]))
            {
                counter.Sample(column.Name, $"{values[i].ToString("0.###", CultureInfo.InvariantCulture)}, a lone value far beyond all others", lines.Length > i ? lines[i] : 0);
                values[i] = double.NaN;
            }
            else if (unit.Scale != 1)
            {
                values[i] = unit.Convert(values[i]);
            }
        }
    }

    private static string Text(double figure, string unit) => string.Create(CultureInfo.InvariantCulture, $"{figure:0.###} {unit}");
}
