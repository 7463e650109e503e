namespace PackPlanner.Core.Bench;

/// <summary>Why a log's volts seem to be read through leads or a contact that carry the current.</summary>
/// <param name="ResistanceMilliohm">Median resistance at the first instant.</param>
/// <param name="SwitchOnMilliohm">The same at switching on alone.</param>
/// <param name="SwitchOffMilliohm">The same at switching off alone.</param>
/// <param name="DropV">What it takes off the volts at the current of the test.</param>
/// <param name="TimesUsual">How many times the most that a cell of this capacity has.</param>
public sealed record LeadFinding(
    double ResistanceMilliohm, double SwitchOnMilliohm, double SwitchOffMilliohm, double DropV, double TimesUsual);
