using System.Text;

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
        return Head(() => file == "-" ? standardInput!() : InputFile.Open(file)) is { } head && BeginsAsObject(head);
    }

    /// <summary>The first part of a file as text; null where it cannot be read, or is no JSON object.</summary>
    internal static string? HeadOf(string file) => Head(() => InputFile.Open(file)) is { } head && BeginsAsObject(head) ? Encoding.UTF8.GetString(head).TrimStart('\uFEFF') : null;

    private static byte[]? Head(Func<Stream> open)
    {
        try
        {
            using Stream stream = open();
            byte[] start = new byte[HeadBytes];
            return start[..stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            return null;
        }
    }

    internal static bool BeginsAsObject(ReadOnlySpan<byte> text)
    {
        if (text is [0xEF, 0xBB, 0xBF, ..])
            text = text[3..];
        return text.TrimStart(" \t\r\n"u8) is [(byte)'{', ..];
    }
}
