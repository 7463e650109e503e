using System.Text;
using System.Text.Json;
using PackPlanner.Tests.Golden;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.Verbs;

/// <summary>Runs the command line in this process, as a shell would.</summary>
internal static class Planner
{
    /// <summary>Runs one command line.</summary>
    internal static (int ExitCode, string Output, string Notes) Run(params string[] args) => RunWithInput("", args);

    /// <summary>Runs one command line with something on standard input.</summary>
    internal static (int ExitCode, string Output, string Notes) RunWithInput(string input, params string[] args)
    {
        using StringWriter output = new() { NewLine = "\n" };
        using StringWriter notes = new() { NewLine = "\n" };
        int exitCode = CommandLine.Run(
            args, () => new MemoryStream(Encoding.UTF8.GetBytes(input)), output, notes, TestContext.Current.CancellationToken);
        return (exitCode, output.ToString(), notes.ToString());
    }

    /// <summary>Runs one command line with --json and reads the one document it must print, which must be as docs/schema says.</summary>
    internal static (int ExitCode, JsonElement Document) Json(params string[] args) => JsonWithInput("", args);

    /// <summary>The same with something on standard input.</summary>
    internal static (int ExitCode, JsonElement Document) JsonWithInput(string input, params string[] args)
    {
        (int exitCode, string output, _) = RunWithInput(input, [.. args, "--json"]);
        using JsonDocument document = JsonDocument.Parse(output);
        Assert.Empty(AnswerSchemas.Faults(document.RootElement));
        return (exitCode, document.RootElement.Clone());
    }
}
