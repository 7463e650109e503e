namespace PackPlanner.Formats.Tables;

/// <summary>Gathers what the figures of a file say about its decimal mark.</summary>
/// <remarks>
/// "3,7" can only have a decimal comma and "1,234.5" only a decimal point. "2,850" can have either; it counts apart,
/// and is settled by what the figure would mean (<see cref="Ambiguous"/>).
/// </remarks>
internal sealed class DecimalVote
{
    private readonly List<(int Column, string Figure, bool Comma)> _ambiguous = [];

    /// <summary>Figures that only a decimal point allows.</summary>
    internal int Points { get; private set; }

    /// <summary>Figures that only a decimal comma allows.</summary>
    internal int Commas { get; private set; }

    /// <summary>An example of each, for the message.</summary>
    internal (string? Point, string? Comma) Examples { get; private set; }

    /// <summary>Figures like 2,850 (Comma) or 2.850, with their column.</summary>
    internal IReadOnlyList<(int Column, string Figure, bool Comma)> Ambiguous => _ambiguous;

    /// <summary>Looks at one field.</summary>
    /// <param name="column">Its column, kept for the ambiguous ones.</param>
    /// <param name="field">The text.</param>
    internal void Look(int column, string field)
    {
        (string figure, string rest) = Figures.Split(field);
        if (figure.Length == 0 || (rest.Length > 0 && FileUnit.Find(rest) is null))
            return;
        int points = figure.AsSpan().Count('.');
        int commas = figure.AsSpan().Count(',');
        if (points + commas == 0)
            return;
        if (points > 0 && commas > 0)
            Count(figure, figure.LastIndexOf('.') > figure.LastIndexOf(','));
        else if (points + commas > 1)
            CountGrouped(figure, commas > 1);
        else if (CouldBeGrouped(figure))
            _ambiguous.Add((column, figure, commas == 1));
        else
            Count(figure, points == 1);
    }

    // 1.234.567 has points between thousands, so that its decimals could only follow a comma; 23.05.2024 is a date and tells nothing.
    private void CountGrouped(string figure, bool point)
    {
        string[] groups = figure.TrimStart('+', '-').Split('.', ',');
        if (groups[0].Length is >= 1 and <= 3 && groups.Skip(1).All(group => group.Length == 3) && groups.All(group => group.All(char.IsAsciiDigit)))
            Count(figure, point);
    }

    private void Count(string figure, bool point)
    {
        if (point)
        {
            Points++;
            Examples = (Examples.Point ?? figure, Examples.Comma);
        }
        else
        {
            Commas++;
            Examples = (Examples.Point, Examples.Comma ?? figure);
        }
    }

    /// <summary>One to three digits, not a lone zero, the mark, exactly three digits.</summary>
    internal static bool CouldBeGrouped(string figure)
    {
        string plain = figure.TrimStart('+', '-');
        int mark = plain.IndexOfAny(['.', ',']);
        return mark is >= 1 and <= 3 && plain.Length == mark + 4 && plain[0] != '0' && plain[(mark + 1)..].All(char.IsAsciiDigit);
    }
}
