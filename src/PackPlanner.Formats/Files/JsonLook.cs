namespace PackPlanner.Formats.Files;

/// <summary>Whether an input is a JSON object, told by what it begins with and not by its name.</summary>
public static class JsonLook
{
    private const int HeadBytes = 256;

    /// <summary>Looks at a file.</summary>
    /// <param name="file">Path, or - for standard input.</param>
    /// <param name="standardInput">Opens standard input; null where it may not be used.</param>
    /// <returns>False also where it cannot be read: the reader of tables says why.</returns>
    public static bool IsJson(string file, Func<Stream>? standardInput = null)
    {
        if (file == "-" ? standardInput is null : !File.Exists(file))
            return false;
        try
        {
            using Stream stream = file == "-" ? standardInput!() : InputFile.Open(file);
            Span<byte> start = stackalloc byte[HeadBytes];
            return BeginsAsObject(start[..stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)]);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            return false;
        }
    }

    internal static bool BeginsAsObject(ReadOnlySpan<byte> text)
    {
        if (text is [0xEF, 0xBB, 0xBF, ..])
            text = text[3..];
        return text.TrimStart(" \t\r\n"u8) is [(byte)'{', ..];
    }
}
