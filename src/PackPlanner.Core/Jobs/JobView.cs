using System.Collections.Immutable;

namespace PackPlanner.Core.Jobs;

/// <summary>Where the user was, so that the next start resumes there. Not a change: it is neither counted nor undone.</summary>
public sealed record JobView
{
    /// <summary>The start.</summary>
    public static JobView Start { get; } = new();

    /// <summary>Step on screen, 1 to 8.</summary>
    public int Step { get; init; } = 1;

    /// <summary>Row under the cursor in each step.</summary>
    public ImmutableSortedDictionary<int, int> Row { get; init; } = ImmutableSortedDictionary<int, int>.Empty;

    /// <summary>Small choices of a screen (sorting, filter, hidden columns), each under a name that the screen chose.</summary>
    public ImmutableSortedDictionary<string, string> Choices { get; init; } =
        ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);
}
