using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>One column of a log: its place, what it is read as, its unit and why, and its figures once they are read.</summary>
internal sealed class LogColumn(int index, HeadingWords heading)
{
    internal int Index { get; } = index;

    internal HeadingWords Heading { get; } = heading;

    internal string Name => Heading.Raw.Length > 0 ? Heading.Raw : $"column {Index + 1}";

    internal ColumnRole Role { get; set; }

    internal int Fit { get; set; }

    internal FileUnit? Unit { get; set; }

    internal string SetBy { get; set; } = "heading";

    /// <summary>The cell's or probe's own number, null where it has none.</summary>
    internal int? Number { get; set; }

    /// <summary>Figures of the first rows, as written; NaN where there is none.</summary>
    internal double[] Sample { get; set; } = [];

    /// <summary>All figures, as written until they are converted.</summary>
    internal double[] Values { get; set; } = [];
}
