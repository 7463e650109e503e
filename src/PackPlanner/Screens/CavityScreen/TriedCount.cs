using System.Globalization;
using PackPlanner.Core.Fitting;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>How many places a case holds while it is still being typed: a quick look, without groups.</summary>
internal sealed class TriedCount(Desk desk)
{
    // Told apart by what is typed: each drawing reads the case anew.
    private sealed record Question(string Text)
    {
        internal required FitCase Case { get; init; }

        public bool Equals(Question? other) => other?.Text == Text;

        public override int GetHashCode() => Text.GetHashCode(StringComparison.Ordinal);
    }

    private sealed record Count(int Places);

    private Derived<Question, Count>? count;
    private Question? asked;

    /// <summary>": 92 places or more" as soon as they are counted; empty before.</summary>
    internal string Words => count?.Of(asked) is { } known ? $": {known.Places.ToString(CultureInfo.InvariantCulture)} places or more" : "";

    /// <summary>Takes what is typed; null when it makes no sense yet, or nothing is typed any more.</summary>
    internal void Try(FitCase? made, string? text)
    {
        asked = made is not null && text is not null ? new Question(text) { Case = made } : null;
        count ??= new(desk, "counting as typed", (question, work) => new Count(Places(question.Case, work.Stopped)), _ => false);
        count.Of(asked);
    }

    private static int Places(FitCase typed, CancellationToken stop) =>
        LayoutSearch.Search(typed with { Series = null, Parallel = null, CellMassLimitKg = null, Openings = [] }, FitEffort.Quick, null, stop).Cells.Count;
}
