using System.Text;

namespace PackPlanner.Formats.Tables;

/// <summary>Names files that are no text tables by their first bytes, and says how to get a table out of them.</summary>
internal static class KnownBytes
{
    private const string SaveAsCsv = "Open it in the program that made it, choose save as or export, take CSV with UTF-8, one sheet at a time, and give that file.";
    private const string AskForCsv = "Export the figures from the program that made it as a CSV file, one row a cell or a moment, and give that file.";
    private const string Unpack = "Unpack it and give the table inside.";

    // Kind, bytes from the start, what to do. Longer marks stand before their beginnings.
    private static readonly (string Kind, byte[] Mark, string Remedy)[] Marks =
    [
        ("a spreadsheet workbook of the old binary kind", [0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1], SaveAsCsv),
        ("a PDF document", "%PDF"u8.ToArray(), "Take the figures from where the document was made and export them as CSV; figures copied out of a PDF lose their columns."),
        ("a picture (PNG)", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], "Type the figures into a table or export them as CSV; a picture cannot be read."),
        ("a picture (JPEG)", [0xFF, 0xD8, 0xFF], "Type the figures into a table or export them as CSV; a picture cannot be read."),
        ("a picture (GIF)", "GIF8"u8.ToArray(), "Type the figures into a table or export them as CSV; a picture cannot be read."),
        ("a picture (TIFF)", [0x49, 0x49, 0x2A, 0x00], "Type the figures into a table or export them as CSV; a picture cannot be read."),
        ("a picture (TIFF)", [0x4D, 0x4D, 0x00, 0x2A], "Type the figures into a table or export them as CSV; a picture cannot be read."),
        ("a database (SQLite)", "SQLite format 3\0"u8.ToArray(), "Open it with a database tool, export the table of readings as CSV with a heading line, and give that file."),
        ("a database (Jet or ACE)", [0x00, 0x01, 0x00, 0x00, 0x53, 0x74, 0x61, 0x6E, 0x64, 0x61, 0x72, 0x64], "Open it with a database tool, export the table of readings as CSV with a heading line, and give that file."),
        ("a column store (Parquet)", "PAR1"u8.ToArray(), AskForCsv),
        ("a data container (HDF5)", [0x89, 0x48, 0x44, 0x46], AskForCsv),
        ("a numeric workspace file", "MATLAB 5.0"u8.ToArray(), AskForCsv),
        ("an archive (7z)", [0x37, 0x7A, 0xBC, 0xAF, 0x27, 0x1C], Unpack),
        ("an archive (RAR)", "Rar!"u8.ToArray(), Unpack),
        ("compressed (xz)", [0xFD, 0x37, 0x7A, 0x58, 0x5A, 0x00], Unpack),
        ("compressed (bzip2)", "BZh"u8.ToArray(), Unpack),
        ("compressed (zstd)", [0x28, 0xB5, 0x2F, 0xFD], Unpack),
        ("a program", [0x7F, 0x45, 0x4C, 0x46], AskForCsv),
        ("rich text", "{\\rtf"u8.ToArray(), SaveAsCsv),
    ];

    /// <summary>What the bytes are, when they are no text table.</summary>
    /// <param name="head">The first bytes of the file, unpacked if it was packed with gzip.</param>
    /// <returns>The kind and what to do; null for what may be a table.</returns>
    internal static (string Kind, string Remedy)? Of(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith("PK\u0003\u0004"u8) || head.StartsWith("PK\u0005\u0006"u8))
            return Zip(head);
        if (head.Length > 12 && head.StartsWith("RIFF"u8) && head[8..].StartsWith("WEBP"u8))
            return ("a picture (WebP)", "Type the figures into a table or export them as CSV; a picture cannot be read.");
        if (head.Length > 12 && head[4..].StartsWith("ftyp"u8))
            return ("a picture or film", "Type the figures into a table or export them as CSV; a picture cannot be read.");
        if (head.Length > 14 && head.StartsWith("BM"u8) && head[6..10].IndexOfAnyExcept((byte)0) < 0)
            return ("a picture (BMP)", "Type the figures into a table or export them as CSV; a picture cannot be read.");
        foreach ((string kind, byte[] mark, string remedy) in Marks)
            if (head.StartsWith(mark))
                return (kind, remedy);
        return Markup(head);
    }

    private static (string Kind, string Remedy) Zip(ReadOnlySpan<byte> head)
    {
        if (head.IndexOf("xl/"u8) >= 0 || head.IndexOf("[Content_Types].xml"u8) >= 0)
            return ("a spreadsheet workbook (.xlsx)", SaveAsCsv);
        if (head.IndexOf("opendocument"u8) >= 0)
            return ("a spreadsheet workbook (.ods)", SaveAsCsv);
        return ("a zip archive", Unpack);
    }

    private static (string Kind, string Remedy)? Markup(ReadOnlySpan<byte> head)
    {
        ReadOnlySpan<byte> text = head.StartsWith("\u00EF\u00BB\u00BF"u8) || head.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? head[3..] : head;
        text = text.TrimStart(" \t\r\n"u8);
        string start = Encoding.ASCII.GetString(text[..Math.Min(64, text.Length)]);
        if (start.StartsWith("<?xml", StringComparison.OrdinalIgnoreCase) || start.StartsWith("<!doctype", StringComparison.OrdinalIgnoreCase)
            || start.StartsWith("<html", StringComparison.OrdinalIgnoreCase) || start.StartsWith("<table", StringComparison.OrdinalIgnoreCase))
            return ("a web page or XML, not a plain table", SaveAsCsv);
        if (start.StartsWith('{') && start.Contains("\"packplanner/job\"", StringComparison.Ordinal))
            return ("a job, not a table", "packplanner job export JOB --into DIR writes the tables that it holds; energy and sheet take the job itself, packplanner JOB opens it.");
        if (start.StartsWith('{') || start.StartsWith("[{", StringComparison.Ordinal))
            return ("JSON, not a plain table", AskForCsv);
        return null;
    }
}
