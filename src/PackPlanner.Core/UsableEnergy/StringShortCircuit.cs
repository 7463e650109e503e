using PackPlanner.Core.Packs;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>Short-circuit currents of a fully charged string.</summary>
/// <param name="LowA">By DC resistance: does the fuse clear? Null when a resistance is unknown.</param>
/// <param name="ProspectiveA">First instant, by 1 kHz resistance or twice the low figure: what must the fuse break? Null when unknown.</param>
public sealed record StringShortCircuit(double? LowA, double? ProspectiveA)
{
    /// <summary>What stands for <see cref="LowA"/> while some resistances are missing; null where it is known or nothing can stand for them.</summary>
    public SupposedCurrent? LikelyLow { get; private init; }

    /// <summary>What stands for <see cref="ProspectiveA"/>.</summary>
    public SupposedCurrent? LikelyProspective { get; private init; }

    /// <summary>Works them out.</summary>
    /// <param name="request">The string; links and leads that are not given count as nothing, which makes both figures larger.</param>
    /// <param name="onlyFirstInstant">The resistances given are 1 kHz ones.</param>
    /// <returns>Both figures.</returns>
    public static StringShortCircuit Of(EnergyRequest request, bool onlyFirstInstant)
    {
        double fullV = request.Groups.Count * request.ChargedToV;
        double alsoOhm = request.BesideCellsMilliohm / 1000;
        double? Through(Func<SeriesGroup, double?> milliohm, bool mayBeNothing = false) =>
            request.Groups.All(group => milliohm(group) > 0 || (mayBeNothing && milliohm(group) is 0)) && request.Groups.Any(group => milliohm(group) > 0)
                ? ShortCircuit.CurrentA(fullV, request.Groups.Sum(group => milliohm(group)!.Value) / 1000 + alsoOhm)
                : null;
        double? given = Through(group => group.ResistanceMilliohm);
        SupposedCurrent? likely = null;
        if (given is null && MissingResistances.Taken(request.Groups) is { } taken)
            likely = new SupposedCurrent(
                ShortCircuit.CurrentA(fullV, taken.Sum() / 1000 + alsoOhm),
                Through(group => group.ResistanceMilliohm ?? group.Missing?.AtMostMilliohm),
                Through(group => group.ResistanceMilliohm ?? 0, mayBeNothing: true));
        if (onlyFirstInstant)
            return new StringShortCircuit(null, given) { LikelyProspective = likely };
        double? firstInstant = Through(group => group.FirstInstantMilliohm);
        return new StringShortCircuit(given, firstInstant ?? given * ShortCircuit.FirstInstantOverDc)
        {
            LikelyLow = likely,
            LikelyProspective = firstInstant is null ? likely?.Times(ShortCircuit.FirstInstantOverDc) : null,
        };
    }
}

/// <summary>A current that rests on what is taken for missing resistances.</summary>
/// <param name="LikelyA">With the median of the others in their place, amperes.</param>
/// <param name="AtLeastA">However large they are, amperes; null where a group has no reading at all.</param>
/// <param name="AtMostA">However small they are, amperes; null where no group is known.</param>
public sealed record SupposedCurrent(double LikelyA, double? AtLeastA, double? AtMostA)
{
    internal SupposedCurrent Times(double factor) => new(LikelyA * factor, AtLeastA * factor, AtMostA * factor);

    /// <summary>The figure with its bounds, in words.</summary>
    public string Words => FormattableString.Invariant($"about {LikelyA:0} A")
        + (AtLeastA is { } least ? FormattableString.Invariant($", at least {least:0}") : "") + (AtMostA is { } most ? FormattableString.Invariant($", at most {most:0}") : "");
}
