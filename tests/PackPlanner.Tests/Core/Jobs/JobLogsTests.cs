using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Tests.Core.Jobs;

/// <summary>A log is judged once for all that ask, and anew where what is known of the pack has changed.</summary>
public class JobLogsTests
{
    [Fact]
    public void A_log_is_judged_once_until_what_is_known_of_the_pack_changes()
    {
        // A log of its own: that of the invented job is judged by others at the same time.
        JobHistory read = JobHistory.Of(new Job { Title = "tractor" });
        foreach ((string name, byte[] bytes) in DemoJobs.Files("tractor"))
            read = Assert.IsType<Outcome<AddedFiles>.Given>(JobAdding.Add(read, name, bytes)).Value.History;
        Job job = read.Now;
        RideLog log = job.Logs[^1].Log;
        CancellationToken stop = TestContext.Current.CancellationToken;

        RideDiagnosis first = JobLogs.Diagnosed(job.Givens, log, stop)!;
        Assert.Same(first, JobLogs.Diagnosed(job.Givens, log, stop));

        JobGivens lower = job.Givens.With("emptyV", new Given(new JobValue.Number(2.6), Origin.You(new DateOnly(2026, 11, 2))));
        RideDiagnosis second = JobLogs.Diagnosed(lower, log, stop)!;
        Assert.NotSame(first, second);
        Assert.NotEqual(first.Recovery!.UsableAhNow, second.Recovery!.UsableAhNow);
    }

    // A base line that is found last does not become what the pack is like now.
    [Fact]
    public void Logs_stand_by_their_days_and_those_without_one_as_they_came()
    {
        JobHistory job = JobHistory.Of(new Job { Title = "logs" });
        (string File, DateTime? Start)[] added = [("october", new(2026, 10, 26)), ("may", new(2026, 5, 12)), ("undated", null), ("august", new(2026, 8, 1)), ("november", new(2026, 11, 3))];
        for (int i = 0; i < added.Length; i++)
        {
            RideLog log = new() { TimeS = [0, 1], CurrentA = null, GroupV = [[3.6, 3.6]], Source = added[i].File, Start = added[i].Start };
            job = job.Do(JobChanges.AddLog(new JobLog(new JobSource(job.Now.NextSourceId, added[i].File, new string((char)('a' + i), 64), SourceKind.PackLog, []), log, 0)));
        }

        Assert.Equal(["may", "august", "october", "undated", "november"], job.Now.Logs.Select(log => log.Source.File));
    }
}
