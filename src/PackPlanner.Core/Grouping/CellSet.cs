using System.Numerics;

namespace PackPlanner.Core.Grouping;

/// <summary>A set of up to 128 cells of one pool, by index.</summary>
internal readonly record struct CellSet(ulong Low, ulong High)
{
    internal const int Most = 128;

    internal bool IsEmpty => (Low | High) == 0;

    internal int Count => BitOperations.PopCount(Low) + BitOperations.PopCount(High);

    /// <summary>Every member moved one index down; index 0 drops out.</summary>
    internal CellSet OneDown => new((Low >> 1) | (High << 63), High >> 1);

    internal static CellSet First(int count) => new(
        count >= 64 ? ulong.MaxValue : (1UL << count) - 1,
        count <= 64 ? 0 : count >= 128 ? ulong.MaxValue : (1UL << (count - 64)) - 1);

    internal bool Has(int index) => ((index < 64 ? Low >> index : High >> (index - 64)) & 1) != 0;

    internal CellSet With(int index) =>
        index < 64 ? new(Low | (1UL << index), High) : new(Low, High | (1UL << (index - 64)));

    internal CellSet Without(CellSet other) => new(Low & ~other.Low, High & ~other.High);

    internal CellSet And(CellSet other) => new(Low & other.Low, High & other.High);

    internal CellSet Or(CellSet other) => new(Low | other.Low, High | other.High);

    /// <summary>True when every member of this set has a lower index than every member of the other; neither is empty.</summary>
    internal bool IsBefore(CellSet other) => Last < other.FirstIndex;

    private int FirstIndex => Low != 0 ? BitOperations.TrailingZeroCount(Low) : 64 + BitOperations.TrailingZeroCount(High);

    private int Last => High != 0 ? 127 - BitOperations.LeadingZeroCount(High) : 63 - BitOperations.LeadingZeroCount(Low);

    internal bool Touches(CellSet other) => ((Low & other.Low) | (High & other.High)) != 0;

    internal bool IsWithin(CellSet other) => ((Low & ~other.Low) | (High & ~other.High)) == 0;

    /// <summary>Takes the member with the least index out of <paramref name="rest"/> and gives its index.</summary>
    internal static int TakeFirst(ref CellSet rest)
    {
        if (rest.Low != 0)
        {
            int index = BitOperations.TrailingZeroCount(rest.Low);
            rest = new(rest.Low & (rest.Low - 1), rest.High);
            return index;
        }

        int high = BitOperations.TrailingZeroCount(rest.High);
        rest = new(0, rest.High & (rest.High - 1));
        return high + 64;
    }
}
