using System.Buffers;

namespace PackPlanner.Formats.Tables;

/// <summary>Cuts a text into stretches of whole lines that can be read side by side, and counts its lines first.</summary>
/// <remarks>
/// Counting costs a tenth of reading. It is what lets every column be made once in its right length, and it meets a
/// packed file that unpacks without end before anything is kept. The cuts depend on the file alone, never on the machine.
/// </remarks>
internal static class TextParts
{
    /// <summary>The longest text that is read; a season of rows each second is less than a third of it.</summary>
    internal const long MostBytes = 4L * 1024 * 1024 * 1024;

    /// <summary>Usual length of a part.</summary>
    internal const int UsualPartBytes = 8 * 1024 * 1024;

    private const int PieceBytes = 1 << 18;

    /// <summary>Counts and cuts.</summary>
    /// <param name="source">The text.</param>
    /// <param name="most">Bytes of text, unpacked, that are allowed.</param>
    /// <param name="partBytes">Length of a part, whole lines more or less.</param>
    /// <param name="stopped">Cancelled when the user stops.</param>
    /// <returns>The parts from the front; or why the text is too long.</returns>
    internal static Outcome<TextPart[]> Of(SourceFile source, long most, int partBytes, CancellationToken stopped)
    {
        if (source.PlainLength is not { } length)
            return Whole(source, most, stopped);
        if (length > most)
            return TooLong(source, most);
        long[] cuts = Cuts(source, length, partBytes);
        LineEnds[] counts = new LineEnds[cuts.Length - 1];
        SideBySide.ForEach(counts.Length, i => counts[i] = CountLines(source, cuts[i], cuts[i + 1], stopped), stopped);
        TextPart[] parts = new TextPart[counts.Length];
        long line = 1;
        for (int i = 0; i < parts.Length; i++)
        {
            long lines = i == parts.Length - 1 ? counts[i].Lines : counts[i].Ends;
            parts[i] = new TextPart(cuts[i], cuts[i + 1], (int)Math.Min(line, int.MaxValue), (int)Math.Min(lines, int.MaxValue));
            line += lines;
        }

        return line > int.MaxValue ? TooLong(source, most) : parts;
    }

    private static Outcome<TextPart[]> Whole(SourceFile source, long most, CancellationToken stopped)
    {
        LineEnds count = default;
        long bytes = 0;
        byte[] piece = ArrayPool<byte>.Shared.Rent(PieceBytes);
        using Stream stream = source.OpenUtf8();
        for (int read = stream.Read(piece); read > 0; read = stream.Read(piece))
        {
            stopped.ThrowIfCancellationRequested();
            count.Count(piece.AsSpan(0, read));
            bytes += read;
            if (bytes > most || count.Lines >= int.MaxValue)
                return TooLong(source, most);
        }

        ArrayPool<byte>.Shared.Return(piece);
        return new[] { new TextPart(0, null, 1, (int)count.Lines) };
    }

    private static LineEnds CountLines(SourceFile source, long from, long to, CancellationToken stopped)
    {
        LineEnds count = default;
        byte[] piece = ArrayPool<byte>.Shared.Rent(PieceBytes);
        using Stream stream = source.OpenRaw(from, to);
        for (int read = stream.Read(piece); read > 0; read = stream.Read(piece))
        {
            stopped.ThrowIfCancellationRequested();
            count.Count(piece.AsSpan(0, read));
        }

        ArrayPool<byte>.Shared.Return(piece);
        return count;
    }

    // Each cut stands behind a line feed. A stretch without one joins the next.
    private static long[] Cuts(SourceFile source, long length, int partBytes)
    {
        List<long> cuts = [0];
        byte[] piece = new byte[PieceBytes];
        for (long at = partBytes; at < length - partBytes; at += partBytes)
        {
            using Stream stream = source.OpenRaw(at, length);
            int read = stream.ReadAtLeast(piece, piece.Length, throwOnEndOfStream: false);
            int feed = piece.AsSpan(0, read).IndexOf((byte)'\n');
            if (feed >= 0 && at + feed + 1 > cuts[^1] && at + feed + 1 < length)
                cuts.Add(at + feed + 1);
        }

        cuts.Add(length);
        return [.. cuts];
    }

    private static Refusal TooLong(SourceFile source, long most) => Refusal.Input("too-long", source.Name,
        $"its text is longer than {most / 1024 / 1024} MB{(source.Packed ? " when it is unpacked" : "")}, more than any log of a pack",
        "If it is a log, cut it into parts, such as one for each month, and give one of them.");
}
