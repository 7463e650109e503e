namespace PackPlanner.Formats.Tables;

/// <summary>A stretch of whole lines of a text.</summary>
/// <param name="From">First byte.</param>
/// <param name="To">Byte after the last; null for all there is.</param>
/// <param name="FirstLine">Line of the text that it begins with, from 1.</param>
/// <param name="Lines">Lines in it.</param>
internal sealed record TextPart(long From, long? To, int FirstLine, int Lines);
