using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Finds the columns that belong together by their headings: the volts of the series groups, and the temperature probes.</summary>
internal sealed class LogFamilies
{
    private static readonly HashSet<string> WarmNames = new(StringComparer.Ordinal) { "t", "ts", "tc", "tb", "temp", "temps", "tmp", "ntc" };

    private readonly LogColumn[] _all;
    private readonly LogColumn[][] _families;

    private LogFamilies(LogColumn[] all)
    {
        _all = all;
        _families = [.. all.Where(column => column.Number is not null).GroupBy(column => column.Heading.Family).Select(family => family.ToArray())];
    }

    /// <summary>Volts of the series groups in the order of their numbers, and probes in theirs; either may be empty.</summary>
    internal static (LogColumn[] Groups, LogColumn[] Probes) Of(LogColumn[] all)
    {
        LogFamilies families = new(all);
        LogColumn[] volts = families.Volts();
        return (volts, families.Warm(volts));
    }

    private LogColumn[] Volts()
    {
        LogColumn[]? volts = _families
            .Where(family => family.Length >= 2 && IsVoltage(family))
            .OrderByDescending(family => family.Length + (IsNamedVoltage(family) ? 1000 : 0))
            .FirstOrDefault() ?? Lettered();
        if (volts is null)
            return [];
        string setBy = IsNamedVoltage(volts) ? "heading" : "heading and values";
        LogColumn[] inOrder = InOrder(volts);
        foreach (LogColumn column in inOrder)
            (column.Role, column.SetBy) = (ColumnRole.CellVoltage, setBy);
        return inOrder;
    }

    private LogColumn[] Warm(LogColumn[] volts)
    {
        LogColumn[]? warm = _families.Where(family => !volts.Contains(family[0]) && IsTemperature(family)).OrderByDescending(family => family.Length).FirstOrDefault();
        if (warm is null)
            return [.. _all.Where(column => column.Role == ColumnRole.Temperature)];
        foreach (LogColumn column in warm)
            column.Role = ColumnRole.Temperature;
        return InOrder(warm);
    }

    // Modules and cells are counted apart: M1C1, M1C2, M2C1 are cells 1, 2, 3. A number that is the same everywhere counts nothing.
    // A heading that comes twice is read once.
    private static LogColumn[] InOrder(LogColumn[] family)
    {
        int numbers = family.Min(column => column.Heading.Numbers.Count);
        int[] counting = [.. Enumerable.Range(0, numbers).Where(at => family.Any(column => column.Heading.Numbers[at] != family[0].Heading.Numbers[at]))];
        if (counting.Length > 0)
            foreach (LogColumn column in family)
                column.Number = column.Heading.Numbers[counting[^1]];
        List<LogColumn> inOrder = [];
        Dictionary<string, LogColumn> met = [];
        foreach (LogColumn column in family.OrderBy(column => counting.Length > 1 ? column.Heading.Numbers[counting[0]] : 0).ThenBy(column => column.Number))
        {
            string numbered = $"{column.Number}/{string.Join('/', column.Heading.Numbers)}";
            if (!met.TryAdd(numbered, column) && met[numbered] is { } before)
                (column.Role, column.SetBy) = (ColumnRole.Unknown, $"heading; the column \"{before.Name}\" before it is used");
            else
                inOrder.Add(column);
        }

        return [.. inOrder];
    }

    // Cell A, cell B, cell C: letters in a row instead of numbers, over figures of a cell's size.
    private LogColumn[]? Lettered()
    {
        LogColumn[]? lettered = _all
            .Where(column => column.Number is null && column.Heading.Raw.Length > 2 && column.Heading.Raw[^1] is >= 'A' and <= 'Z' && !char.IsLetterOrDigit(column.Heading.Raw[^2]))
            .GroupBy(column => column.Heading.Raw[..^1])
            .Select(family => family.OrderBy(column => column.Heading.Raw[^1]).ToArray())
            .Where(family => family.Length >= 3 && family.Select((column, i) => column.Heading.Raw[^1] == 'A' + i).All(next => next) && IsCellSize(Middle(family)))
            .FirstOrDefault();
        for (int i = 0; i < lettered?.Length; i++)
            (lettered[i].Number, lettered[i].Unit) = (i + 1, null);
        return lettered;
    }

    // Names of other quantities rule a family out; figures of another size do too, unless there is no figure yet.
    private static bool IsVoltage(LogColumn[] family)
    {
        LogColumn first = family[0];
        if (first.Unit is not null && first.Unit.Of != Dimension.Voltage)
            return false;
        if (IsTemperature(family) && first.Unit?.Of != Dimension.Voltage)
            return false;
        double middle = Middle(family);
        if (first.Unit?.Of == Dimension.Voltage || IsNamedVoltage(family))
            return double.IsNaN(middle) || IsCellSize(middle) || family.Length >= 4;
        return first.Role is ColumnRole.Unknown or ColumnRole.Label or ColumnRole.Group or ColumnRole.Slot or ColumnRole.Signal or ColumnRole.Value
            && (IsCellSize(middle) || StackedVolts.Are(family));
    }

    private static bool IsNamedVoltage(LogColumn[] family) =>
        family[0].Role is ColumnRole.CellVoltage or ColumnRole.Voltage or ColumnRole.PackVoltage
        || ColumnNames.RolesOf(family[0].Heading, family[0].Unit).Any(role => role.Role == ColumnRole.CellVoltage && role.Fit > 40);

    private static bool IsTemperature(LogColumn[] family) =>
        family[0].Unit?.Of == Dimension.Temperature
        || (family[0].Unit is null && (family[0].Role == ColumnRole.Temperature || WarmNames.Contains(family[0].Heading.Joined)));

    private static double Middle(LogColumn[] family) => SomeFigures.Middle(family.SelectMany(column => SomeFigures.Measured(column.Sample)));

    private static bool IsCellSize(double middle) => middle is (> 0.9 and < 5) or (> 90 and < 500) or (> 900 and < 5000) or (> 9000 and < 50000);
}
