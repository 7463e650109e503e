using System.Runtime.CompilerServices;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Core.Jobs;

/// <summary>What a job knows beside its logs: the same question from every screen, sheet and verb.</summary>
public static class JobLogs
{
    // A fit takes seconds, and energy, log and sheets all ask for it: the last one of each log is kept for as long as the log is.
    private static readonly ConditionalWeakTable<RideLog, Kept> Latest = [];

    private sealed record Kept(PackGiven Given, RideDiagnosis Diagnosis);

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

    /// <summary>What a log says of the job's pack.</summary>
    /// <param name="givens">The givens.</param>
    /// <param name="log">The log.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>The diagnosis; null while the log cannot be judged.</returns>
    public static RideDiagnosis? Diagnosed(JobGivens givens, RideLog log, CancellationToken stopped) =>
        Given(givens, log) is { } given ? Diagnosed(given, log, stopped) : null;

    /// <summary>The same for figures that are given already.</summary>
    /// <param name="given">What is known of the pack.</param>
    /// <param name="log">The log.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>The diagnosis; the one made before where nothing has changed.</returns>
    public static RideDiagnosis Diagnosed(PackGiven given, RideLog log, CancellationToken stopped)
    {
        if (Latest.TryGetValue(log, out Kept? kept) && kept.Given == given)
            return kept.Diagnosis;
        RideDiagnosis diagnosis = RideDiagnoser.Diagnose(log, given, stopped);
        Latest.AddOrUpdate(log, new Kept(given, diagnosis));
        return diagnosis;
    }
}
