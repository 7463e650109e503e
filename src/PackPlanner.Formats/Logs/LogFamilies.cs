using PackPlanner.Core.Cells;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Finds the columns that belong together by their headings: the volts of the series groups, and the temperature probes.</summary>
internal sealed class LogFamilies
{
    private static readonly HashSet<string> WarmNames = new(StringComparer.Ordinal) { "t", "ts", "tc", "tb", "temp", "temps", "tmp", "ntc" };

    private static readonly string[] Roman = ["I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII", "XIII", "XIV", "XV", "XVI", "XVII", "XVIII", "XIX", "XX", "XXI", "XXII", "XXIII", "XXIV"];

    private readonly LogColumn[] _all;
    private readonly LogColumn[][] _families;

    private LogFamilies(LogColumn[] all)
    {
        _all = all;
        _families = [.. all.Where(column => column.Number is not null).GroupBy(column => (column.Heading.Family, column.Unit?.Of == Dimension.Temperature)).Select(family => family.ToArray())];
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
        inOrder = [.. inOrder, .. InSixteens(inOrder)];
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
        IOrderedEnumerable<LogColumn> ordered = counting.Aggregate(family.OrderBy(_ => 0), (sorted, at) => sorted.ThenBy(column => column.Heading.Numbers[at]));
        foreach (LogColumn column in ordered.ThenBy(column => column.Number))
        {
            string numbered = $"{column.Number}/{string.Join('/', column.Heading.Numbers)}";
            if (!met.TryAdd(numbered, column) && met[numbered] is { } before)
                (column.Role, column.SetBy) = (ColumnRole.Unknown, $"heading; the column \"{before.Name}\" before it is used");
            else
                inOrder.Add(column);
        }

        return [.. inOrder];
    }

    // Cell A, cell B or cell I, cell II: letters or Roman numbers in a row, over figures of a cell's size.
    private LogColumn[]? Lettered()
    {
        LogColumn[]? lettered = _all
            .Where(column => column.Number is null && LastWord(column).Length > 0)
            .GroupBy(column => column.Heading.Raw[..^LastWord(column).Length])
            .SelectMany(family => new[] { InRow(family, word => word.Length == 1 ? word[0] - 'A' : -1), InRow(family, word => Array.IndexOf(Roman, word)) })
            .FirstOrDefault(family => family.Length >= 3 && IsCellSize(Middle(family)));
        for (int i = 0; i < lettered?.Length; i++)
            (lettered[i].Number, lettered[i].Unit) = (i + 1, null);
        return lettered;
    }

    private static LogColumn[] InRow(IEnumerable<LogColumn> family, Func<string, int> place)
    {
        LogColumn[] inOrder = [.. family.OrderBy(column => place(LastWord(column)))];
        return inOrder.Select((column, i) => place(LastWord(column)) == i).All(next => next) ? inOrder : [];
    }

    // The capitals at the end of the heading, where something stands before them that is neither letter nor figure.
    private static string LastWord(LogColumn column)
    {
        string raw = column.Heading.Raw;
        int from = raw.Length;
        while (from > 0 && raw[from - 1] is >= 'A' and <= 'Z')
            from--;
        return from == raw.Length || from == 0 || char.IsLetterOrDigit(raw[from - 1]) ? "" : raw[from..];
    }

    // C8, C9, CA, CB: the numbers go on in letters, as a counter in sixteens does.
    private IEnumerable<LogColumn> InSixteens(LogColumn[] volts)
    {
        string last = volts[^1].Heading.Raw;
        if (!last.EndsWith('9') || last.Length < 2 || char.IsAsciiDigit(last[^2]))
            yield break;
        foreach (char letter in "ABCDEF")
        {
            LogColumn? next = Array.Find(_all, column => column.Number is null && column.Heading.Raw.Equals(last[..^1] + letter, StringComparison.OrdinalIgnoreCase) && IsCellSize(Middle([column])));
            if (next is null)
                yield break;
            (next.Number, next.Role, next.Unit) = (10 + letter - 'A', ColumnRole.CellVoltage, volts[^1].Unit);
            yield return next;
        }
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

    private static double Middle(LogColumn[] family) => Robust.UpperMedian(family.SelectMany(column => SomeFigures.Measured(column.Sample)));

    private static bool IsCellSize(double middle) => middle is (> 0.9 and < 5) or (> 90 and < 500) or (> 900 and < 5000) or (> 9000 and < 50000);
}
