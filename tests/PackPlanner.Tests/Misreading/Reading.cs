using System.Collections.Concurrent;
using System.Text.Json;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.Misreading;

/// <summary>Writes a known table into a file, runs a verb on it and takes what the answer claims.</summary>
internal static class Reading
{
    private static readonly ConcurrentDictionary<(KnownTable, string), AnswerFacts> Whole = new();

    /// <summary>The answer on a table as it came, which many changes are held against.</summary>
    internal static AnswerFacts OfWhole(KnownTable table, string folder, string verb, params string[] options) =>
        Whole.GetOrAdd((table, $"{verb} {string.Join(' ', options)}"), _ => Of(table, folder, verb, options));

    internal static AnswerFacts Of(KnownTable table, string folder, string verb, params string[] options)
    {
        string file = Path.Combine(folder, "table.csv");
        return Of(table.Bytes(), file, verb, options);
    }

    internal static AnswerFacts Of(byte[] bytes, string file, string verb, params string[] options)
    {
        File.WriteAllBytes(file, bytes);
        using StringWriter output = new() { NewLine = "\n" };
        int exitCode = CommandLine.Run([verb, file, .. options, "--json"], () => new MemoryStream(), output, TextWriter.Null, CancellationToken.None);
        using JsonDocument document = JsonDocument.Parse(output.ToString());
        return AnswerFacts.Of(exitCode, document.RootElement);
    }
}
