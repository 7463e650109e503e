namespace PackPlanner.Core.Fitting;

/// <summary>A part of the cavity or a place where no cell may be, with the name that the user knows it by.</summary>
/// <param name="Name">The id in the case, or "part 2", "keep-out 1".</param>
/// <param name="Shape">Its body.</param>
public sealed record NamedSolid(string Name, Solid Shape);
