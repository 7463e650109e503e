namespace PackPlanner.Core.UsableEnergy;

/// <summary>One group of the series string, as far as it is known.</summary>
/// <param name="Number">Number, from 1 at pack minus.</param>
/// <param name="CapacityAh">Ampere-hours of the group, above zero.</param>
/// <param name="ResistanceMilliohm">DC resistance of the group, milliohm; null when unknown.</param>
/// <param name="StateOfChargeFraction">Where it stood against the others at one moment, 0..1; null: not known to differ.</param>
/// <param name="Parallel">Cells in parallel in it; null when unknown.</param>
/// <param name="FirstInstantMilliohm">1 kHz resistance of the group, milliohm; null when unknown.</param>
/// <param name="LargestShareTimes">Current of its hardest-worked cell over an equal share; null when unknown.</param>
public sealed record SeriesGroup(
    int Number,
    double CapacityAh,
    double? ResistanceMilliohm,
    double? StateOfChargeFraction = null,
    int? Parallel = null,
    double? FirstInstantMilliohm = null,
    double? LargestShareTimes = null)
{
    /// <summary>Which of its cells have no resistance, where that is why <see cref="ResistanceMilliohm"/> is not known.</summary>
    public MissingReadings? Missing { get; init; }

    /// <summary>One standard deviation of <see cref="CapacityAh"/>, ampere-hours; null: as tests of its cells repeat.</summary>
    public double? CapacitySigmaAh { get; init; }

    /// <summary>One standard deviation of <see cref="ResistanceMilliohm"/>, milliohm; null: as such readings usually repeat.</summary>
    public double? ResistanceSigmaMilliohm { get; init; }

    /// <summary>One standard deviation of <see cref="StateOfChargeFraction"/>; null: taken as exact.</summary>
    public double? StateOfChargeSigma { get; init; }
}
