using System.Globalization;

namespace PackPlanner.Formats.Tables;

/// <summary>What the user said of the columns of the files that are read. It notes which of it was of use.</summary>
/// <param name="all">One for each column.</param>
/// <param name="setBy">What the answer names as the reason, such as --column.</param>
public sealed class ColumnChoices(IReadOnlyList<ColumnChoice> all, string setBy)
{
    private readonly HashSet<string> _met = new(StringComparer.Ordinal);

    /// <summary>Nothing was said.</summary>
    public static ColumnChoices None { get; } = new([], "");

    /// <summary>One for each column.</summary>
    public IReadOnlyList<ColumnChoice> All => all;

    /// <summary>Choices whose column was in none of the files read so far.</summary>
    public IEnumerable<ColumnChoice> Unmet => all.Where(choice => !_met.Contains(choice.Name));

    internal string SetBy => setBy;

    /// <summary>What was said of a column; null when nothing was.</summary>
    /// <param name="heading">The heading as in the file.</param>
    /// <param name="index">Its place from 0; -1 for a name in the rows of a long log.</param>
    internal ColumnChoice? For(string heading, int index)
    {
        if (all.Count == 0)
            return null;
        string place = index < 0 ? "" : "#" + (index + 1).ToString(CultureInfo.InvariantCulture);
        ColumnChoice? found = all.FirstOrDefault(choice => choice.Name.Equals(heading.Trim(), StringComparison.OrdinalIgnoreCase))
            ?? all.FirstOrDefault(choice => choice.Name == place);
        if (found is not null)
            _met.Add(found.Name);
        return found;
    }
}
