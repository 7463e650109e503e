using System.CommandLine;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>help [VERB].</summary>
internal static class HelpVerb
{
    private static readonly Argument<string?> Asked = new("VERB") { Description = "the verb to explain; none: the list", Arity = ArgumentArity.ZeroOrOne };

    internal static Verb Definition { get; } = new(
        "help",
        "examples and options of a verb",
        [("packplanner help", "lists the verbs"), ("packplanner help match", "shows examples and options of match")],
        [Asked],
        [],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        string? name = call.Value(Asked);
        Verb[] verbs = [.. VerbList.All.Where(verb => name is null || verb.Name == name)];
        if (verbs.Length == 0)
            return Refusal.CommandLine("unknown-verb", $"help {name}", $"there is no verb \"{name}\"",
                $"Did you mean {NearestName.Of(name!, VerbList.All.Select(verb => verb.Name))}?");
        string text = name is null ? HelpText.OfProgram() : HelpText.Of(verbs[0]);
        HelpAnswer answer = new(
            [.. verbs.Select(verb => new HelpVerbJson(
                verb.Name, verb.Summary, [.. verb.Examples.Select(example => example.Line)], [.. verb.Options.Select(option => option.Name)]))]);
        MainTable table = new(["verb", "summary"], [.. verbs.Select(verb => new object?[] { verb.Name, verb.Summary })]);
        return Reply.Of(answer, HelpAnswerContext.Default.HelpAnswer, text.TrimEnd('\n').Split('\n'), table);
    }
}
