using System.Text.Json;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.Misreading;

/// <summary>Writes a known table into a file, runs a verb on it and takes what the answer claims.</summary>
internal static class Reading
{
    internal static AnswerFacts Of(KnownTable table, string folder, string verb, params string[] options)
    {
        string file = Path.Combine(folder, "table.csv");
        File.WriteAllBytes(file, table.Bytes());
        using StringWriter output = new() { NewLine = "\n" };
        int exitCode = CommandLine.Run([verb, file, .. options, "--json"], () => new MemoryStream(), output, TextWriter.Null, CancellationToken.None);
        using JsonDocument document = JsonDocument.Parse(output.ToString());
        return AnswerFacts.Of(exitCode, document.RootElement);
    }
}
