namespace PackPlanner.Core;

/// <summary>Something wrong in what we were given, said so that the reader can mend it.</summary>
/// <param name="Where">File, line and column, or the name of the option or field.</param>
/// <param name="Why">What was found and what was expected there.</param>
/// <param name="Remedy">The next thing to do, in the imperative.</param>
public sealed record Problem(string Where, string Why, string Remedy);
