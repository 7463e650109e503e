namespace PackPlanner.Screens;

/// <summary>Hands progress on to the screen ten times a second at most: work can better itself thousands of times a second.</summary>
/// <remarks><see cref="Progress{T}"/> would post to whatever context the worker has; this runs where it is called and only hands over words.</remarks>
internal sealed class ToldSparingly<T>(Action<T> told) : IProgress<T>
{
    private const long BetweenMs = 100;

    private long toldAt = -BetweenMs;

    public void Report(T value)
    {
        long now = Environment.TickCount64;
        if (now - toldAt < BetweenMs)
            return;
        toldAt = now;
        told(value);
    }
}
