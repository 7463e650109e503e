using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Screens.LogScreen;

/// <summary>All that a diagnosis depends on.</summary>
internal sealed record LogQuestion(RideLog Log, PackGiven Given)
{
    // A log of a few thousand rows is fitted within a second or so; it is never waited for.
    internal RideDiagnosis Answer(CancellationToken stop) => JobLogs.Diagnosed(Given, Log, stop);

    /// <summary>The question of a job's log.</summary>
    internal static LogQuestion? Of(Job? job, int which)
    {
        if (job is null || job.Logs.IsEmpty)
            return null;
        RideLog log = job.Logs[Math.Min(which, job.Logs.Count - 1)].Log;
        return JobLogs.Given(job.Givens, log) is { } given ? new LogQuestion(log, given) : null;
    }

    /// <summary>What has to be said before a log can be judged; empty when all is there.</summary>
    internal static IReadOnlyList<string> Missing(Job job, int which)
    {
        List<string> missing = [];
        if (job.Givens.Chemistry is null)
            missing.Add("the chemistry");
        if (job.Givens.RatedAh is null)
            missing.Add("the rated Ah of one cell");
        if (job.Logs.IsEmpty)
            return missing;
        RideLog log = job.Logs[Math.Min(which, job.Logs.Count - 1)].Log;
        if (log.CurrentA is null)
            missing.Add("a log with amperes (this one has none)");
        else if (log.CurrentIsUnsigned)
            missing.Add("the direction of the current (add the log again and say it)");
        if (job.Givens.Series is { } series && series != log.Groups)
            missing.Add($"{series} groups in series as you said (the log has {log.Groups})");
        if (log.Rows < 3)
            missing.Add("more than two rows");
        return missing;
    }
}
