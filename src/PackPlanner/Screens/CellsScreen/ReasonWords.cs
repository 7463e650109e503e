using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>Reasons of a verdict in a builder's words.</summary>
internal static class ReasonWords
{
    /// <summary>One short line for the table: the gravest reason, else what was not checked.</summary>
    internal static string Short(ScreenedCell cell, Look look)
    {
        VerdictReason? first = cell.Reasons.FirstOrDefault(reason => reason.Bears != Verdict.Use || reason.Code == ReasonCodes.ByHand);
        // A verdict by hand that safety does not let stand must not hide why.
        if (first is { Code: ReasonCodes.ByHand } && first.Bears < cell.Verdict && cell.Reasons.FirstOrDefault(reason => reason.Bears == cell.Verdict) is { } graver)
            return $"{Of(graver, look)}; your \"{VerdictWords.Name(first.Bears)}\" does not stand";
        if (first is not null)
            return Of(first, look);
        string unchecked_ = string.Join(", ", cell.Reasons.Where(reason => reason.Code == ReasonCodes.NotChecked).Select(Unchecked));
        if (unchecked_.Length > 0)
            return $"not checked: {unchecked_}";
        return cell.Reasons.Count > 0 ? Of(cell.Reasons[0], look) : "";
    }

    /// <summary>One reason.</summary>
    internal static string Of(VerdictReason reason, Look look)
    {
        int decimals = reason.Unit == "milliohm" ? 1 : 3;
        string value = look.Figure(reason.Value, decimals);
        string limit = look.Figure(reason.Limit, reason.What == ReadingName.Capacity ? 2 : decimals);
        return reason.Code switch
        {
            ReasonCodes.LowCapacity or ReasonCodes.CapacityNearLimit => $"{look.Figure(reason.Limit - reason.Value, 3)} under {limit}",
            ReasonCodes.NoCapacity => "no capacity test",
            ReasonCodes.AbortedTest when reason.Noted is { } noted => $"test broken off: {OneLine.Of(noted)}",
            ReasonCodes.AbortedTest => $"test broken off at {value} V, cut-off {look.Figure(reason.Limit, 2)}",
            ReasonCodes.HighResistance or ReasonCodes.ResistanceNearLimit => $"{look.Figure(reason.Value - reason.Limit, 1)} mΩ over {limit}",
            ReasonCodes.UnlikeItsLot => $"{What(reason.What)} far from its lot",
            ReasonCodes.NotChecked => $"not checked: {Unchecked(reason)}",
            ReasonCodes.RequiredReadingMissing => $"lacks {What(reason.What)}, which you require",
            ReasonCodes.DeepDischarge => $"rests at {value} V, under {look.Figure(reason.Limit, 2)}: not charged again",
            ReasonCodes.BelowCutOff => $"rests at {value} V, under cut-off {look.Figure(reason.Limit, 2)}",
            ReasonCodes.NegativeVoltage => $"negative volts: {value}",
            ReasonCodes.AboveChargeLimit => $"rests at {value} V, over {look.Figure(reason.Limit, 2)}",
            ReasonCodes.DeepDischargeHistory => $"once at {value} V: deep discharge",
            ReasonCodes.Damaged => $"damaged: {reason.Noted}",
            ReasonCodes.LosesCharge => $"loses charge: {look.Figure(reason.Value, 1)} {Unit(reason.Unit)}",
            ReasonCodes.OtherChemistry => $"other chemistry: {reason.Noted}",
            ReasonCodes.TestedOtherwise => "tested otherwise than most",
            ReasonCodes.ByHand => $"you: {reason.Noted}",
            _ => reason.Code.Replace('-', ' '),
        };
    }

    // Its Ah are there; what they are to be held against is not.
    private static string Unchecked(VerdictReason reason) => reason.What == ReadingName.Capacity ? "Ah (rated Ah unknown)" : What(reason.What);

    /// <summary>Whose limit it is.</summary>
    internal static string From(LimitOrigin? origin) => origin switch
    {
        LimitOrigin.User => "you stated it",
        LimitOrigin.DataSheet => "from the rated figure",
        LimitOrigin.Chemistry => "the chemistry's usual figure",
        LimitOrigin.LotMedian => "from the median of this lot",
        LimitOrigin.CommonPractice => "a habit of the trade",
        _ => "",
    };

    internal static string What(ReadingName reading) => reading switch
    {
        ReadingName.Capacity => "Ah",
        ReadingName.Resistance => "mΩ",
        ReadingName.RestVoltage => "resting V",
        ReadingName.SelfDischarge => "self-discharge",
        ReadingName.Condition => "looks",
        ReadingName.Chemistry => "chemistry",
        _ => reading.ToString(),
    };

    private static string Unit(string unit) => unit.Length == 0 ? "mV/day" : unit;
}
