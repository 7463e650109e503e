using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Tables;

/// <summary>Labels that are probably the same cell written in two ways.</summary>
public static class LabelClashes
{
    /// <summary>Groups of two or more labels that become alike without case, blanks, hyphens and leading zeros of numbers.</summary>
    internal static string[][] Among(IReadOnlyList<CellRow> rows) =>
    [
        .. rows.Select(row => row.Label).Distinct()
            .GroupBy(Bare)
            .Where(group => group.Count() > 1)
            .Select(group => group.Order(StringComparer.Ordinal).ToArray()),
    ];

    /// <summary>Labels of a job as a new table may have meant them.</summary>
    /// <param name="known">Labels that are there.</param>
    /// <param name="labels">Labels of the table.</param>
    /// <returns>The label that is there, by each that is written otherwise; none where two are there that it could be.</returns>
    public static IReadOnlyDictionary<string, string> Meant(IEnumerable<string> known, IEnumerable<string> labels)
    {
        string[] there = [.. known.Distinct(StringComparer.Ordinal)];
        ILookup<string, string> byBare = there.ToLookup(Bare, StringComparer.Ordinal);
        return labels.Distinct(StringComparer.Ordinal).Except(there, StringComparer.Ordinal)
            .Where(label => byBare[Bare(label)].Count() == 1)
            .ToDictionary(label => label, label => byBare[Bare(label)].Single(), StringComparer.Ordinal);
    }

    private static string Bare(string label)
    {
        System.Text.StringBuilder bare = new(label.Length);
        for (int i = 0; i < label.Length; i++)
        {
            bool leadingZero = label[i] == '0' && (i == 0 || !char.IsAsciiDigit(label[i - 1])) && i + 1 < label.Length && char.IsAsciiDigit(label[i + 1]);
            if (leadingZero)
            {
                while (i + 1 < label.Length && label[i] == '0' && char.IsAsciiDigit(label[i + 1]))
                    i++;
                i--;
                continue;
            }

            // "C-7" is "C7", but "1-2" is not "12".
            bool joins = label[i] is (' ' or '-' or '_') && i > 0 && i + 1 < label.Length && char.IsLetter(label[i - 1]) && char.IsAsciiDigit(label[i + 1]);
            if (!joins)
                bare.Append(char.ToUpperInvariant(label[i]));
        }

        return bare.ToString();
    }
}
