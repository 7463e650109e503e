namespace PackPlanner.Formats.Tables;

/// <summary>One column of a table of cells: its place, what it is read as, its unit, and why.</summary>
internal sealed class CellColumn(int index, HeadingWords heading)
{
    internal int Index { get; } = index;

    internal HeadingWords Heading { get; } = heading;

    internal string Name => Heading.Raw.Length > 0 ? Heading.Raw : $"column {Index + 1}";

    internal ColumnRole Role { get; set; }

    internal FileUnit? Unit { get; set; }

    /// <summary>The heading tells a unit that its meaning cannot be read in.</summary>
    internal bool HasUnknownUnit { get; init; }

    internal string SetBy { get; set; } = "heading";

    /// <summary>How well the heading fits the role.</summary>
    internal int Fit { get; set; }
}
