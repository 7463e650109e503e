using System.Text.Json.Serialization;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>--why WHAT</c> prints: one figure of an answer and where it comes from.</summary>
/// <param name="What">The figure's name.</param>
/// <param name="Values">Each place of the answer where it stands.</param>
/// <param name="Inputs">What it is made from.</param>
/// <param name="Rule">The rule in words.</param>
/// <param name="Source">Where the rule comes from.</param>
/// <param name="Page">The page that says more.</param>
public sealed record WhyAnswer(
    string What, IReadOnlyList<WhyValue> Values, string Inputs, string Rule, string Source, string Page) : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/why";

    /// <summary>Finds a figure in an answer and the rule that this verb makes it by.</summary>
    /// <param name="json">The whole answer.</param>
    /// <param name="what">A figure's name, or the path of one place such as groups.1.capacityAh.</param>
    /// <param name="verb">The verb that gave the answer.</param>
    /// <returns>The explanation, or the names of the figures of this answer that have one.</returns>
    public static Outcome<WhyAnswer> In(string json, string what, string verb)
    {
        string key = what.Split('.')[^1];
        WhyValue[] facts =
        [
            .. PlainFacts.Of(json).Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(line => line.Split(' ', 2)).Select(fact => new WhyValue(fact[0], fact.Length > 1 ? fact[1] : "-")),
        ];
        WhyValue[] values = [.. facts.Where(fact => Names(fact.Path, what))];
        return FigureRules.Of(key, verb) is { } rule && values.Length > 0
            ? new WhyAnswer(rule.Key, values, rule.Inputs, rule.Rule, rule.Source, $"docs/methods/{rule.Page}.md")
            : NoRule(what, verb, [.. FigureRules.All.Where(known => known.IsOf(verb) && facts.Any(fact => Names(fact.Path, known.Key))).Select(known => known.Key)], values.Length > 0);
    }

    private static bool Names(string path, string what) =>
        $".{path}.".Contains($".{what}.", StringComparison.OrdinalIgnoreCase);

    private static Refusal NoRule(string what, string verb, string[] known, bool stands)
    {
        string name = OneLine.Of(what);
        string why = stands ? $"no rule is kept for {name}" : $"this answer of {verb} has no figure {name}";
        if (known.Length == 0)
            return Refusal.CommandLine("unknown-figure", $"--why {name}", why, $"No figure of this answer of {verb} has a rule: leave --why out.");
        string near = NearestName.Of(what.Split('.')[^1], known);
        string meant = NearestName.IsNear(what.Split('.')[^1], near) ? $"Did you mean {near}? " : "";
        return Refusal.CommandLine("unknown-figure", $"--why {name}", why, $"{meant}In this answer these have one: {string.Join(", ", known)}.");
    }

    /// <summary>The same for people.</summary>
    /// <returns>Lines.</returns>
    public IReadOnlyList<string> Lines() =>
    [
        $"where {What} comes from",
        .. Values.Take(20).Select(value => $"  {value.Path} = {value.Value}"),
        .. Values.Count > 20 ? [$"  … and {Values.Count - 20} more"] : Array.Empty<string>(),
        $"  inputs   {Inputs}",
        $"  rule     {Rule}",
        $"  source   {Source}",
        $"  more     {Page}",
    ];
}

/// <summary>One place of an answer where a figure stands.</summary>
/// <param name="Path">Path in the answer, lists counted from 1.</param>
/// <param name="Value">The value as printed.</param>
public sealed record WhyValue(string Path, string Value);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(WhyAnswer))]
public sealed partial class WhyAnswerContext : JsonSerializerContext;
