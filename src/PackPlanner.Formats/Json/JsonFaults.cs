using PackPlanner.Core;

namespace PackPlanner.Formats.Json;

/// <summary>What is wrong with the fields of one file, in the order in which they were read.</summary>
/// <param name="file">The file, as the user named it.</param>
internal sealed class JsonFaults(string file)
{
    private readonly List<Problem> problems = [];

    internal string File => file;

    internal IReadOnlyList<Problem> All => problems;

    /// <summary>The first of them, which tells how many more there are; null when all was well.</summary>
    internal Refusal? AsRefusal => problems.Count == 0 ? null : new Refusal(ExitCodes.Input, "bad-field", problems[0] with
    {
        Remedy = problems.Count == 1 ? problems[0].Remedy : $"{problems[0].Remedy} ({problems.Count - 1} more fields are wrong.)",
    });

    /// <param name="at">The field, with its path.</param>
    /// <param name="why">What was found and what was expected.</param>
    /// <param name="remedy">What to do.</param>
    internal void Add(string at, string why, string remedy) => problems.Add(new Problem($"{file}, field {at}", why, remedy));
}
