namespace PackPlanner.Formats.Sheets;

/// <summary>One block of a sheet: it fills at most one printed page and says by itself what it belongs to.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="Body">Harmless HTML.</param>
/// <param name="Cautions">Codes of the cautions that stand in it.</param>
public sealed record SheetPage(string Title, string Body, IReadOnlyList<string> Cautions);
