namespace PackPlanner.Core.UsableEnergy;

/// <summary>What one discharge delivered.</summary>
/// <param name="TakenAh">Ampere-hours.</param>
/// <param name="DeliveredWh">Watt-hours at the pack's terminals.</param>
/// <param name="Hours">How long it took; 0 for a run at rest.</param>
/// <param name="SquareAH">Square of the current summed over time, ampere² hours.</param>
/// <param name="EndPackV">Volts of the pack at its end, under load.</param>
/// <param name="LowestGroup">Index of the group with the least volts then.</param>
/// <param name="ByController">True when the controller's limit ended it, not a cell.</param>
internal sealed record DischargeRun(
    double TakenAh, double DeliveredWh, double Hours, double SquareAH, double EndPackV, int LowestGroup, bool ByController)
{
    /// <summary>Root mean square of the current, amperes.</summary>
    internal double EffectiveA => Hours > 0 ? Math.Sqrt(SquareAH / Hours) : 0;
}
