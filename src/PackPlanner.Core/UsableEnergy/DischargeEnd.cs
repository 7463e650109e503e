namespace PackPlanner.Core.UsableEnergy;

/// <summary>What ends a discharge.</summary>
/// <param name="EmptyV">Volts of a group.</param>
/// <param name="UnderLoad">Whether a group's loaded volts count, or its resting volts.</param>
/// <param name="PackEmptyV">Loaded volts of the whole pack at which the controller gives up; null: it does not.</param>
/// <param name="AfterWh">Watt-hours after which the rest is kept as a reserve; null: no reserve.</param>
internal sealed record DischargeEnd(double EmptyV, bool UnderLoad, double? PackEmptyV = null, double? AfterWh = null);
