using PackPlanner.Core.Cells;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Volts of cells: their unit, columns without a cell, and values that no cell can have.</summary>
internal static class CellVolts
{
    // A value beyond the limits counts as real only when it was reached in steps no larger than this.
    private const double LargestStepV = 0.35;
    private const int MostColumnsLookedAt = 100;

    // No charger takes most groups of a pack so far past full; one group may get there, and is warned of.
    private const double FarOverFullV = 0.3;

    /// <summary>The limits that hold when no chemistry is named: those of all known ones together.</summary>
    internal static (double LowestV, double HighestV) Limits(Chemistry? chemistry) => chemistry?.Physics
        ?? (Chemistries.All.Min(known => known.Physics.LowestV), Chemistries.All.Max(known => known.Physics.HighestV));

    /// <summary>Finds the unit from the size of the figures; a heading that contradicts them loses.</summary>
    /// <returns>Null when the figures have the size of no cell's volts in any unit.</returns>
    internal static FileUnit? UnitOf(LogColumn[] columns, List<string> said)
    {
        // Of thousands of columns some tell it as well as all.
        int every = Math.Max(1, columns.Length / MostColumnsLookedAt);
        double[] figures = [.. columns.Where((_, i) => i % every == 0).SelectMany(column => SomeFigures.Measured(column.Values)).Where(figure => figure > 0)];
        if (figures.Length == 0)
            return null;
        // Where most rows are fillers, those with the size of a cell's volts decide.
        double middle = Robust.UpperMedian(figures.Where(figure => figure is (> 1.2 and < 4.5) or (> 120 and < 450) or (> 1200 and < 4500) or (> 12000 and < 45000)));
        if (double.IsNaN(middle))
            middle = Robust.UpperMedian(figures);
        FileUnit? bySize = middle switch
        {
            > 0.5 and < 6 => FileUnit.Volt,
            > 50 and < 600 => FileUnit.Centivolt,
            > 600 and < 6000 => FileUnit.Millivolt,
            > 6000 and < 60000 => FileUnit.TenthMillivolt,
            _ => null,
        };
        FileUnit? given = columns[0].Unit;
        if (columns[0].UnitIsChosen)
            return given;
        if (given is { Of: Dimension.Voltage } && given.Convert(middle) is > 0.2 and < 6)
            return given;
        if (bySize is null)
            return null;
        foreach (LogColumn column in columns)
            column.SetBy = "heading and values";
        said.Add(given is null
            ? $"The cell volts have no unit; figures about {middle.ToString(System.Globalization.CultureInfo.InvariantCulture)} are read as {bySize.Name}."
            : $"The heading says {given.Name}, but figures about {middle.ToString(System.Globalization.CultureInfo.InvariantCulture)} can only be {bySize.Name}; they are read so.");
        return bySize;
    }

    /// <summary>The largest figure that sixteen bits hold, in any unit: a sample that was never taken.</summary>
    internal static bool IsFiller(double figure) => figure is 65535 or 65534 or 6553.5 or 655.35 or 65.535 or 6.5535 or 32767 or 3276.7 or 327.67 or 32.767;

    /// <summary>Columns that never hold a cell's volts: the log has room for more cells than the pack has.</summary>
    internal static bool IsEmpty(LogColumn column, FileUnit unit, (double LowestV, double HighestV) limits)
    {
        foreach (double value in column.Values)
        {
            double volts = unit.Convert(value);
            if (volts >= limits.LowestV && volts <= limits.HighestV)
                return false;
        }

        return true;
    }

    /// <summary>Why the volts cannot be those of a chemistry: most of them stand above its full charge.</summary>
    /// <param name="columns">Columns of cell volts as written.</param>
    /// <param name="unit">Their unit.</param>
    /// <param name="chemistry">The chemistry that was named.</param>
    /// <returns>What was seen; null where they may be.</returns>
    internal static string? Contradicts(LogColumn[] columns, FileUnit unit, Chemistry chemistry)
    {
        (double lowestV, double highestV) = Limits(null);
        double[][] each = [.. columns.Select(column => SomeFigures.Measured(column.Values).Select(unit.Convert).Where(value => value >= lowestV && value <= highestV).Order().ToArray())];
        if (2 * each.Count(one => one.Length > 0 && one[one.Length * 9 / 10] > chemistry.FullV + FarOverFullV) > each.Count(one => one.Length > 0))
            return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"most groups stand above {chemistry.FullV + FarOverFullV:0.00} V in a tenth of the log, and cells of {chemistry.Name} are full at {chemistry.FullV:0.00} V");
        double[] volts = [.. each.SelectMany(one => one)];
        double middle = volts.Length == 0 ? 0 : Robust.UpperMedian(volts);
        return middle <= chemistry.FullV + Chemistry.OverFullV ? null
            : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"half of all cell volts stand above {middle:0.00} V, and cells of {chemistry.Name} are full at {chemistry.FullV:0.00} V");
    }

    /// <summary>Turns a column into volts in place; lost values become NaN and are counted by kind.</summary>
    internal static void Clean(LogColumn column, FileUnit unit, (double LowestV, double HighestV) limits, int[] lines, RowCounter counter)
    {
        double[] values = column.Values;
        bool convert = unit.Scale != 1;
        double last = double.NaN;
        for (int i = 0; i < values.Length; i++)
        {
            double written = values[i];
            double volts = convert ? unit.Convert(written) : written;
            if (volts >= limits.LowestV && volts <= limits.HighestV)
            {
                if (convert)
                    values[i] = volts;
                last = volts;
                continue;
            }

            // A dying cell falls below every limit step by step, and its readings are real; a filler stands there at once.
            if (Math.Abs(volts - last) <= LargestStepV && Math.Abs(volts) < 10)
            {
                values[i] = last = volts;
                continue;
            }

            if (!double.IsNaN(written))
                counter.Sample(column.Name, KindOf(written, volts, limits), lines.Length > i ? lines[i] : 0);
            values[i] = double.NaN;
        }
    }

    private static string KindOf(double written, double volts, (double LowestV, double HighestV) limits)
    {
        if (!double.IsFinite(written))
            return "no finite figure";
        string shown = written.ToString("0.#####", System.Globalization.CultureInfo.InvariantCulture);
        return volts == 0 ? "0, a lost sample"
            : volts > limits.HighestV ? volts > 10 ? $"{shown}, a filler" : "above any volts of such a cell"
            : volts < 0 ? "below zero, a lost sample" : "below any volts of such a cell, reached in one step";
    }
}
