namespace PackPlanner.Core.Screening;

/// <summary>One reason for a verdict: what was read, the limit it was held against, and whose limit that is.</summary>
/// <param name="Code">Stable short name, one of <see cref="ReasonCodes"/>.</param>
/// <param name="What">The reading that it concerns.</param>
/// <param name="Value">The reading: Ah, milliohm, volts, percent a month; null when there is none.</param>
/// <param name="Limit">The limit in the same unit; null when there is none.</param>
/// <param name="LimitFrom">Whose limit; null when there is none.</param>
/// <param name="Bears">The verdict that this reason alone would bring; <see cref="Verdict.Use"/> for a remark.</param>
/// <param name="Caution">The caution raised with it, caution-01 … caution-34; null when none is.</param>
/// <param name="Noted">Words as the user or the table wrote them; null when there are none.</param>
/// <param name="Unit">Unit of value and limit; empty when there is none.</param>
public sealed record VerdictReason(
    string Code,
    ReadingName What,
    double? Value,
    double? Limit,
    LimitOrigin? LimitFrom,
    Verdict Bears,
    string? Caution = null,
    string? Noted = null,
    string Unit = "");
