using System.IO.Compression;
using System.Security.Cryptography;

namespace PackPlanner.Formats.Files;

/// <summary>Reads a small input whole, or says why it cannot be read.</summary>
public static class InputBytes
{
    /// <summary>Largest file that is read whole; JSON cases are far smaller, and logs are read as streams.</summary>
    public const int Most = 256 * 1024 * 1024;

    /// <summary>Reads the file.</summary>
    /// <param name="file">Path, or - for standard input.</param>
    /// <param name="standardInput">Opens standard input; null where it may not be used.</param>
    /// <returns>The bytes, at least one, or why there are none.</returns>
    public static Outcome<byte[]> Read(string file, Func<Stream>? standardInput = null)
    {
        if (file == "-" && standardInput is not null)
            return Guarded("standard input", standardInput, stream => NotEmpty("standard input", ReadAll(stream)));
        return OfFile(file, stream => NotEmpty(file, ReadAll(stream)));
    }

    /// <summary>Reads the file, unpacked where it is packed with gzip.</summary>
    /// <param name="file">Path, or - for standard input.</param>
    /// <param name="standardInput">Opens standard input; null where it may not be used.</param>
    /// <returns>The bytes, at least one, or why there are none.</returns>
    public static Outcome<byte[]> ReadUnpacked(string file, Func<Stream>? standardInput = null)
    {
        if (!Read(file, standardInput).Is(out byte[]? bytes, out Refusal? why))
            return why;
        return bytes is [0x1F, 0x8B, ..]
            ? Guarded(file, () => new GZipStream(new MemoryStream(bytes), CompressionMode.Decompress), stream => NotEmpty(file, ReadAll(stream)))
            : bytes;
    }

    /// <summary>Checksum of a file of any length, as jobs keep it; the file is not kept in memory.</summary>
    /// <param name="file">Path.</param>
    /// <returns>64 lower-case hexadecimal digits, or why it cannot be read.</returns>
    public static Outcome<string> FingerprintOf(string file) => OfFile<string>(file, stream => Convert.ToHexStringLower(SHA256.HashData(stream)));

    private static Outcome<T> OfFile<T>(string file, Func<Stream, Outcome<T>> read)
    {
        if (Directory.Exists(file))
            return Refusal.Input("is-a-folder", file, "this is a folder, a file was expected", "Name the file in it.");
        if (!File.Exists(file))
            return Refusal.Input("file-not-found", file, "there is no such file", "Check the name, and the folder that you are in.");
        return Guarded(file, () => InputFile.Open(file), read);
    }

    private static Outcome<T> Guarded<T>(string name, Func<Stream> open, Func<Stream, Outcome<T>> read)
    {
        try
        {
            using Stream stream = open();
            return read(stream);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or InvalidDataException or ArgumentException or NotSupportedException)
        {
            return Refusal.Input("file-not-read", name, $"it could not be read: {fault.Message.TrimEnd('.')}", "Check that it exists and that you may read it.");
        }
    }

    private static Outcome<byte[]> NotEmpty(string file, byte[]? bytes) => bytes switch
    {
        null => Refusal.Input("file-too-large", file, $"it is larger than {Most / 1024 / 1024} MB", "Give a smaller file."),
        [] => Refusal.Input("empty-file", file, "the file is empty", "Export it again; an empty file often means that the export was cut short."),
        _ => bytes,
    };

    private static byte[]? ReadAll(Stream stream)
    {
        using MemoryStream all = new();
        byte[] piece = new byte[81920];
        for (int read = stream.Read(piece); read > 0; read = stream.Read(piece))
        {
            all.Write(piece, 0, read);
            if (all.Length > Most)
                return null;
        }

        return all.ToArray();
    }
}
