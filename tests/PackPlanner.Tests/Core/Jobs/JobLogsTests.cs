using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;

namespace PackPlanner.Tests.Core.Jobs;

/// <summary>A log is judged once for all that ask, and anew where what is known of the pack has changed.</summary>
public class JobLogsTests
{
    [Fact]
    public void A_log_is_judged_once_until_what_is_known_of_the_pack_changes()
    {
        Job job = Assert.IsType<Outcome<JobHistory>.Given>(DemoJobs.Of("tractor")).Value.Now;
        RideLog log = job.Logs[^1].Log;
        CancellationToken stop = TestContext.Current.CancellationToken;

        RideDiagnosis first = JobLogs.Diagnosed(job.Givens, log, stop)!;
        Assert.Same(first, JobLogs.Diagnosed(job.Givens, log, stop));

        JobGivens lower = job.Givens.With("emptyV", new Given(new JobValue.Number(2.6), Origin.You(new DateOnly(2026, 11, 2))));
        RideDiagnosis second = JobLogs.Diagnosed(lower, log, stop)!;
        Assert.NotSame(first, second);
        Assert.NotEqual(first.Recovery!.UsableAhNow, second.Recovery!.UsableAhNow);
    }
}
