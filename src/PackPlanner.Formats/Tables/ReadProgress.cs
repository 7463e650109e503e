namespace PackPlanner.Formats.Tables;

/// <summary>How far the reading of a file is.</summary>
/// <param name="File">As the user named it.</param>
/// <param name="Rows">Rows read so far.</param>
/// <param name="Fraction">Share of the file read, 0 to 1; null where its length is not known.</param>
public sealed record ReadProgress(string File, long Rows, double? Fraction);
