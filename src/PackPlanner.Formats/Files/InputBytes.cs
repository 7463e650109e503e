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
        try
        {
            if (file == "-" && standardInput is not null)
            {
                using Stream input = standardInput();
                return NotEmpty("standard input", ReadAll(input));
            }

            if (Directory.Exists(file))
                return Refusal.Input("is-folder", file, "this is a folder, a file was expected", "Name the file in it.");
            if (!File.Exists(file))
                return Refusal.Input("file-not-found", file, "there is no such file", "Check the name, and the folder that you are in.");
            using Stream stream = InputFile.Open(file);
            return NotEmpty(file, ReadAll(stream));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or InvalidDataException or ArgumentException or NotSupportedException)
        {
            return Refusal.Input("file-not-read", file, $"it could not be read: {fault.Message.TrimEnd('.')}", "Check that it exists and that you may read it.");
        }
    }

    private static Outcome<byte[]> NotEmpty(string file, byte[]? bytes) => bytes switch
    {
        null => Refusal.Input("file-too-large", file, $"it is larger than {Most / 1024 / 1024} MB", "Give a smaller file."),
        [] => Refusal.Input("file-empty", file, "the file is empty", "Export it again; an empty file often means that the export was cut short."),
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
