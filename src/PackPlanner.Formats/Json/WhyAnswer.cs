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

    /// <summary>Finds a figure in an answer and its rule.</summary>
    /// <param name="json">The whole answer.</param>
    /// <param name="what">A figure's name, or the path of one place such as groups.1.capacityAh.</param>
    /// <returns>The explanation, or the nearest name.</returns>
    public static Outcome<WhyAnswer> In(string json, string what)
    {
        string key = what.Split('.')[^1];
        WhyValue[] values =
        [
            .. PlainFacts.Of(json).Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(line => line.Split(' ', 2))
                .Where(fact => fact[0].Equals(what, StringComparison.OrdinalIgnoreCase)
                    || fact[0].EndsWith("." + what, StringComparison.OrdinalIgnoreCase)
                    || fact[0].Contains($".{what}.", StringComparison.OrdinalIgnoreCase)
                    || fact[0].StartsWith(what + ".", StringComparison.OrdinalIgnoreCase))
                .Select(fact => new WhyValue(fact[0], fact.Length > 1 ? fact[1] : "-")),
        ];
        if (FigureRules.Of(key) is not { } rule)
            return Refusal.CommandLine("unknown-figure", $"--why {what}", "no figure of an answer has this name and a rule",
                $"Did you mean {NearestName.Of(key, FigureRules.Keys)}?");
        return new WhyAnswer(rule.Key, values, rule.Inputs, rule.Rule, rule.Source, $"docs/methods/{rule.Page}.md");
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
