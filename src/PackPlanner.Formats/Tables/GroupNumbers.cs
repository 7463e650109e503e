using System.Globalization;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Tables;

/// <summary>The parallel group of each row, from 1, however the table numbers or names its groups.</summary>
internal sealed class GroupNumbers
{
    private const int NamedInSentence = 6;
    private readonly int?[] _numbers;

    private GroupNumbers(int?[] numbers, string? understood) => (_numbers, Understood) = (numbers, understood);

    /// <summary>What was assumed; null when nothing was.</summary>
    internal string? Understood { get; }

    /// <summary>The group of a row; null where the row has none.</summary>
    internal int? this[int row] => _numbers[row];

    /// <summary>Reads the column of groups.</summary>
    /// <param name="source">The file, for a refusal.</param>
    /// <param name="column">The column; null where the table has none.</param>
    /// <param name="rows">The rows of data.</param>
    /// <param name="fromOne">Group 0 is an error.</param>
    /// <param name="remarks">Told of each row whose entry is no number among numbers.</param>
    internal static Outcome<GroupNumbers> Of(SourceFile source, CellColumn? column, IReadOnlyList<TextRow> rows, bool fromOne, CellRemarks remarks)
    {
        if (column is null)
            return new GroupNumbers(new int?[rows.Count], null);
        string[] entries = [.. rows.Select(row => row[column.Index]).Select(entry => RowWords.IsNoFigure(entry) ? "" : entry)];
        if (Array.FindIndex(entries, IsBroken) is var broken and >= 0)
            return Refusal.Input("not-understood", $"{source.Name}, column {column.Name}, line {rows[broken].Line}", $"\"{OneLine.Of(entries[broken])}\" is no number of a group",
                "Number the groups 1, 2, 3; leave the field empty where a cell is in no group.");
        int?[] numbers = [.. entries.Select(NumberOf)];
        if (Array.TrueForAll(numbers, number => number is null) || ShareNumbers(entries))
            return ByName(column, entries);
        if (fromOne && Array.IndexOf(numbers, 0) is var zero and >= 0)
            return Refusal.Input("contradiction", $"{source.Name}, column {column.Name}, line {rows[zero].Line}", "there is no group 0: groups are counted from 1, as match names them",
                "Number the groups 1, 2, 3; leave the row out where a cell may go into any group.");
        for (int i = 0; i < entries.Length; i++)
            if (numbers[i] is null && entries[i].Length > 0)
                remarks.NoGroup(rows[i], column);
        return numbers.Contains(0) ? FromZero(source, column, numbers) : new GroupNumbers(numbers, null);
    }

    // 1.5 and -1 are figures, but of no group.
    private static bool IsBroken(string entry) =>
        double.TryParse(entry.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out double figure) && !(figure >= 0 && figure < 1e6 && figure == Math.Floor(figure));

    // 1, 1.0 as a spreadsheet or a script writes it, group 1, P1.
    private static int? NumberOf(string entry) =>
        double.TryParse(entry.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out double figure) ? (int)figure : new HeadingWords(entry).Number;

    // A1 and B1, or S1P2 and S2P2, are two groups.
    private static bool ShareNumbers(string[] entries) =>
        entries.Where(entry => entry.Any(char.IsLetter)).Distinct().Select(entry => (Plain: HeadingWords.Plain(entry), new HeadingWords(entry).Numbers))
            .Where(name => name.Numbers.Count > 0).Select(name => (Last: name.Numbers[^1], Whole: name.Plain + string.Join('-', name.Numbers))).Distinct()
            .GroupBy(name => name.Last).Any(same => same.Count() > 1);

    private static GroupNumbers ByName(CellColumn column, string[] entries)
    {
        string[] names = [.. entries.Where(entry => entry.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase)];
        if (names.Length == 0)
            return new GroupNumbers(new int?[entries.Length], null);
        if (names.All(name => name.Length == 1))
            Array.Sort(names, StringComparer.OrdinalIgnoreCase);
        string said = string.Join(", ", names.Take(NamedInSentence).Select((name, i) => $"{OneLine.Of(name)} is {i + 1}"));
        return new GroupNumbers(
            [.. entries.Select(entry => Array.FindIndex(names, name => name.Equals(entry, StringComparison.OrdinalIgnoreCase)) is var at and >= 0 ? at + 1 : (int?)null)],
            $"Column {column.Name} names its groups; they are numbered here: {said}{(names.Length > NamedInSentence ? " and so on" : "")}.");
    }

    // Zero is the first group, or it says that a cell is in none: as many cells as in another group make it a group.
    private static Outcome<GroupNumbers> FromZero(SourceFile source, CellColumn column, int?[] numbers)
    {
        int[] others = [.. numbers.Where(number => number > 0).GroupBy(number => number).Select(group => group.Count())];
        int inZero = numbers.Count(number => number == 0);
        if (others.Length > 0 && (inZero < others.Min() || inZero > others.Max()))
            return Refusal.Input("two-readings", $"{source.Name}, column {column.Name}",
                $"{inZero} rows have group 0, the other groups {(others.Min() == others.Max() ? $"{others.Min()}" : $"{others.Min()} to {others.Max()}")}: it can be the first group, or cells that are in none",
                "Number the groups from 1, and leave the field empty where a cell is in no group.");
        return new GroupNumbers([.. numbers.Select(number => number + 1)], $"Column {column.Name} numbers its groups from 0; they are counted from 1 here: group 0 is group 1.");
    }
}
