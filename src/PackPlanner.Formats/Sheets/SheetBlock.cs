namespace PackPlanner.Formats.Sheets;

/// <summary>A part of a page that keeps together and carries job, revision, page and check by itself.</summary>
/// <param name="Body">Harmless HTML.</param>
/// <param name="SaidAtTheFoot">Says what it belongs to at its foot as well, because it is taller than half a page.</param>
public sealed record SheetBlock(string Body, bool SaidAtTheFoot = false);
