namespace PackPlanner.Core.Sizing;

/// <summary>What the need says before any S or P is chosen.</summary>
/// <param name="WhPerKm">Watt-hours per kilometre.</param>
/// <param name="EnergyDeliveredWh">Watt-hours to be delivered over the range.</param>
/// <param name="EnergyNominalNeededWh">Rated watt-hours that this takes.</param>
public sealed record NeedFigures(double? WhPerKm, double? EnergyDeliveredWh, double? EnergyNominalNeededWh);
