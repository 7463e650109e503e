using System.CommandLine;

namespace PackPlanner.Verbs;

/// <summary>Options that every verb takes alike.</summary>
internal static class CommonOptions
{
    internal static readonly Option<bool> Json = new("--json") { Description = "one JSON document on standard output and nothing else there" };
    internal static readonly Option<bool> Plain = new("--plain") { Description = "one fact a line" };
    internal static readonly Option<bool> Csv = new("--csv") { Description = "the main table of the answer" };
    internal static readonly Option<string?> Output = new("--output") { Description = "write the answer to this file instead" };
    internal static readonly Option<bool> Quiet = new("--quiet") { Description = "no notes on standard error" };
    internal static readonly Option<bool> Verbose = new("--verbose") { Description = "more notes on standard error" };
    internal static readonly Option<string> Color = Choice("--color", ["auto", "always", "never"]);
    internal static readonly Option<bool> Ascii = new("--ascii") { Description = "nothing beyond ASCII in words and drawings" };
    internal static readonly Option<bool> NoInput = new("--no-input") { Description = "never ask a question" };
    internal static readonly Option<int> Seed = new("--seed") { Description = "seed of what uses chance: match, and energy with --draws (default 1); no other answer depends on it", DefaultValueFactory = _ => 1 };
    internal static readonly Option<string?> TimeLimit = new("--time-limit") { Description = "stop searches after this time with the best so far, such as 30s" };
    internal static readonly Option<string> Decimal = Choice("--decimal", ["auto", "point", "comma"]);
    internal static readonly Option<string> DecimalOut = Choice("--decimal-out", ["point", "comma"], ": the decimal mark of --csv, of sheets' tables and on the screens; words keep the point");
    internal static readonly Option<string> Units = Choice("--units", ["metric", "us"], ": lb, in, °F and miles in words and --plain; JSON and --csv stay metric");
    internal static readonly Option<string> CurrentSign = Choice("--current-sign", ["auto", "discharge", "charge"]);
    internal static readonly Option<string[]> Column = new("--column")
    {
        Description = "what a column of a file is, as NAME=meaning, NAME=meaning:unit or NAME=:unit with a meaning that look prints, such as --column \"Bat A=current:mA\"; #3 names the third column, \"not used\" passes it over",
        Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = false,
    };

    internal static readonly Option<string?> Chemistry = new("--chemistry") { Description = "LFP, NMC, NCA, LCO, LMO or LTO" };
    internal static readonly Option<string?> Repeatability = new("--repeatability") { Description = "how well your tester repeats one capacity, such as 1.5%" };
    internal static readonly Option<bool> Strict = new("--strict") { Description = "exit with 5 when a DANGER or WARNING stands" };
    internal static readonly Option<string?> Why = new("--why") { Description = "where one number of the answer comes from: its inputs, rule, source and spread" };

    internal static IReadOnlyList<Option> All { get; } =
    [
        Json, Plain, Csv, Output, Quiet, Verbose, Color, Ascii, NoInput, Seed, TimeLimit, Decimal, DecimalOut, Units,
        CurrentSign, Column, Chemistry, Repeatability, Strict, Why,
    ];

    private static Option<string> Choice(string name, string[] words, string says = "")
    {
        Option<string> option = new(name)
        {
            Description = $"{string.Join(", ", words)}{says} (default {words[0]})",
            DefaultValueFactory = _ => words[0],
        };
        option.AcceptOnlyFromAmong(words);
        return option;
    }
}
