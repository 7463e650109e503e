using System.CommandLine;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>help [VERB].</summary>
internal static class HelpVerb
{
    private static readonly Argument<string?> Asked = new("VERB") { Description = "the verb to explain; none: the list", Arity = ArgumentArity.ZeroOrOne };

    private static readonly Option<bool> Manual = new("--man") { Description = "the manual page of the whole program, for man" };

    internal static Verb Definition { get; } = new(
        "help",
        "examples and options of a verb",
        [
            ("packplanner help", "lists the verbs"),
            ("packplanner help match", "shows examples and options of match"),
            ("packplanner help --man --output packplanner.1", "writes the manual page"),
        ],
        [Asked],
        [Manual],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        string? name = call.Value(Asked);
        Verb[] verbs = [.. VerbList.All.Where(verb => name is null || verb.Name == name)];
        if (verbs.Length == 0)
            return Refusal.CommandLine("unknown-verb", $"help {name}", $"there is no verb \"{name}\"",
                $"Did you mean {NearestName.Of(name!, VerbList.All.Select(verb => verb.Name))}?");
        string text = call.Value(Manual) ? ManPage.Text() : name is null ? HelpText.OfProgram() : HelpText.Of(verbs[0]);
        HelpAnswer answer = new(
            [.. verbs.Select(verb => new HelpVerbJson(
                verb.Name, verb.Summary, [.. verb.Examples.Select(example => example.Line)], [.. verb.Options.Select(option => option.Name)]))]);
        MainTable table = new(["verb", "summary"], [.. verbs.Select(verb => new object?[] { verb.Name, verb.Summary })]);
        return Reply.Of(answer, HelpAnswerContext.Default.HelpAnswer, text.TrimEnd('\n').Split('\n'), table);
    }
}
