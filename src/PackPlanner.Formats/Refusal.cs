using PackPlanner.Core;

namespace PackPlanner.Formats;

/// <summary>An input that cannot be used, or a question without an answer.</summary>
/// <param name="ExitCode">2 command line, 3 input, 4 no answer; see <see cref="PackPlanner.Formats.ExitCodes"/>.</param>
/// <param name="Code">Stable short name, words joined by hyphens, for scripts: file-not-found, two-readings, too-few-cells.</param>
/// <param name="Problem">Where, why and what to do.</param>
public sealed record Refusal(int ExitCode, string Code, Problem Problem)
{
    /// <summary>An input that could not be read or contradicts what else was given (exit 3).</summary>
    /// <param name="code">Stable short name.</param>
    /// <param name="where">File, line and column.</param>
    /// <param name="why">What was found and what was expected.</param>
    /// <param name="remedy">What to do, in the imperative.</param>
    /// <returns>The refusal.</returns>
    public static Refusal Input(string code, string where, string why, string remedy) =>
        new(ExitCodes.Input, code, new Problem(where, why, remedy));

    /// <summary>A command line that is wrong whatever the files hold (exit 2).</summary>
    /// <param name="code">Stable short name.</param>
    /// <param name="where">The option.</param>
    /// <param name="why">What was found and what was expected.</param>
    /// <param name="remedy">What to do, in the imperative.</param>
    /// <returns>The refusal.</returns>
    public static Refusal CommandLine(string code, string where, string why, string remedy) =>
        new(ExitCodes.CommandLine, code, new Problem(where, why, remedy));

    /// <summary>No answer exists (exit 4).</summary>
    /// <param name="code">Stable short name.</param>
    /// <param name="where">What was asked.</param>
    /// <param name="why">What is short.</param>
    /// <param name="remedy">The nearest miss, and what to do.</param>
    /// <returns>The refusal.</returns>
    public static Refusal NoAnswer(string code, string where, string why, string remedy) =>
        new(ExitCodes.NoAnswer, code, new Problem(where, why, remedy));
}
