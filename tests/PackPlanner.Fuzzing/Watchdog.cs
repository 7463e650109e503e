namespace PackPlanner.Fuzzing;

/// <summary>Ends the run when one input hangs: nothing else would ever say which. Counted in processor time, because a busy machine waits too.</summary>
internal sealed class Watchdog : IDisposable
{
    private static readonly TimeSpan LookEvery = TimeSpan.FromSeconds(5);
    private readonly Timer timer;
    private readonly TimeSpan most;
    private volatile int seed = -1;
    private int seen = -1;
    private TimeSpan since;

    internal Watchdog(TimeSpan most)
    {
        this.most = most;
        timer = new Timer(_ => Look(), null, LookEvery, LookEvery);
    }

    /// <summary>A new input begins.</summary>
    internal void Begin(int next) => seed = next;

    /// <inheritdoc/>
    public void Dispose() => timer.Dispose();

    private void Look()
    {
        TimeSpan now = Environment.CpuUsage.TotalTime;
        if (seen != seed)
        {
            (seen, since) = (seed, now);
        }
        else if (now - since > most)
        {
            Console.WriteLine($"seed {seen}: hangs, {most.TotalSeconds:0} s of processor time and no end");
            Environment.Exit(1);
        }
    }
}
