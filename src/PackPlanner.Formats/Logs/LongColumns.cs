namespace PackPlanner.Formats.Logs;

/// <summary>Where the rows of a long log are put, and in which fields they are found.</summary>
/// <remarks>Rows that follow one another with the same stamp are one run; what is the same for all its rows is kept once.</remarks>
/// <param name="Name">Field that names the cell or signal.</param>
/// <param name="Value">Field that holds the figure.</param>
/// <param name="Beside">Fields of the other columns.</param>
/// <param name="ValueName">Heading of the figure.</param>
/// <param name="Rows">How many rows there can be.</param>
internal sealed record LongColumns(int Name, int Value, int[] Beside, string ValueName, int Rows)
{
    /// <summary>A log with more names than this names something else than cells and signals.</summary>
    internal const int MostNames = 5000;

    /// <summary>The number of a row whose name is no cell's and no signal's.</summary>
    internal const ushort NoName = ushort.MaxValue;

    /// <summary>Number of the name of each row.</summary>
    internal ushort[] NameOf { get; } = LargeArray.Of<ushort>(Rows);

    internal double[] Values { get; } = LargeArray.Of<double>(Rows);

    internal double[][] BesideValues { get; } = [.. Beside.Select(_ => LargeArray.Of<double>(Rows))];

    /// <summary>The runs, shape [runs]: there are mostly far fewer of them than rows, and memory that is not touched costs nothing.</summary>
    internal double[] RunMoments { get; } = LargeArray.Of<double>(Rows);

    /// <summary>Line of the first row of each run.</summary>
    internal int[] RunLines { get; } = LargeArray.Of<int>(Rows);

    /// <summary>Place of the first row of each run.</summary>
    internal int[] RunStarts { get; } = LargeArray.Of<int>(Rows);

    /// <summary>How many rows each run has.</summary>
    internal int[] RunLengths { get; } = LargeArray.Of<int>(Rows);
}
