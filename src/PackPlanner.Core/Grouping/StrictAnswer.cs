namespace PackPlanner.Core.Grouping;

/// <summary>What the search for the strict aims found, in steps, and what of it is proven.</summary>
/// <param name="Best">The best grouping found.</param>
/// <param name="Bound">No grouping has a smallest group above this.</param>
/// <param name="SpreadBound">No grouping with this smallest group has less spread.</param>
/// <param name="Stopped">True when the user's cancel ended it.</param>
internal sealed record StrictAnswer(GroupingTrial Best, long Bound, long SpreadBound, bool Stopped)
{
    internal bool SmallestProven => Best.Smallest == Bound;

    internal bool Proven => SmallestProven && Best.Spread == SpreadBound;
}
