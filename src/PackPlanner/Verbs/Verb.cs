using System.CommandLine;
using PackPlanner.Formats;

namespace PackPlanner.Verbs;

/// <summary>One verb of the command line: what it is called, what it takes, and what it does.</summary>
/// <param name="Name">The word that the user types.</param>
/// <param name="Summary">One line for the list of verbs.</param>
/// <param name="Examples">At least two real command lines, with what they do.</param>
/// <param name="Arguments">Files and other words without a dash.</param>
/// <param name="Options">Options of this verb; the common ones come by themselves.</param>
/// <param name="Run">Does the work.</param>
internal sealed record Verb(
    string Name,
    string Summary,
    IReadOnlyList<(string Line, string Does)> Examples,
    IReadOnlyList<Argument> Arguments,
    IReadOnlyList<Option> Options,
    Func<VerbCall, Outcome<Reply>> Run);
