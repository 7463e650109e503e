namespace PackPlanner.Screens.Keys;

/// <summary>One key and its one meaning, which is the same on every screen where it has a use.</summary>
/// <param name="Key">The key as it is shown and typed.</param>
/// <param name="Meaning">What it means everywhere.</param>
/// <param name="Where">Where it has a use.</param>
internal sealed record KeyEntry(string Key, string Meaning, string Where);
