using System.Globalization;
using PackPlanner.Core.Bench;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;

namespace PackPlanner.Formats.Words;

/// <summary>Names and sentences for verdicts and their reasons.</summary>
public static class VerdictWords
{
    /// <summary>use, hold or reject.</summary>
    public static string Name(Verdict verdict) => verdict switch
    {
        Verdict.Use => "use",
        Verdict.Hold => "hold",
        _ => "reject",
    };

    /// <summary>user, data-sheet, chemistry, lot-median or common-practice; null for none.</summary>
    public static string? Name(LimitOrigin? origin) => origin switch
    {
        LimitOrigin.User => "user",
        LimitOrigin.DataSheet => "data-sheet",
        LimitOrigin.Chemistry => "chemistry",
        LimitOrigin.LotMedian => "lot-median",
        LimitOrigin.CommonPractice => "common-practice",
        _ => null,
    };

    /// <summary>capacity, resistance, rest-voltage, self-discharge, condition or chemistry.</summary>
    public static string Name(ReadingName reading) => reading switch
    {
        ReadingName.Capacity => "capacity",
        ReadingName.Resistance => "resistance",
        ReadingName.RestVoltage => "rest-voltage",
        ReadingName.SelfDischarge => "self-discharge",
        ReadingName.Condition => "condition",
        _ => "chemistry",
    };

    /// <summary>The reading of that name; null when there is none.</summary>
    public static ReadingName? Reading(string name)
    {
        foreach (ReadingName reading in Enum.GetValues<ReadingName>())
            if (Name(reading) == name)
                return reading;
        return null;
    }

    /// <summary>dc, ac-1khz or unknown.</summary>
    public static string Name(ResistanceKind kind) => kind switch
    {
        ResistanceKind.Dc => "dc",
        ResistanceKind.Ac1Khz => "ac-1khz",
        _ => "unknown",
    };

    /// <summary>given, repeats or assumed.</summary>
    public static string Name(RepeatabilityOrigin origin) => origin switch
    {
        RepeatabilityOrigin.Given => "given",
        RepeatabilityOrigin.Repeats => "repeats",
        _ => "assumed",
    };

    /// <summary>told, too-early, coarse-meter, flat-curve, rose, no-curve, or not-measured for none.</summary>
    public static string Name(LeakAnswer? answer) => answer switch
    {
        LeakAnswer.Told => "told",
        LeakAnswer.TooEarly => "too-early",
        LeakAnswer.CoarseMeter => "coarse-meter",
        LeakAnswer.FlatCurve => "flat-curve",
        LeakAnswer.Rose => "rose",
        LeakAnswer.NoCurve => "no-curve",
        _ => "not-measured",
    };

    /// <summary>One reason as a few words: the value, the limit, whose limit it is.</summary>
    public static string Says(VerdictReason reason) => reason.Code switch
    {
        ReasonCodes.LowCapacity => $"{Ah(reason.Value)} Ah, under {Ah(reason.Limit)}",
        ReasonCodes.CapacityNearLimit => $"{Ah(reason.Value)} Ah, {Ah(reason.Limit - reason.Value)} under {Ah(reason.Limit)}: within twice its spread, repeat the test",
        ReasonCodes.NoCapacity => reason.Noted is { } words ? $"no whole capacity test (the table says: {words})" : "no whole capacity test",
        ReasonCodes.AbortedTest when reason.Noted is { } noted => $"test broken off, repeat it: {OneLine.Of(noted)}",
        ReasonCodes.AbortedTest => $"test ended at {V(reason.Value)} V, cut-off {V(reason.Limit)}: broken off, repeat it",
        ReasonCodes.RepeatsDisagree => $"its tests differ by {Text(reason.Value, "0")} %: one was broken off, or two cells share this label",
        ReasonCodes.HighResistance => $"{Milliohm(reason.Value)} mΩ, above {Milliohm(reason.Limit)}",
        ReasonCodes.ResistanceNearLimit => $"{Milliohm(reason.Value)} mΩ, above {Milliohm(reason.Limit)} by less than twice its spread: measure again",
        ReasonCodes.UnlikeItsLot => $"{Unlike(reason)}, unlike its lot (median {Text(reason.Limit, "0.####")})",
        ReasonCodes.NotChecked => $"{Name(reason.What)} not checked{Noted(reason)}",
        ReasonCodes.RequiredReadingMissing => $"{Name(reason.What)} is required and missing{Noted(reason)}",
        ReasonCodes.DeepDischarge => $"rests at {V(reason.Value)} V, limit {V(reason.Limit)}: not to be charged again",
        ReasonCodes.BelowCutOff => $"rests at {V(reason.Value)} V, at or under its cut-off {V(reason.Limit)}",
        ReasonCodes.NegativeVoltage => $"reads {V(reason.Value)} V: probes swapped, or reversed",
        ReasonCodes.AboveChargeLimit => $"rests at {V(reason.Value)} V, charge limit and 0.05 V are {V(reason.Limit)}",
        ReasonCodes.DeepDischargeHistory => $"was at {V(reason.Value)} V once, under {V(reason.Limit)}",
        ReasonCodes.Damaged => $"noted: {reason.Noted}",
        ReasonCodes.LosesCharge => $"loses {Text(reason.Value, "0.##")} {reason.Unit}, {(reason.LimitFrom == LimitOrigin.LotMedian ? "its lot" : "limit")} {Text(reason.Limit, "0.##")}",
        ReasonCodes.OtherChemistry => $"{reason.Noted}, not the chemistry of the lot",
        ReasonCodes.TestedOtherwise => $"tested at {Figure(reason)} {Unit(reason)}, most of the lot at {Text(reason.Limit, "0.##")}",
        ReasonCodes.ByHand => $"by hand: {reason.Noted}",
        _ => reason.Code,
    };

    /// <summary>Reasons that rest on one figure, which is said once.</summary>
    /// <param name="reasons">One or more with the same value.</param>
    /// <returns>The words.</returns>
    public static string Says(IReadOnlyList<VerdictReason> reasons) =>
        reasons.Count == 2 && reasons[0].Code != ReasonCodes.UnlikeItsLot && reasons[1] is { Code: ReasonCodes.UnlikeItsLot } lot
            ? $"{Says(reasons[0])}, and unlike its lot (median {Text(lot.Limit, "0.####")})"
            : string.Join("; ", reasons.Select(Says));

    private static string Unlike(VerdictReason reason) => reason.What switch
    {
        ReadingName.Capacity => $"{Ah(reason.Value)} Ah",
        ReadingName.Resistance => $"{Milliohm(reason.Value)} mΩ",
        ReadingName.RestVoltage => $"rests at {V(reason.Value)} V",
        _ => $"{Name(reason.What)} {Figure(reason)} {Unit(reason)}",
    };

    private static string Noted(VerdictReason reason) => reason.Noted switch
    {
        null => "",
        nameof(LeakAnswer.TooEarly) => ": too early",
        nameof(LeakAnswer.CoarseMeter) => ": cannot tell, the meter is too coarse",
        nameof(LeakAnswer.FlatCurve) => ": cannot tell, the resting curve is flat here",
        nameof(LeakAnswer.Rose) => ": cannot tell, the volts rose",
        "no limit" => ": no rated capacity, and too few cells for a median",
        string words => $": \"{words}\"",
    };

    private static string Unit(VerdictReason reason) => reason.Unit switch
    {
        "mohm" => "mΩ",
        "degC" => "°C",
        string unit => unit,
    };

    private static string Figure(VerdictReason reason) => Text(reason.Value, "0.####");

    private static string Ah(double? value) => Text(value, "0.000");

    private static string V(double? value) => Text(value, "0.000");

    private static string Milliohm(double? value) => Text(value, "0.0#");

    private static string Text(double? figure, string format) => figure?.ToString(format, CultureInfo.InvariantCulture) ?? "-";
}
