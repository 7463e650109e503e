namespace PackPlanner.Core.Cautions;

/// <summary>What is always true of one caution, whatever raised it.</summary>
/// <param name="Code">caution-01 … caution-34.</param>
/// <param name="Usual">The word it usually carries; a case may be graver or milder.</param>
/// <param name="Title">A few words for a list.</param>
/// <param name="Trigger">When it is raised, exactly.</param>
/// <param name="Why">Why it matters.</param>
/// <param name="DoNow">What to do next.</param>
/// <param name="DoNot">What not to do.</param>
/// <param name="Source">Keys of the source register.</param>
public sealed record CautionEntry(
    string Code,
    SignalWord Usual,
    string Title,
    string Trigger,
    string Why,
    string DoNow,
    string DoNot,
    string Source);
