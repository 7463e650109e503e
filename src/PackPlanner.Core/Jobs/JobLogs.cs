using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Core.Jobs;

/// <summary>What a job knows beside its logs: the same question from every screen, sheet and verb.</summary>
public static class JobLogs
{
    /// <summary>What the job says about the pack of a log.</summary>
    /// <param name="givens">The givens.</param>
    /// <param name="log">The log.</param>
    /// <returns>The given figures; null while the log cannot be judged: chemistry or rated charge unknown, a current that is missing or without direction, too few rows, or another number of groups than the job names.</returns>
    public static PackGiven? Given(JobGivens givens, RideLog log)
    {
        if (log is { CurrentA: null } or { CurrentIsUnsigned: true } or { Rows: < 3 } || (givens.Series ?? log.Groups) != log.Groups)
            return null;
        return givens is { Chemistry: { } chemistry, RatedAh: { } ratedAh, FullV: { } fullV, EmptyV: { } emptyV }
            ? new PackGiven(chemistry, log.Groups, givens.Parallel, ratedAh * (givens.Parallel ?? 1), fullV, emptyV)
            : null;
    }
}
