namespace PackPlanner.Core.Bench;

/// <summary>One resistance from one step of the current: the step of volts over the step of current, after a stated time.</summary>
/// <param name="AtTimeS">When the current stepped, seconds of the log's clock.</param>
/// <param name="ResistanceMilliohm">Milliohm, of the whole string where the log is of a string.</param>
/// <param name="AfterS">Seconds between the step and the reading of volts.</param>
/// <param name="StepA">Change of current, amperes, discharge positive.</param>
/// <param name="SwitchedOn">True where the current grew, false where it was taken off.</param>
/// <param name="HeldS">How long the new current was held, seconds.</param>
/// <param name="DischargedAh">Net charge taken out since the log began, ampere-hours.</param>
public sealed record PulseReading(
    double AtTimeS, double ResistanceMilliohm, double AfterS, double StepA, bool SwitchedOn, double HeldS, double DischargedAh);
