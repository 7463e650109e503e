using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>A refusal, for people and for scripts.</summary>
public static class RefusalWords
{
    /// <summary>Two lines: where and why, then what to do.</summary>
    /// <param name="why">The refusal.</param>
    /// <returns>The lines, each ending in a line feed.</returns>
    public static string Lines(Refusal why) =>
        $"{OneLine.Of(why.Problem.Where)}: {OneLine.Of(why.Problem.Why)}.\n  {OneLine.Of(why.Problem.Remedy)}\n";

    /// <summary>The error document of --json.</summary>
    /// <param name="why">The refusal.</param>
    /// <returns>One JSON document.</returns>
    public static string Json(Refusal why) => JsonDocumentText.Of(
        new ErrorJson(why.Code, why.Problem.Why, why.Problem.Where, why.Problem.Remedy),
        ErrorJsonContext.Default.ErrorJson);
}
