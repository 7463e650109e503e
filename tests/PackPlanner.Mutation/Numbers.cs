using Microsoft.CodeAnalysis;

namespace PackPlanner.Mutation;

/// <summary>Gives each change its number, the same in every pass over the same sources.</summary>
/// <param name="wanted">Whether a number is written into the sources.</param>
internal sealed class Numbers(Func<int, bool> wanted)
{
    private readonly Dictionary<object, int> ofConstant = new(new SymbolKeys());
    private readonly List<Change> all = [];

    /// <summary>Every change there is, by rising number.</summary>
    internal IReadOnlyList<Change> All => all;

    internal bool Wanted(int id) => wanted(id);

    /// <summary>The next number; each constant has one for all places that read it.</summary>
    internal int Next(object? constant, Func<Change> describe)
    {
        if (constant is not null && ofConstant.TryGetValue(constant, out int known))
            return known;
        int id = all.Count + 1;
        all.Add(describe() with { Id = id });
        if (constant is not null)
            ofConstant[constant] = id;
        return id;
    }

    private sealed class SymbolKeys : IEqualityComparer<object>
    {
        public new bool Equals(object? x, object? y) => SymbolEqualityComparer.Default.Equals((ISymbol?)x, (ISymbol?)y);

        public int GetHashCode(object obj) => SymbolEqualityComparer.Default.GetHashCode((ISymbol)obj);
    }
}
