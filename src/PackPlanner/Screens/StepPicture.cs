using PackPlanner.Core.Cautions;

namespace PackPlanner.Screens;

/// <summary>What a step says in words, whatever the size of the terminal.</summary>
/// <param name="Question">The question that the screen answers.</param>
/// <param name="Answer">One or two sentences with their uncertainty.</param>
/// <param name="Next">The most useful next step, with its key.</param>
/// <param name="Cautions">Those that concern this screen.</param>
internal sealed record StepPicture(string Question, string Answer, string Next, IReadOnlyList<Caution> Cautions)
{
    internal StepPicture(string question, string answer, string next)
        : this(question, answer, next, [])
    {
    }

    /// <summary>The answer where it has a single row and the whole one does not fit: what must not be lost comes first; null where the whole one begins with that.</summary>
    internal string? Short { get; init; }

    /// <summary>Esc came before there was any answer to keep.</summary>
    /// <param name="question">The question that was not answered.</param>
    /// <param name="step">The number of the step that asks again.</param>
    internal static StepPicture Stopped(string question, int step) =>
        new(question, "Stopped before there was an answer; nothing was changed.", $"{step} asks again");
}
