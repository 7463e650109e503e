using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>capacity --json</c> prints.</summary>
public sealed record CapacityAnswer : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/capacity";

    /// <summary>Charges and discharges in the order of the files.</summary>
    public required IReadOnlyList<CapacityTestStepJson> Tests { get; init; }

    /// <summary>Resistances at the steps of the current.</summary>
    public required IReadOnlyList<PulseJson> Pulses { get; init; }

    /// <summary>Rests of a day or more.</summary>
    public required IReadOnlyList<RestJson> Rests { get; init; }

    /// <summary>Each file: its sensor's offset and what points to leads in its volts.</summary>
    public required IReadOnlyList<CurveFileJson> Files { get; init; }
}

/// <summary>One charge or discharge.</summary>
public sealed record CapacityTestStepJson
{
    /// <summary>File.</summary>
    public required string File { get; init; }

    /// <summary>charge or discharge.</summary>
    public required string Step { get; init; }

    /// <summary>Seconds since the file's first row.</summary>
    public required double FromTimeS { get; init; }

    /// <summary>Seconds since the file's first row.</summary>
    public required double ToTimeS { get; init; }

    /// <summary>Charge of the whole step, a constant-voltage tail included, positive.</summary>
    public required double ChargeAh { get; init; }

    /// <summary>Energy of the whole step, positive.</summary>
    public required double EnergyWh { get; init; }

    /// <summary>Charge at the first sample at or below the cut-off; null for a charge or where it was not reached.</summary>
    public required double? ChargeToCutOffAh { get; init; }

    /// <summary>The cut-off meant.</summary>
    public required double? CutOffV { get; init; }

    /// <summary>Mean current, positive.</summary>
    public required double? MeanCurrentA { get; init; }

    /// <summary>Volts before the current came on, where the log shows them.</summary>
    public required double StartV { get; init; }

    /// <summary>Volts in the last row with current.</summary>
    public required double EndV { get; init; }

    /// <summary>cut-off, current-taper, aborted or unknown.</summary>
    public required string EndedBy { get; init; }

    /// <summary>Mean temperature.</summary>
    public required double? MeanTemperatureDegC { get; init; }

    /// <summary>The tester's own count.</summary>
    public required double? CounterAh { get; init; }

    /// <summary>This count less the tester's, percent of the tester's.</summary>
    public required double? CounterDifferencePercent { get; init; }

    /// <summary>The tester's own count of energy.</summary>
    public required double? CounterWh { get; init; }

    /// <summary>Longest time between two rows inside it.</summary>
    public required double LongestGapS { get; init; }

    /// <summary>Seconds of holes in it for which no charge is counted, because nothing shows that the current went on.</summary>
    public required double NotCountedS { get; init; }
}

/// <summary>One resistance.</summary>
/// <param name="AtTimeS">When the current stepped, seconds since the file's first row.</param>
/// <param name="ResistanceMilliohm">Milliohm, of the string where the log is of a string.</param>
/// <param name="AfterS">Seconds after the step.</param>
/// <param name="StepA">Change of current, discharge positive.</param>
/// <param name="Edge">on or off.</param>
/// <param name="HeldS">How long the new current was held.</param>
/// <param name="DischargedAh">Net charge taken out since the log began.</param>
/// <param name="File">File.</param>
/// <param name="WithLeads">True where the file's volts seem to be read through leads or a contact.</param>
public sealed record PulseJson(
    double AtTimeS, double ResistanceMilliohm, double AfterS, double StepA, string Edge, double HeldS, double DischargedAh, string File, bool WithLeads);

/// <summary>One long rest.</summary>
/// <param name="File">File.</param>
/// <param name="FromTimeS">Seconds.</param>
/// <param name="ToTimeS">Seconds.</param>
/// <param name="StartV">Volts.</param>
/// <param name="EndV">Volts.</param>
/// <param name="MillivoltPerDay">Fall over its second half.</param>
/// <param name="PercentPerMonth">Charge lost; null when it cannot be told.</param>
/// <param name="Answer">told, too-early, coarse-meter, flat-curve, rose or no-curve.</param>
public sealed record RestJson(
    string File, double FromTimeS, double ToTimeS, double StartV, double EndV, double MillivoltPerDay, double? PercentPerMonth, string Answer);

/// <summary>One file.</summary>
/// <param name="File">File.</param>
/// <param name="RestOffsetA">Current shown at rest, discharge positive; null without a rest.</param>
/// <param name="OffsetCorrected">True where it was taken off.</param>
/// <param name="SeriesGroups">Series groups whose volts stand beside the string's.</param>
/// <param name="Leads">What points to leads; null when nothing does.</param>
public sealed record CurveFileJson(string File, double? RestOffsetA, bool OffsetCorrected, int SeriesGroups, LeadsJson? Leads);

/// <summary>Leads or a contact in the voltage reading.</summary>
/// <param name="ResistanceMilliohm">Median at the first instant.</param>
/// <param name="SwitchOnMilliohm">At switching on.</param>
/// <param name="SwitchOffMilliohm">At switching off.</param>
/// <param name="DropV">What it takes off the volts.</param>
/// <param name="TimesUsual">How many times the most that a cell of this capacity has.</param>
public sealed record LeadsJson(double ResistanceMilliohm, double SwitchOnMilliohm, double SwitchOffMilliohm, double DropV, double TimesUsual);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(CapacityAnswer))]
public sealed partial class CapacityAnswerContext : JsonSerializerContext;
