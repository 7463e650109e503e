namespace PackPlanner.Core.Fitting;

/// <summary>Why what was asked does not fit, and the nearest change that would help.</summary>
/// <param name="Code">Stable: cell-too-large, too-few-places, no-series-path, mass-over, keep-outs-fill-cavity, outline-too-narrow, stopped-early.</param>
/// <param name="Along">The axis that is short; null when none in particular.</param>
/// <param name="ShortMm">How much is short along it, millimetres; null when it is not a matter of length.</param>
/// <param name="Text">In words, with the sum.</param>
/// <param name="Change">The nearest change that would help; null when none was found.</param>
public sealed record FitReason(string Code, Axis? Along, double? ShortMm, string Text, string? Change)
{
    /// <summary>Cells that a quick look found room for when they may be turned another way; null where turning does not help, or was not looked at.</summary>
    public int? WhenTurned { get; init; }
}
