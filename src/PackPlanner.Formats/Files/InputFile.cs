using System.Collections.Concurrent;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Files;

/// <summary>Opens a named input as often as wanted, also when it is a pipe, which gives its bytes only once.</summary>
/// <remarks>A shell's <c>&lt;(zcat cells.csv.gz)</c> and a named pipe are such inputs. Readers open a file several times: its head first, the whole later.</remarks>
public static class InputFile
{
    // A device that gives the same byte for ever is met here, not when the disk is full. Packed bytes hold a line feed every few hundred.
    private const int LongestLineBytes = 16 * 1024 * 1024;

    // For the length of the run: the bytes that a pipe gave are nowhere else.
    private static readonly ConcurrentDictionary<string, FileStream> Kept = new(StringComparer.Ordinal);

    /// <summary>Opens the file at its start.</summary>
    /// <param name="path">The file's name.</param>
    /// <returns>A stream to be disposed.</returns>
    /// <exception cref="IOException">There is no such file, or it cannot be read.</exception>
    /// <exception cref="InvalidDataException">A pipe gave more than any log holds.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read, or it is a folder.</exception>
    public static Stream Open(string path)
    {
        return CopyOfPipe(path) is { } copy ? new StretchStream(copy.SafeFileHandle, 0, null, null) : OpenOnce(path);
    }

    /// <summary>The copy of what a pipe gave, for the length of the run; null where the file itself can be read again and again.</summary>
    internal static FileStream? CopyOfPipe(string path)
    {
        string full = Path.GetFullPath(path);
        if (Kept.TryGetValue(full, out FileStream? kept))
            return kept;
        using FileStream stream = OpenOnce(path);
        return stream.CanSeek ? null : Kept.GetOrAdd(full, Keep(stream));
    }

    internal static FileStream OpenOnce(string path) => new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1);

    /// <summary>Copies a stream that can be read only once into a temporary file, which goes away when it is closed.</summary>
    internal static FileStream Keep(Stream input)
    {
        FileStream kept = new(Path.GetTempFileName(), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 1 << 16, FileOptions.DeleteOnClose);
        try
        {
            byte[] piece = new byte[1 << 16];
            long line = 0;
            for (int read = input.Read(piece); read > 0; read = input.Read(piece))
            {
                kept.Write(piece, 0, read);
                int end = piece.AsSpan(0, read).LastIndexOfAny((byte)'\n', (byte)'\r');
                line = end < 0 ? line + read : read - end;
                if (line > LongestLineBytes)
                    throw new InvalidDataException($"{LongestLineBytes / 1024 / 1024} MB came without the end of a line, so this is neither table nor log");
                if (kept.Length > TextParts.MostBytes)
                    throw new InvalidDataException($"more than {TextParts.MostBytes / 1024 / 1024} MB came, which is longer than any log");
            }

            kept.Flush();
            return kept;
        }
        catch
        {
            kept.Dispose();
            throw;
        }
    }
}
