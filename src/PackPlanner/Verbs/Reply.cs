using System.Text.Json.Serialization.Metadata;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>What a verb gives back, in every form that the user may ask for.</summary>
internal sealed record Reply
{
    private Reply(Answer answer, Func<string> json, IReadOnlyList<string> words, MainTable table, int exitCode)
    {
        Answer = answer;
        Json = json;
        Words = words;
        Table = table;
        ExitCode = exitCode;
    }

    internal Answer Answer { get; }

    /// <summary>Writes the JSON document.</summary>
    internal Func<string> Json { get; }

    /// <summary>Lines for people; the cautions are added below them by the program.</summary>
    internal IReadOnlyList<string> Words { get; }

    internal MainTable Table { get; }

    /// <summary>0, or 4 where a "no" is an ordinary answer.</summary>
    internal int ExitCode { get; }

    /// <summary>True where the verb has answered --why itself, because the word names a thing of the answer and not a figure.</summary>
    internal bool ExplainsItself { get; init; }

    internal static Reply Of<T>(
        T answer, JsonTypeInfo<T> type, IReadOnlyList<string> words, MainTable table, int exitCode = ExitCodes.Done)
        where T : Answer =>
        new(answer, () => JsonDocumentText.Of(answer, type), words, table, exitCode);
}
