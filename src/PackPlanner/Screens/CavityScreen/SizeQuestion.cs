using System.Diagnostics;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Sizing;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Json;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>All that the choices of S, P and cell depend on.</summary>
internal sealed record SizeQuestion(JobDocument Need)
{
    /// <summary>The choices that no other beats, or why there is none.</summary>
    internal sealed record Answered(IReadOnlyList<PackChoice> Choices, IReadOnlyList<string> WhyNone);

    internal static SizeQuestion? Of(Job? job) => job?.SizeNeed is { } need ? new SizeQuestion(need) : null;

    internal Answered Answer(CancellationToken stop)
    {
        if (!JobDocuments.Root(Need).Is(out JsonInput? input, out Refusal? why)
            || !SizeAsked.Of(input, stop).Is(out (SizingOutcome Outcome, IReadOnlyList<string> Understood) asked, out why))
            return new Answered([], [$"{why.Problem.Where}: {why.Problem.Why}. {why.Problem.Remedy}"]);
        return asked.Outcome switch
        {
            SizingOutcome.Choices found => new Answered(found.Options, []),
            SizingOutcome.None none => new Answered([], [.. none.Reasons.Select(reason => reason.Text)]),
            _ => throw new UnreachableException(),
        };
    }
}
