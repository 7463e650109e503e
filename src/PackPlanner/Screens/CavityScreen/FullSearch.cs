using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>
/// The full search of the job's space: begun on its step, it looks on while the user is elsewhere, and ends at once when the space or what is
/// asked of it changes. What was found stays until then; what Esc ended looks on when the user comes back.
/// </summary>
internal sealed class FullSearch(Desk desk, Func<FitQuestion, BackgroundWork, FitAnswer?> find)
{
    private readonly Derived<FullSearchQuestion, Found> looked = new(desk, "full search", (question, work) => new Found(find(question.Asked, work)), _ => false);
    private (FitQuestion? Of, FullSearchQuestion? Question) asked;
    private (FullSearchQuestion? Question, FitAnswer? Answer) best;

    /// <summary>Whether it looks just now.</summary>
    internal bool IsLooking => looked.IsWorking;

    /// <summary>The most that was found so far; null before the first, or where the space cannot be read.</summary>
    internal FitAnswer? Most(Job? job)
    {
        EndIfGone(job);
        FitAnswer? now = looked.Of(asked.Question)?.Answer;
        if (best.Question is null || !best.Question.Equals(asked.Question))
            best = (asked.Question, null);
        if (now is not null && (!now.Stopped || best.Answer is null || IsMore(now, best.Answer)))
            best.Answer = now;
        return best.Answer;
    }

    /// <summary>Ends a search whose question the job does not ask any more; a change that cannot alter the places lets it look on.</summary>
    internal void EndIfGone(Job? job)
    {
        FitQuestion? of = FitQuestion.Of(job);
        // A space is read only when it or what is asked of it may have changed, not for each row that is drawn.
        if (of is not null && of.Equals(asked.Of))
            return;
        FullSearchQuestion? now = FullSearchQuestion.Of(job);
        if (asked.Question is not null && !asked.Question.Equals(now))
            looked.Of(null);
        asked = (of, now);
    }

    /// <summary>Whether this is what asks.</summary>
    internal bool Is(object asker) => asker == looked;

    /// <summary>Looks on where it was stopped.</summary>
    internal void LookOn()
    {
        if (looked.WasStopped || looked.Last is { Answer.Stopped: true })
            looked.Forget();
    }

    private static bool IsMore(FitAnswer one, FitAnswer other) => (one.Parallel ?? 0, one.Cells.Count).CompareTo((other.Parallel ?? 0, other.Cells.Count)) > 0;

    private sealed record Found(FitAnswer? Answer);
}
