namespace PackPlanner.Core.Screening;

/// <summary>Where a limit comes from.</summary>
public enum LimitOrigin
{
    /// <summary>The user stated it.</summary>
    User,

    /// <summary>The cell's rated figure, as its data sheet or the table gives it.</summary>
    DataSheet,

    /// <summary>The chemistry's usual figure.</summary>
    Chemistry,

    /// <summary>The median of the cells of the same model in this lot.</summary>
    LotMedian,

    /// <summary>A habit of the trade without a source.</summary>
    CommonPractice,
}
