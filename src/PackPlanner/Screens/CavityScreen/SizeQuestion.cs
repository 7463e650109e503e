using System.Diagnostics;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Sizing;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Json;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>All that the choices of S, P and cell depend on.</summary>
internal sealed record SizeQuestion(JobDocument Need, JobDocument? Space)
{
    /// <summary>The choices that no other beats, or why there is none; and the model that was tried in the job's space, null when none was.</summary>
    internal sealed record Answered(IReadOnlyList<PackChoice> Choices, IReadOnlyList<string> WhyNone, string? TriedCell = null);

    internal static SizeQuestion? Of(Job? job) => job?.SizeNeed is { } need ? new SizeQuestion(need, job.FitCase) : null;

    internal Answered Answer(CancellationToken stop)
    {
        FitCase? space = Space is not null && JobDocuments.Root(Space).Is(out JsonInput? read, out _) && FitCaseJson.Read(read, []).Is(out FitCase? known, out _) ? known : null;
        if (!JobDocuments.Root(Need).Is(out JsonInput? input, out Refusal? why)
            || !SizeAsked.Of(input, stop, space).Is(out (SizingOutcome Outcome, IReadOnlyList<string> Understood) asked, out why))
            return new Answered([], [$"{why.Problem.Where}: {why.Problem.Why}. {why.Problem.Remedy}"]);
        return asked.Outcome switch
        {
            SizingOutcome.Choices found => new Answered(found.Options, [], space is null ? null : space.CellName),
            SizingOutcome.None none => new Answered([], [.. none.Reasons.Select(reason => reason.Text)]),
            _ => throw new UnreachableException(),
        };
    }
}
