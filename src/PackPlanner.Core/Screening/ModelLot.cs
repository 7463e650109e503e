namespace PackPlanner.Core.Screening;

/// <summary>The cells of one model within a lot, and what is usual among them.</summary>
/// <param name="Model">The model's name; null where the table names none.</param>
/// <param name="Count">Cells.</param>
/// <param name="RatedAh">Capacity of a new cell; null when unknown.</param>
/// <param name="MedianCapacityAh">Over its cells with a usable capacity, before any verdict; null when none has one.</param>
/// <param name="MedianResistanceMilliohm">Over its cells with a usable resistance; null when none has one.</param>
/// <param name="LeastAh">Capacity limit; null when none could be set.</param>
/// <param name="LeastFrom">Whose limit that is.</param>
/// <param name="LeastFraction">The fraction of the rated or median capacity that the limit is.</param>
/// <param name="RatedLimitSetAside">True where 80 % of rated would have turned away the middle of the lot, so that the lot's median was taken instead.</param>
public sealed record ModelLot(
    string? Model,
    int Count,
    double? RatedAh,
    double? MedianCapacityAh,
    double? MedianResistanceMilliohm,
    double? LeastAh,
    LimitOrigin? LeastFrom,
    double LeastFraction,
    bool RatedLimitSetAside);
