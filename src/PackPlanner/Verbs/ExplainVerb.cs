using System.CommandLine;
using PackPlanner.Core.Cautions;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>explain CODE: what a caution or another code in an answer means.</summary>
internal static class ExplainVerb
{
    private static readonly Argument<string> Code = new("CODE") { Description = "a code from an answer, such as caution-07" };

    internal static Verb Definition { get; } = new(
        "explain",
        "what a code in an answer means, why it matters, and what to do",
        [
            ("packplanner explain caution-07", "the current that flows when cells are joined"),
            ("packplanner explain caution-20b --json", "the same as one JSON document"),
        ],
        [Code],
        [],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        string code = call.Value(Code)!.ToLowerInvariant();
        CautionEntry? entry = CautionCatalogue.All.FirstOrDefault(known => known.Code == code);
        if (entry is null)
            return Refusal.CommandLine("unknown-code", $"explain {code}", "no answer uses this code",
                $"Did you mean {NearestName.Of(code, CautionCatalogue.All.Select(known => known.Code))}?");
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
        MainTable table = new(
            ["code", "title", "when", "why", "do", "doNot", "source"],
            [[entry.Code, entry.Title, entry.Trigger, entry.Why, entry.DoNow, entry.DoNot, entry.Source]]);
        return Reply.Of(answer, ExplainAnswerContext.Default.ExplainAnswer, words, table);
    }
}
