namespace PackPlanner.Core.Diagnosis;

/// <summary>What a log says of one series group.</summary>
/// <param name="Group">From 1, as in the log.</param>
/// <param name="CapacityAh">Charge between resting full and resting empty; null where the log holds no charge count, or does not read the group: then all its figures are.</param>
/// <param name="StateOfChargeOffset">State of charge less the median of all groups at the first row, as a fraction.</param>
/// <param name="ResistanceMilliohm">Voltage step over current step after one second, near half charge; null without steps of current.</param>
/// <param name="CapacityShare">Capacity over the median group's, which is known better than either.</param>
/// <param name="StateOfCharge">State of charge at the first row.</param>
/// <param name="LeakMilliamp">Charge lost with time beyond the median group; null when the log is too short.</param>
/// <param name="TapMillivolt">What its readings are too high by, or usually off by where its wire jumps; 0 when its taps are believed.</param>
/// <param name="Findings">Each finding once; empty for a sound group.</param>
public sealed record GroupDiagnosis(
    int Group, Ranged? CapacityAh, Ranged? StateOfChargeOffset, Ranged? ResistanceMilliohm, Ranged? CapacityShare,
    double? StateOfCharge, double? LeakMilliamp, double TapMillivolt, IReadOnlyList<FindingDetail> Findings);
