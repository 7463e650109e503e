namespace PackPlanner.Core.Jobs;

/// <summary>What a file of a job was read as.</summary>
public enum SourceKind
{
    /// <summary>A table with a row for each test of a cell.</summary>
    Cells,

    /// <summary>A log of a ride or a charge with volts for each group.</summary>
    PackLog,

    /// <summary>Which cells stand in which group.</summary>
    Groups,

    /// <summary>A cavity with its cell and clearances.</summary>
    FitCase,

    /// <summary>Where the cells go in a cavity.</summary>
    FitAnswer,

    /// <summary>What the vehicle needs.</summary>
    SizeNeed,
}
