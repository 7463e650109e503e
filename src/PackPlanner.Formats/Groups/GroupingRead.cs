namespace PackPlanner.Formats.Groups;

/// <summary>Which cell is in which group, as a file says it.</summary>
/// <param name="Pairs">Label and group from 1, in the file's order.</param>
/// <param name="Understood">What was assumed, a sentence each.</param>
public sealed record GroupingRead(IReadOnlyList<(string Cell, int Group)> Pairs, IReadOnlyList<string> Understood);
