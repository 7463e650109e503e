namespace PackPlanner.Core.Grouping;

/// <summary>What a search may still spend. Counted in steps, never in seconds, so that the same input gives the same answer.</summary>
/// <remarks>
/// A step is one elementary operation of an inner loop (a candidate looked at, a pointer moved): about two nanoseconds.
/// The token is the user's own cancel; after it sameness is not promised, and the answer says so.
/// </remarks>
internal sealed class SearchBudget(long steps, CancellationToken stop = default)
{
    private long _left = steps;

    internal long Left => _left;

    internal bool Stopped => stop.IsCancellationRequested;

    internal bool Spent => _left <= 0 || stop.IsCancellationRequested;

    /// <summary>Takes steps off; false when none are left or the user stopped the search.</summary>
    internal bool Spend(long count)
    {
        _left -= count;
        return _left > 0 && !stop.IsCancellationRequested;
    }

    /// <summary>A part of what is left, for one attempt; give it back with <see cref="Settle"/>.</summary>
    internal SearchBudget Part(long count) => new(Math.Min(count, _left), stop);

    /// <summary>Takes off what an attempt used of the part that <see cref="Part"/> gave it.</summary>
    internal void Settle(SearchBudget part, long given) => _left -= Math.Min(given, _left) - part._left;
}
