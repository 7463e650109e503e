using PackPlanner.Core.Fitting;
using PackPlanner.Core.Sizing;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Json;

/// <summary>From a sizing need to the choices, the same for the verb and the screen.</summary>
public static class SizeAsked
{
    /// <summary>Reads the need and its space, if it gives one, and looks for the choices.</summary>
    /// <param name="input">The need.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <param name="elsewhere">A space that is known beside the need, for a need without one; its cell alone is tried in it.</param>
    /// <returns>The outcome and what was understood; or the first field that is wrong.</returns>
    public static Outcome<(SizingOutcome Outcome, IReadOnlyList<string> Understood)> Of(JsonInput input, CancellationToken stopped, FitCase? elsewhere = null)
    {
        if (!SizeCase.Read(input, out IReadOnlyList<string> understood).Is(out SizingRequest? request, out Refusal? why))
            return why;
        List<string> said = [.. understood];
        if (!SizeSpace.Read(input, request, said, stopped).Is(out SizeSpace? space, out why) && why is not null)
            return why;
        if (space is null && elsewhere is not null)
            space = SizeSpace.Of(elsewhere, stopped);
        SizingOutcome found = SizingSearch.Find(request, space is null ? null : (cell, series, parallel) => space.Knows(cell) ? space.Places(cell, series, parallel) : series * parallel);
        // Only now every field has been looked for, those of the space too.
        said.AddRange(input.NotRead);
        if (found is SizingOutcome.Choices { Options: [PackChoice proposed, ..] })
            said.AddRange(SizeGaps.Of(request, proposed));
        if (space?.Untried is { } untried)
            said.Add(untried);
        return (found, said);
    }
}
