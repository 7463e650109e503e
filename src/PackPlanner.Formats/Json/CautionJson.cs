using PackPlanner.Core.Cautions;

namespace PackPlanner.Formats.Json;

/// <summary>A caution as scripts read it.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Signal">DANGER, WARNING, CAUTION or NOTICE.</param>
/// <param name="Where">Where it arose.</param>
/// <param name="Saw">The value that raised it.</param>
/// <param name="Why">Why it matters.</param>
/// <param name="Do">What to do now.</param>
/// <param name="DoNot">What not to do.</param>
public sealed record CautionJson(
    string Code, string Signal, string Where, string Saw, string Why, string Do, string DoNot)
{
    /// <summary>Cautions of Core, in order, once each.</summary>
    /// <param name="cautions">In any order.</param>
    /// <returns>Gravest first.</returns>
    public static IReadOnlyList<CautionJson> From(IEnumerable<Caution> cautions) =>
    [
        .. Caution.InOrder(cautions).Select(c => new CautionJson(
            c.Code,
            c.Signal.ToString().ToUpperInvariant(),
            c.Where,
            c.Saw,
            c.Entry.Why,
            c.Do,
            c.Entry.DoNot)),
    ];
}
