using CsvHelper;

namespace PackPlanner.Formats.Tables;

/// <summary>What may go wrong between the first and the last line of a file.</summary>
internal static class FileFaults
{
    /// <summary>What may go wrong on the way through a file is refused, not thrown.</summary>
    internal static Outcome<T> ToItsEnd<T>(SourceFile source, Func<Outcome<T>> read)
    {
        try
        {
            return read();
        }
        catch (CsvFormatException)
        {
            return Refusal.Input("line-too-long", source.Name, "a line is longer than eight million characters, so this is neither table nor log", "Export it again with one row a line.");
        }
        catch (Exception fault) when (fault is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            return Refusal.Input("file-not-read", source.Name, $"it could not be read to its end: {fault.Message.TrimEnd('.')}", "Copy or unpack the file again.");
        }
    }
}
