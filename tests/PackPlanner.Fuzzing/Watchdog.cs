namespace PackPlanner.Fuzzing;

/// <summary>Ends the run when one input hangs: nothing else would ever say which.</summary>
internal sealed class Watchdog : IDisposable
{
    private readonly Timer timer;
    private readonly TimeSpan most;
    private int seed;

    internal Watchdog(TimeSpan most)
    {
        this.most = most;
        timer = new Timer(_ => Hung());
    }

    /// <summary>A new input begins.</summary>
    internal void Begin(int next)
    {
        seed = next;
        timer.Change(most, Timeout.InfiniteTimeSpan);
    }

    /// <inheritdoc/>
    public void Dispose() => timer.Dispose();

    private void Hung()
    {
        Console.WriteLine($"seed {seed}: hangs, {most.TotalSeconds:0} s and no end");
        Environment.Exit(1);
    }
}
