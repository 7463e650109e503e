using PackPlanner.Core.Packs;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>Short-circuit currents of a fully charged string.</summary>
/// <param name="LowA">By DC resistance: does the fuse clear? Null when a resistance is unknown.</param>
/// <param name="ProspectiveA">First instant, by 1 kHz resistance or twice the low figure: what must the fuse break? Null when unknown.</param>
public sealed record StringShortCircuit(double? LowA, double? ProspectiveA)
{
    /// <summary>Works them out.</summary>
    /// <param name="request">The string; links and leads that are not given count as nothing, which makes both figures larger.</param>
    /// <param name="onlyFirstInstant">The resistances given are 1 kHz ones.</param>
    /// <returns>Both figures.</returns>
    public static StringShortCircuit Of(EnergyRequest request, bool onlyFirstInstant)
    {
        double fullV = request.Groups.Count * request.ChargedToV;
        double alsoOhm = request.BesideCellsMilliohm / 1000;
        double? Through(Func<SeriesGroup, double?> milliohm) => request.Groups.All(group => milliohm(group) > 0)
            ? ShortCircuit.CurrentA(fullV, request.Groups.Sum(group => milliohm(group)!.Value) / 1000 + alsoOhm)
            : null;
        double? given = Through(group => group.ResistanceMilliohm);
        if (onlyFirstInstant)
            return new StringShortCircuit(null, given);
        return new StringShortCircuit(given, Through(group => group.FirstInstantMilliohm) ?? given * ShortCircuit.FirstInstantOverDc);
    }
}
