namespace PackPlanner.Formats.Logs;

/// <summary>Where the rows of a long log are put, and in which fields they are found.</summary>
/// <param name="Name">Field that names the cell or signal.</param>
/// <param name="Value">Field that holds the figure.</param>
/// <param name="Beside">Fields of the other columns.</param>
/// <param name="ValueName">Heading of the figure.</param>
/// <param name="Rows">How many rows there can be.</param>
internal sealed record LongColumns(int Name, int Value, int[] Beside, string ValueName, int Rows)
{
    /// <summary>A log with more names than this names something else than cells and signals.</summary>
    internal const int MostNames = 5000;

    internal double[] Moments { get; } = LargeArray.Of<double>(Rows);

    internal int[] NameOf { get; } = LargeArray.Of<int>(Rows);

    internal double[] Values { get; } = LargeArray.Of<double>(Rows);

    internal int[] Lines { get; } = LargeArray.Of<int>(Rows);

    internal double[][] BesideValues { get; } = [.. Beside.Select(_ => LargeArray.Of<double>(Rows))];
}
