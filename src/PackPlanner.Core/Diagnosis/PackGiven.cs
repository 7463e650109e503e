using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>What the owner of a pack knows besides its log.</summary>
/// <param name="Chemistry">Chemistry of the cells.</param>
/// <param name="Series">Groups in series.</param>
/// <param name="Parallel">Cells in parallel in each group; null when not known.</param>
/// <param name="RatedGroupAh">Capacity of one group when new, ampere-hours.</param>
/// <param name="FullV">Resting volts of a full group.</param>
/// <param name="EmptyV">Resting volts of an empty group.</param>
public sealed record PackGiven(Chemistry Chemistry, int Series, int? Parallel, double RatedGroupAh, double FullV, double EmptyV);
