namespace PackPlanner.Screens.Tables;

/// <summary>One column of a table on screen.</summary>
/// <param name="Heading">With its unit.</param>
/// <param name="Text">What stands in a row; unknown is a dash.</param>
/// <param name="Number">The figure behind it, for sorting and conditions; null for a column of words.</param>
/// <param name="Least">Columns it needs at least.</param>
/// <param name="Rank">The lowest ranks stay when there is not room for all.</param>
internal sealed record Column(string Heading, Func<int, string> Text, Func<int, double?>? Number = null, int Least = 4, int Rank = 1)
{
    /// <summary>Figures stand on the point, words at the left.</summary>
    internal bool IsRight { get; init; } = Number is not null;

    /// <summary>Takes what room is left; at most one column does.</summary>
    internal bool Stretches { get; init; }

    /// <summary>Hidden until the user asks for it.</summary>
    internal bool StartsHidden { get; init; }

    /// <summary>Cut in the middle when too long, as labels are.</summary>
    internal bool CutsMiddle { get; init; }

    /// <summary>What is drawn instead of the whole text, which is still found and filtered by.</summary>
    internal Func<int, string>? Drawn { get; init; }

    /// <summary>Cut after a whole word when too long, so that no label stands there as half of another.</summary>
    internal bool CutsAtWords { get; init; }

    /// <summary>How what stands in a row stands out.</summary>
    internal Func<int, Drawing.Ink> InkOf { get; init; } = _ => Drawing.Ink.Plain;
}
