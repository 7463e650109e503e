using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>All that the places depend on; without a document a plain block is placed.</summary>
internal sealed record FitQuestion(JobDocument? Document, JobDocument? Places, JobGivens Givens)
{
    /// <summary>The case with its answer, or why it cannot be read.</summary>
    internal sealed record Answered(FitCase? Case, FitAnswer? Answer, Refusal? WhyNot);

    internal static FitQuestion? Of(Job? job) => job is not null && JobFit.IsAsked(job) ? new FitQuestion(job.FitCase, job.FitAnswer, job.Givens) : null;

    internal Answered Answer(CancellationToken stop, IProgress<FitProgress>? progress = null, Action<FitAnswer>? first = null)
    {
        Job job = Asked;
        if (!JobFit.Case(job).Is(out FitCase? fitCase, out Refusal? why))
            return new Answered(null, null, why);
        return JobFit.Find(job, stop, progress, first).Is(out FitAnswer? answer, out why)
            ? new Answered(fitCase, answer, null)
            : new Answered(fitCase, null, why);
    }

    /// <summary>The places that the full search finds, as the verb fit does; null where the case cannot be read.</summary>
    internal FitAnswer? Most(FitEffort effort, CancellationToken stop, IProgress<FitProgress>? progress = null) =>
        JobFit.FindMost(Asked, effort, stop, progress).Is(out FitAnswer? answer, out _) ? answer : null;

    private Job Asked => new() { Title = Document?.Source.File ?? "plain block", FitCase = Document, FitAnswer = Places, Givens = Givens };
}
