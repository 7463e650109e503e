namespace PackPlanner.Verbs;

/// <summary>
/// Cancels a part of the way into a time limit, and at its end, from a thread of its own: a timer waits for a thread of the pool, and a
/// search that keeps all of them at work would hold it up for seconds.
/// </summary>
internal sealed class TimeLimit : IDisposable
{
    /// <summary>After this part of the limit nothing more is looked for that something else must follow, such as places before groups.</summary>
    private const double SoonPart = 0.6;

    private const double LongestS = 1e6;

    private readonly CancellationTokenSource soon;
    private readonly CancellationTokenSource passed;
    private readonly ManualResetEventSlim answered = new();
    private Thread? watcher;

    /// <summary>Without a limit yet.</summary>
    /// <param name="stopped">Cancelled when the user stops the program; it cancels both tokens too.</param>
    internal TimeLimit(CancellationToken stopped)
    {
        soon = CancellationTokenSource.CreateLinkedTokenSource(stopped);
        passed = CancellationTokenSource.CreateLinkedTokenSource(stopped);
    }

    /// <summary>Cancelled some time before the limit.</summary>
    internal CancellationToken PassesSoon => soon.Token;

    /// <summary>Cancelled at the limit.</summary>
    internal CancellationToken Passed => passed.Token;

    /// <summary>The limit runs from now.</summary>
    /// <param name="seconds">A limit of many days is none.</param>
    internal void Start(double seconds)
    {
        if (seconds > LongestS)
            return;
        TimeSpan limit = TimeSpan.FromSeconds(Math.Max(0, seconds));
        watcher = new Thread(() => Watch(limit)) { IsBackground = true, Name = "time limit" };
        watcher.Start();
    }

    public void Dispose()
    {
        answered.Set();
        watcher?.Join();
        answered.Dispose();
        soon.Dispose();
        passed.Dispose();
    }

    private void Watch(TimeSpan limit)
    {
        if (answered.Wait(limit * SoonPart))
            return;
        soon.Cancel();
        if (!answered.Wait(limit * (1 - SoonPart)))
            passed.Cancel();
    }
}
