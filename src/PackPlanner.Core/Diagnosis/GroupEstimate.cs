namespace PackPlanner.Core.Diagnosis;

/// <summary>One group's figures from the fit, with standard deviations widened to what fits turn out to be worth.</summary>
/// <param name="CapacityAh">Ampere-hours.</param>
/// <param name="CapacitySd">Of its logarithm.</param>
/// <param name="Share">Capacity over the median.</param>
/// <param name="ShareSd">Of its logarithm.</param>
/// <param name="Charge">State of charge at the first row.</param>
/// <param name="Offset">Less the median.</param>
/// <param name="OffsetSd">Of the offset.</param>
/// <param name="ResistanceOhm">After one second, near half charge.</param>
/// <param name="ResistanceSd">Of its logarithm.</param>
/// <param name="TotalShare">Resistance after one second over the median's.</param>
/// <param name="CellsShare">What answers slowly over the median's.</param>
/// <param name="CellsSd">Of that.</param>
/// <param name="JointShare">What answers at once only, over the median's resistance.</param>
/// <param name="LeakA">Beyond the median group.</param>
/// <param name="LeakSd">Of that, amperes.</param>
/// <param name="TapV">Tap error; where the wire jumps, how far the readings usually stand off.</param>
internal sealed record GroupEstimate(
    double CapacityAh, double CapacitySd, double Share, double ShareSd, double Charge, double Offset, double OffsetSd,
    double ResistanceOhm, double ResistanceSd, double TotalShare, double CellsShare, double CellsSd, double JointShare,
    double LeakA, double LeakSd, double TapV);
