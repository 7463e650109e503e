using System.CommandLine;
using System.CommandLine.Parsing;
using PackPlanner.Formats;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>What is wrong with a command line before any file is opened, in words of our own.</summary>
internal static class Misreading
{
    /// <summary>The first thing that could not be read.</summary>
    /// <param name="parsed">What the parser made of the words.</param>
    /// <param name="verb">The verb that they belong to.</param>
    /// <param name="words">The words after the verb.</param>
    /// <returns>Why it is refused; null when all could be read.</returns>
    internal static Refusal? Of(ParseResult parsed, Verb verb, IReadOnlyList<string> words)
    {
        if (UnknownOption(parsed, verb) is { } unknown)
            return unknown;
        if (ValueOfAFlag(verb, words) is { } flag)
            return flag;
        if (parsed.CommandResult.Children.OfType<ArgumentResult>().SelectMany(found => found.Tokens).Count(token => token.Value == "-") > 1)
            return BadLine(verb, "standard input is named twice, and can be read once");
        if (parsed.Errors.Count == 0)
            return null;
        return parsed.Errors[0].SymbolResult switch
        {
            OptionResult option => Wrong(option),
            ArgumentResult { Parent: OptionResult option } => Wrong(option),
            ArgumentResult argument when argument.Tokens.Count == 0 => BadLine(verb, $"{argument.Argument.Name} is missing"),
            _ when parsed.UnmatchedTokens.Count > 0 => BadLine(verb, $"\"{OneLine.Of(parsed.UnmatchedTokens[0])}\" is one word more than {verb.Name} takes"),
            _ => BadLine(verb, "the words do not fit together"),
        };
    }

    // A word with a dash in front that no option has taken by name would be read as a file, or as the value of the option before it.
    private static Refusal? UnknownOption(ParseResult parsed, Verb verb)
    {
        HashSet<Token> files = new(parsed.CommandResult.Children.OfType<ArgumentResult>().SelectMany(found => found.Tokens), ReferenceEqualityComparer.Instance);
        foreach (Token token in parsed.Tokens.TakeWhile(token => token.Type != TokenType.DoubleDash))
        {
            string word = token.Value;
            bool dashed = word.Length > 1 && word[0] == '-';
            bool taken = token.Type != TokenType.Argument || (!files.Contains(token) && !parsed.UnmatchedTokens.Contains(word) && !LongName(word));
            if (!dashed || taken)
                continue;
            string name = word.Split('=')[0];
            string near = NearestName.Of(LongName(name) ? name : "-" + name, verb.Options.Concat(CommonOptions.All).Select(option => option.Name));
            return Refusal.CommandLine("unknown-option", $"{verb.Name} {OneLine.Of(word)}", $"{verb.Name} has no option {OneLine.Of(name)}",
                $"Did you mean {near}? packplanner help {verb.Name} lists them all. A file of that name goes after -- or is written ./{OneLine.Of(name)}.");
        }

        return null;
    }

    // --json=maybe: the parser would take "maybe" for a file.
    private static Refusal? ValueOfAFlag(Verb verb, IReadOnlyList<string> words)
    {
        foreach (string word in words.TakeWhile(word => word != "--"))
        {
            if (word.Split('=', 2) is not [string name, string value] || value is "true" or "false")
                continue;
            if (verb.Options.Concat(CommonOptions.All).Any(option => option.Name == name && option is Option<bool>))
                return Refusal.CommandLine("bad-option", name, $"it takes no value, and \"{OneLine.Of(value)}\" was given", $"Write {name} alone.");
        }

        return null;
    }

    private static Refusal Wrong(OptionResult result)
    {
        Option option = result.Option;
        if (result.Tokens.Count == 0)
            return Refusal.CommandLine("bad-option", option.Name, "its value is missing", $"Write {option.Name} and the value after it: {option.Description}.");
        if (result.Tokens.Count > option.Arity.MaximumNumberOfValues)
            return Refusal.CommandLine("bad-option", option.Name, $"it is given {result.Tokens.Count} times", $"Give {option.Name} once.");
        string typed = OneLine.Of(result.Tokens[0].Value);
        string wanted = option switch
        {
            Option<int> or Option<int?> => "a whole number",
            Option<double> or Option<double?> => "a number",
            _ => "one of its words",
        };
        return Refusal.CommandLine("bad-option", option.Name, $"\"{typed}\" was given where {wanted} is expected", $"{option.Name} takes: {option.Description}.");
    }

    private static Refusal BadLine(Verb verb, string why) =>
        Refusal.CommandLine("bad-command-line", verb.Name, why, $"packplanner help {verb.Name} shows how to write it.");

    private static bool LongName(string word) => word.Length > 2 && word.StartsWith("--", StringComparison.Ordinal) && char.IsLetter(word[2]);
}
