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

    /// <summary>The user said something of this column.</summary>
    internal bool IsChosen { get; set; }

    /// <summary>The moment of a row is read from it.</summary>
    internal bool TellsTime { get; set; }

    /// <summary>The user named the unit.</summary>
    internal bool UnitIsChosen { get; set; }

    /// <summary>The column holds words, read as 1 for discharge, -1 for charge and 0 for neither.</summary>
    internal bool HoldsDirections { get; set; }

    /// <summary>What is read from a word of such a column.</summary>
    internal Func<string, int> DirectionOf { get; set; } = DirectionWords.Of;

    /// <summary>The column is yes or no: yes is discharge where this is 1, charge where it is -1; 0 where it is no such column.</summary>
    internal int YesIs { get; set; }

    /// <summary>The cell's or probe's own number, null where it has none.</summary>
    internal int? Number { get; set; }

    /// <summary>Figures of the first rows, as written; NaN where there is none.</summary>
    internal double[] Sample { get; set; } = [];

    /// <summary>All figures, as written until they are converted.</summary>
    internal double[] Values { get; set; } = [];
}
