using System.Text.Json;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.Fuzz;

/// <summary>Runs one command line on a spoiled input and says what is wrong with how it ended.</summary>
internal static class FuzzTry
{
    /// <summary>Writes the input that a seed makes and tries it.</summary>
    /// <param name="seed">Which input.</param>
    /// <param name="folder">Where to write it.</param>
    /// <param name="line">The command line that was run.</param>
    /// <param name="spoiled">The input.</param>
    /// <returns>The fault, or null.</returns>
    internal static string? OfSeed(int seed, string folder, out string[] line, out byte[] spoiled)
    {
        FuzzCase one = FuzzCase.Drawn(seed);
        spoiled = new Mutator(seed).Spoil(one.Bytes);
        string file = Path.Combine(folder, "spoiled" + one.Ending);
        File.WriteAllBytes(file, spoiled);
        line = one.Line(file);
        return Fault(line, CancellationToken.None);
    }

    /// <summary>Runs a command line: an answer or a refusal, one JSON document, a known exit code, a next step.</summary>
    /// <returns>The fault, or null.</returns>
    internal static string? Fault(string[] line, CancellationToken stopped)
    {
        try
        {
            using StringWriter output = new() { NewLine = "\n" };
            int exitCode = CommandLine.Run(line, () => new MemoryStream(), output, TextWriter.Null, stopped);
            string text = output.ToString();
            using JsonDocument document = JsonDocument.Parse(text);
            string schema = document.RootElement.GetProperty("schema").GetString()!;
            if (exitCode is not (0 or 2 or 3 or 4))
                return $"exit {exitCode}";
            if (schema == "packplanner/error" && string.IsNullOrWhiteSpace(document.RootElement.GetProperty("next").GetString()))
                return "an error without a next step";
            return text.Contains("   at PackPlanner.", StringComparison.Ordinal) ? "a stack trace" : null;
        }
        catch (Exception fault)
        {
            string? where = fault.StackTrace?.Split('\n').FirstOrDefault(frame => frame.Contains("PackPlanner", StringComparison.Ordinal))?.Trim();
            return $"{fault.GetType().Name}: {fault.Message} {where}";
        }
    }
}
