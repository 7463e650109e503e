using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Formats.Words;

/// <summary>What an energy budget rests on that nobody stated.</summary>
public static class EnergyAssumptions
{
    /// <summary>One sentence for each assumption.</summary>
    /// <param name="request">The request.</param>
    /// <param name="repeatabilityGiven">The user stated how well his tester repeats.</param>
    /// <returns>The sentences.</returns>
    public static IEnumerable<string> Of(EnergyRequest request, bool repeatabilityGiven)
    {
        if (request.Load is null)
            yield return "No --load: the figures are those at rest, without heat and without sag.";
        if (request.RatedAh is null)
            yield return "No --rated-ah: the mean of the groups stands for the label, so ageing is not told.";
        if (request.NominalV is null)
            yield return $"Nominal volts are those of {request.Chemistry.Name}, {request.LabelV} V.";
        if (request.EmptyV is null)
            yield return $"The ride ends at the cut-off of {request.Chemistry.Name}, {request.EndsAtV} V for a group.";
        if (request.TestCutoffV is null)
            yield return $"Capacities are taken as measured from {request.Chemistry.FullV} V down to {request.EndsAtV} V; --test-cutoff-v says otherwise.";
        if (request.TestCurrentA is null)
            yield return "The current of the capacity tests is not given: taken as so small that nothing was left in the cells.";
        if (request.Load is not null && request.LinkMilliohm is null)
            yield return "No --link: heat in the links is not known.";
        if (request.JointMilliohm is not null && request.JointsMilliohm is null)
            yield return "The cells in parallel are not known, so the joints are left out; --parallel says it.";
        if (MissingResistances.Supposed(request.Groups) is { } supposed)
            yield return $"{char.ToUpperInvariant(supposed[0])}{supposed[1..]}.";
        else if (request.Groups.All(group => group.ResistanceMilliohm is null))
            yield return "No resistances: heat in the cells and the cut-off under load are not known, so the usable figure is too high.";
        if (request.Groups.Any(group => group.CapacitySigmaAh is not null))
            yield return "The ranges of capacities, resistances and charges are those that the log's answer gives.";
        else if (!repeatabilityGiven)
            yield return "Capacity tests are taken to repeat within 1.5 % (common practice, no source); --repeatability says otherwise.";
        if (request.TemperatureDegC is null)
            yield return "No --temperature: taken as warm as in the tests.";
    }
}
