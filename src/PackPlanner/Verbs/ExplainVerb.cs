using System.CommandLine;
using PackPlanner.Core.Cautions;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>explain CODE: what the code of a caution, a finding, a verdict, its reason, an event or an error means.</summary>
internal static class ExplainVerb
{
    private static readonly Argument<string> Code = new("CODE") { Description = "a code from an answer, such as caution-07, low-capacity or two-readings" };

    private static readonly CodeMeaning[] Meanings = [.. FindingMeanings.All, .. AnswerWordMeanings.All, .. ErrorMeanings.All];

    /// <summary>Every code that can be asked for: cautions, findings, verdicts and their reasons, other words of answers, errors.</summary>
    internal static IReadOnlyList<string> Codes { get; } = [.. CautionCatalogue.All.Select(known => known.Code), .. Meanings.Select(known => known.Code).Distinct()];

    internal static Verb Definition { get; } = new(
        "explain",
        "what the code of a caution, a finding, a verdict or an error means, and what to do",
        [
            ("packplanner explain caution-07", "the current that flows when cells are joined"),
            ("packplanner explain two-readings --json", "what an error means, as one JSON document"),
        ],
        [Code],
        [],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        string code = call.Value(Code)!.ToLowerInvariant();
        if (CautionCatalogue.All.FirstOrDefault(known => known.Code == code) is { } entry)
            return Caution(entry);
        // Some names serve a finding and a verdict's reason, or a reason and an error: all are told.
        CodeMeaning[] meanings = [.. Meanings.Where(known => known.Code == code)];
        if (meanings.Length == 0)
            return Refusal.CommandLine("unknown-code", $"explain {OneLine.Of(code)}", "no answer uses this code", Meant(code));
        string Each(Func<CodeMeaning, string> part) => string.Join(" ", meanings.Select(meaning => meanings.Length == 1 ? part(meaning) : $"As a {meaning.Kind}: {part(meaning)}."));
        ExplainAnswer answer = new(code, string.Join(", ", meanings.Select(meaning => meaning.Kind)), Each(meaning => meaning.Means), meanings[0].Why, Each(meaning => meaning.Do.TrimEnd('.')), "", "");
        IEnumerable<string> words = meanings.SelectMany(meaning => new[] { $"{code} ({meaning.Kind})", $"  when    {meaning.Means}", $"  why     {meaning.Why}", $"  do      {meaning.Do}" });
        return Reply.Of(answer, ExplainAnswerContext.Default.ExplainAnswer, [.. words], Table(answer));
    }

    // A number of a caution may be written without its nought, or be told in parts; the nearest spelling would be another caution.
    private static string Meant(string code)
    {
        if (!code.StartsWith("caution-", StringComparison.Ordinal))
            return $"Did you mean {NearestName.Of(code, Codes)}?";
        string number = code["caution-".Length..];
        string[] parts = [.. CautionCatalogue.All.Select(known => known.Code).Where(known => known.TrimEnd('a', 'b') == $"caution-{number.PadLeft(2, '0')}")];
        string meant = parts.Length > 0 ? $"Did you mean {string.Join(" or ", parts)}? " : "";
        return $"{meant}Cautions are numbered {CautionCatalogue.All[0].Code} to {CautionCatalogue.All[^1].Code}; 20 is told in two, caution-20a and caution-20b.";
    }

    private static Outcome<Reply> Caution(CautionEntry entry)
    {
        ExplainAnswer answer = new(entry.Code, entry.Title, entry.Trigger, entry.Why, entry.DoNow, entry.DoNot, entry.Source);
        string[] words =
        [
            $"{entry.Code}: {entry.Title} (usually {entry.Usual.ToString().ToUpperInvariant()})",
            $"  when    {entry.Trigger}",
            $"  why     {entry.Why}",
            $"  do      {entry.DoNow}",
            $"  do not  {entry.DoNot}",
            $"  source  {entry.Source}; see docs/sources.md",
        ];
        return Reply.Of(answer, ExplainAnswerContext.Default.ExplainAnswer, words, Table(answer));
    }

    private static MainTable Table(ExplainAnswer answer) => new(
        ["code", "title", "when", "why", "do", "doNot", "source"],
        [[answer.Code, answer.Title, answer.When, answer.Why, answer.Do, answer.DoNot, answer.Source]]);
}
