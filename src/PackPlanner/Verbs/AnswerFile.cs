using PackPlanner.Formats;
using PackPlanner.Formats.Files;

namespace PackPlanner.Verbs;

/// <summary>Writes an answer where --output says.</summary>
internal static class AnswerFile
{
    /// <summary>Writes the whole answer, or leaves what was there.</summary>
    /// <returns>Why it could not be written; null when it was.</returns>
    internal static Refusal? Write(string file, string text)
    {
        try
        {
            if (Directory.Exists(file))
                return Refusal.Input("output-is-folder", $"--output {file}", "this is a folder", "Name a file in it.");
            WholeFile.Write(file, text);
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refusal.Input("output-not-written", $"--output {file}", $"it could not be written: {fault.Message.TrimEnd('.')}",
                "Name a file in a folder that exists and that you may write; what was there is as it was.");
        }
    }
}
