namespace PackPlanner.Formats.Sheets;

/// <summary>One kind of sheet.</summary>
/// <param name="Name">As on the command line, and the file's name.</param>
/// <param name="Title">What it is, for people.</param>
/// <param name="WhyNot">Why it cannot be made of a job; null when it can.</param>
/// <param name="Pages">Makes its pages.</param>
public sealed record Sheet(string Name, string Title, Func<SheetInput, string?> WhyNot, Func<SheetInput, IReadOnlyList<SheetPage>> Pages);
