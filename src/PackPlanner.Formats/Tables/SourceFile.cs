using System.Buffers;
using System.IO.Compression;
using System.Text;
using Microsoft.Win32.SafeHandles;
using PackPlanner.Formats.Files;

namespace PackPlanner.Formats.Tables;

/// <summary>A text file as it was found: how to open it as UTF-8, whatever its packing and encoding.</summary>
/// <remarks>It can be opened as often as wanted, because the head is read first and the whole later. Standard input is kept in a temporary file.</remarks>
internal sealed class SourceFile : IDisposable
{
    private const int HeadBytes = 256 * 1024;
    private const int MostHeadBytes = 4 * 1024 * 1024;
    private const int LinesInHead = 20;
    private readonly Func<Stream> _open;
    private readonly Encoding? _encoding;
    private readonly FileStream? _copy;
    private readonly FileStream? _ownCopy;

    private SourceFile(string name, Func<Stream> open, FileStream? copy, FileStream? ownCopy, bool packed, byte[] head, bool isWhole)
    {
        Name = name;
        _open = open;
        (_copy, _ownCopy) = (copy, ownCopy);
        Packed = packed;
        (_encoding, EncodingName, HeadText) = TextEncodings.Guess(head);
        Separator = Separators.Of(HeadText);
        HeadIsWhole = isWhole;
        PlainLength = packed || _encoding is not null ? null : copy?.Length ?? LengthOf(name);
    }

    /// <summary>As the user named it; "standard input" for -.</summary>
    internal string Name { get; }

    /// <summary>Packed with gzip.</summary>
    internal bool Packed { get; }

    /// <summary>UTF-8, UTF-16 LE, UTF-16 BE, Windows-1252 or GB 18030.</summary>
    internal string EncodingName { get; }

    /// <summary>The first part of the text, without NUL characters and byte order mark.</summary>
    internal string HeadText { get; }

    /// <summary>What stands between the fields, and whether the first line named it and is no row.</summary>
    internal (char Mark, bool NamedByFirstLine) Separator { get; }

    /// <summary>Bytes of the text when any stretch of it can be read as it lies there: plain UTF-8 on the disk; else null.</summary>
    internal long? PlainLength { get; }

    /// <summary>The head is the whole file.</summary>
    internal bool HeadIsWhole { get; }

    /// <summary>Finds and opens a file, or says why it cannot be one.</summary>
    /// <param name="file">Path as typed, or - for standard input.</param>
    /// <param name="standardInput">Opens standard input; null where there is none.</param>
    /// <param name="standardInputName">What standard input is called, where it stands for a file in memory.</param>
    /// <returns>The file, to be disposed, or a refusal.</returns>
    internal static Outcome<SourceFile> Open(string file, Func<Stream>? standardInput, string standardInputName = "standard input")
    {
        string name = file == "-" ? standardInputName : file;
        FileStream? copy, own = null;
        try
        {
            if (file == "-")
            {
                if (standardInput is null)
                    return Refusal.Input("no-standard-input", name, "standard input cannot be read here", "Give the name of a file.");
                using Stream input = standardInput();
                copy = own = InputFile.Keep(input);
            }
            else
            {
                if (Directory.Exists(file))
                    return Refusal.Input("is-a-folder", name, "this is a folder, not a file", "Name the file in it, or all of them with a pattern such as folder/*.csv.");
                if (!File.Exists(file))
                    return Refusal.Input("file-not-found", name, "there is no such file", Nearest(file));
                copy = InputFile.CopyOfPipe(file);
                // Some files of the system do not say how long they are.
                if (copy is null && LengthOf(file) == 0)
                {
                    using Stream unsized = InputFile.OpenOnce(file);
                    copy = own = InputFile.Keep(unsized);
                }
            }

            Func<Stream> raw = copy is null ? () => InputFile.OpenOnce(file) : () => new StretchStream(copy.SafeFileHandle, 0, null, null);
            return Inspect(name, raw, copy, own);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or InvalidDataException or ArgumentException or NotSupportedException)
        {
            own?.Dispose();
            return Refusal.Input("file-not-read", name, $"it could not be read: {fault.Message.TrimEnd('.')}", "Check the name and that you may read it; if it was copied or unpacked, do that again.");
        }
    }

    /// <summary>Opens the text from its start as UTF-8 bytes, NUL bytes taken out.</summary>
    internal Stream OpenUtf8()
    {
        Stream stream = _open();
        if (_encoding is not null)
            stream = Encoding.CreateTranscodingStream(stream, _encoding, Encoding.UTF8);
        return Cleaned(stream);
    }

    /// <summary>Opens a part as UTF-8 bytes, NUL bytes taken out.</summary>
    internal Stream OpenUtf8(TextPart part) => part.To is { } to ? Cleaned(OpenRaw(part.From, to)) : OpenUtf8();

    private Stream Cleaned(Stream stream) => Separator.Mark == ' ' ? new BlankRunStream(new CleanStream(stream)) : new CleanStream(stream);

    /// <summary>Opens a stretch as it lies on the disk; only where <see cref="PlainLength"/> is known.</summary>
    internal Stream OpenRaw(long from, long to)
    {
        if (_copy is { } copy)
            return new StretchStream(copy.SafeFileHandle, from, to, null);
        SafeFileHandle handle = File.OpenHandle(Name, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return new StretchStream(handle, from, to, handle);
    }

    public void Dispose() => _ownCopy?.Dispose();

    private static Outcome<SourceFile> Inspect(string name, Func<Stream> raw, FileStream? copy, FileStream? own)
    {
        (byte[] head, bool isWhole) = ReadHead(raw);
        bool packed = head.Length > 2 && head[0] == 0x1F && head[1] == 0x8B;
        Func<Stream> open = packed ? () => new GZipStream(raw(), CompressionMode.Decompress) : raw;
        if (packed)
            (head, isWhole) = ReadHead(open);
        if (head.Length == 0)
            return Refuse(own, Refusal.Input("empty-file", name, "the file is empty", "Export it again; a heading line and at least one row were expected."));
        if (KnownBytes.Of(head) is { } known)
            return Refuse(own, Refusal.Input("not-a-table", name, $"this is {known.Kind}", known.Remedy));
        SourceFile source = new(name, open, copy, own, packed, head, isWhole);
        if (source.HeadText.AsSpan().Trim("\uFEFF \t\r\n").IsEmpty)
            return Refuse(own, Refusal.Input("empty-file", name, "the file holds nothing but blanks", "Export it again; a heading line and at least one row were expected."));
        if (TextEncodings.LooksBinary(source.HeadText))
            return Refuse(own, Refusal.Input("not-a-table", name, "this is no text: most of its bytes are no letters or figures", "Export the figures as CSV from the program that made it, and give that file."));
        return source;
    }

    private static Refusal Refuse(FileStream? own, Refusal why)
    {
        own?.Dispose();
        return why;
    }

    // Rows of ten thousand columns are long, and what a file is cannot be told from three of them: the head grows until it holds some lines.
    private static (byte[] Head, bool IsWhole) ReadHead(Func<Stream> open)
    {
        using Stream stream = open();
        byte[] room = ArrayPool<byte>.Shared.Rent(MostHeadBytes);
        try
        {
            int length = 0;
            for (int wanted = HeadBytes; wanted <= MostHeadBytes; wanted *= 2)
            {
                length += stream.ReadAtLeast(room.AsSpan(length, wanted - length), wanted - length, throwOnEndOfStream: false);
                if (length < wanted)
                    return (room[..length], true);
                LineEnds lines = default;
                lines.Count(room.AsSpan(0, length));
                if (lines.Ends >= LinesInHead)
                    break;
            }

            return (room[..length], false);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(room);
        }
    }

    private static string Nearest(string file)
    {
        string folder = Path.GetDirectoryName(file) is { Length: > 0 } given ? given : ".";
        string[] names = Directory.Exists(folder)
            ? [.. Directory.EnumerateFiles(folder).Take(2000).Select(found => Path.GetFileName(found)).Order(StringComparer.Ordinal)]
            : [];
        return names.Length == 0
            ? "Check the folder and the spelling."
            : $"Check the spelling; the nearest name there is {Words.NearestName.Of(Path.GetFileName(file), names)}.";
    }

    // Of a link the system gives the length of the path that it holds.
    private static long LengthOf(string file)
    {
        FileInfo named = new(file);
        return (named.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? named).Length;
    }
}
