namespace PackPlanner.Formats.Tables;

/// <summary>How a file was read: its kind, its marks, and each column with the reason for its reading.</summary>
public sealed record FileShape
{
    /// <summary>As the user named it.</summary>
    public required string File { get; init; }

    /// <summary>cells, tester-log, pack-log, or unknown for a table of nothing but labels and words.</summary>
    public required string Kind { get; init; }

    /// <summary>wide, long or steps.</summary>
    public required string Layout { get; init; }

    /// <summary>The separator: a comma, semicolon or bar as itself, tab or blanks.</summary>
    public required string Separator { get; init; }

    /// <summary>point or comma.</summary>
    public required string DecimalMark { get; init; }

    /// <summary>UTF-8, UTF-16 LE, UTF-16 BE, Windows-1252 or GB 18030.</summary>
    public required string Encoding { get; init; }

    /// <summary>Line of the heading, from 1; null when there is none.</summary>
    public int? HeadingLine { get; init; }

    /// <summary>Columns from the left.</summary>
    public required IReadOnlyList<ColumnReading> Columns { get; init; }

    /// <summary>discharge-positive, charge-positive or unsigned; null without a current, or where nothing tells.</summary>
    public string? CurrentSign { get; init; }

    /// <summary>Series groups in a log of a pack; null else.</summary>
    public int? Groups { get; init; }

    /// <summary>Rows used.</summary>
    public int Rows { get; init; }

    /// <summary>Gaps of a log: seconds since its start, and how long.</summary>
    public IReadOnlyList<LogGap> Gaps { get; init; } = [];
}

/// <summary>How one column was read.</summary>
/// <param name="Name">The heading, or "column 3" where there is none.</param>
/// <param name="ReadAs">What it was read as; "not used" where nothing needs it.</param>
/// <param name="Unit">The unit in the file; null for text and columns that are not used.</param>
/// <param name="SetBy">Why: "heading", "heading and values", "values", or the option that said so.</param>
public sealed record ColumnReading(string Name, string ReadAs, string? Unit, string SetBy);

/// <summary>A time without rows.</summary>
/// <param name="AtTimeS">Seconds from the start of the log to the last row before it.</param>
/// <param name="Seconds">How long it lasted.</param>
public sealed record LogGap(double AtTimeS, double Seconds);
