namespace PackPlanner.Core.Grouping;

/// <summary>A small seeded generator for the searches: the same seed gives the same search on every machine.</summary>
/// <remarks>Marsaglia's xorshift with 64 bits; good enough to vary a restart, and it allocates nothing.</remarks>
internal struct Dice(ulong seed)
{
    private ulong _state = (seed * 0x9E3779B97F4A7C15UL) | 1;

    /// <summary>A whole number from 0 to below the limit.</summary>
    internal int Below(int limit)
    {
        _state ^= _state << 13;
        _state ^= _state >> 7;
        _state ^= _state << 17;
        return (int)((uint)(_state >> 32) * (ulong)limit >> 32);
    }
}
