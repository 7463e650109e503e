using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Core.Jobs;

/// <summary>What a job knows beside its logs: the same question from every screen, sheet and verb.</summary>
public static class JobLogs
{
    /// <summary>What the job says about the pack of a log.</summary>
    /// <param name="givens">The givens.</param>
    /// <param name="log">The log; its groups count where the job names none.</param>
    /// <returns>The given figures; null while the chemistry or the rated charge is unknown.</returns>
    public static PackGiven? Given(JobGivens givens, RideLog log) =>
        givens is { Chemistry: { } chemistry, RatedAh: { } ratedAh, FullV: { } fullV, EmptyV: { } emptyV }
            ? new PackGiven(chemistry, givens.Series ?? log.Groups, givens.Parallel, ratedAh * (givens.Parallel ?? 1), fullV, emptyV)
            : null;
}
