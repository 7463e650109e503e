using System.Globalization;
using System.Text;
using System.Text.Json;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Fuzz;

/// <summary>
/// Spoiled inputs through every verb that reads: an answer or a clear refusal, always one JSON document, never an
/// exception. FUZZ_INPUTS sets how many (2,000 unless set), FUZZ_SEED where to begin, FUZZ_KEEP a folder for the inputs that fail.
/// </summary>
public sealed class FuzzTests : IDisposable
{
    private static readonly int Inputs = Setting("FUZZ_INPUTS", 2000);
    private static readonly int FirstSeed = Setting("FUZZ_SEED", 1);

    // A quick look keeps a search on a spoiled case short without touching what is read.
    private static readonly (string Verb, string[] Options, string Text)[] Quick =
    [
        ("look", [], FuzzInputs.Cells),
        ("look", [], FuzzInputs.GermanCells),
        ("look", [], FuzzInputs.WideLog),
        ("look", [], FuzzInputs.LongLog),
        ("cells", [], FuzzInputs.Cells),
        ("cells", ["--rated-ah", "5"], FuzzInputs.GermanCells),
        ("capacity", [], FuzzInputs.TesterLog),
        ("share", ["--load", "10A", "--link", "0.2mohm"], FuzzInputs.Cells),
        ("share", [], FuzzInputs.ShareCase),
        ("join", ["--link", "0.2mohm"], FuzzInputs.Cells),
        ("balance", ["--bleed", "60mA", "--chemistry", "NMC"], FuzzInputs.Groups),
        ("job", ["show"], FuzzInputs.Job()),
    ];

    private static readonly (string Verb, string[] Options, string Text)[] Slow =
    [
        ("match", ["--series", "2", "--parallel", "2", "--all"], FuzzInputs.Cells),
        ("diagnose", ["--chemistry", "NMC", "--series", "3", "--parallel", "2", "--rated-ah", "10"], FuzzInputs.WideLog),
        ("energy", ["--load", "10A", "--chemistry", "NMC"], FuzzInputs.Groups),
        ("size", [], FuzzInputs.SizeCase),
        ("fit", ["--quick"], FuzzInputs.FitCase),
    ];

    private readonly string folder = Directory.CreateTempSubdirectory("packplanner-fuzz-").FullName;

    [Fact]
    public void No_spoiled_input_brings_a_verb_down()
    {
        List<string> faults = [];
        for (int seed = FirstSeed; seed < FirstSeed + Inputs && faults.Count < 5; seed++)
        {
            // Searches and integrations take a thousand times longer than reading does: every tenth input is enough for them.
            (string verb, string[] options, string text) = seed % 10 == 0 ? Slow[seed / 10 % Slow.Length] : Quick[seed % Quick.Length];
            byte[] spoiled = new Mutator(seed).Spoil(Encoding.UTF8.GetBytes(text));
            string file = Path.Combine(folder, verb == "job" ? "spoiled.job.json" : "spoiled.csv");
            File.WriteAllBytes(file, spoiled);
            string[] line = verb == "job" ? [verb, .. options, file, "--json"] : [verb, file, .. options, "--json"];
            if (Fault(line) is not { } fault)
                continue;
            faults.Add($"seed {seed}, {string.Join(' ', line)}: {fault}");
            if (Environment.GetEnvironmentVariable("FUZZ_KEEP") is { Length: > 0 } kept)
                File.WriteAllBytes(Path.Combine(kept, $"{verb}-{seed}{Path.GetExtension(file)}"), spoiled);
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    [Fact]
    public void Every_whole_input_of_this_test_is_understood_before_it_is_spoiled()
    {
        foreach ((string verb, string[] options, string text) in Quick.Concat(Slow))
        {
            string file = Path.Combine(folder, verb == "job" ? "whole.job.json" : "whole.csv");
            File.WriteAllText(file, text);
            string[] line = verb == "job" ? [verb, .. options, file, "--json"] : [verb, file, .. options, "--json"];
            (int exitCode, string output, _) = Planner.Run(line);
            Assert.True(exitCode == 0, $"{string.Join(' ', line)} gives {exitCode}: {output[..Math.Min(400, output.Length)]}");
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(folder, recursive: true);

    internal static string? Fault(string[] line)
    {
        try
        {
            (int exitCode, string output, _) = Planner.Run(line);
            using JsonDocument document = JsonDocument.Parse(output);
            string schema = document.RootElement.GetProperty("schema").GetString()!;
            if (exitCode is not (0 or 2 or 3 or 4))
                return $"exit {exitCode}";
            if (schema == "packplanner/error" && string.IsNullOrWhiteSpace(document.RootElement.GetProperty("next").GetString()))
                return "an error without a next step";
            return output.Contains("   at PackPlanner.", StringComparison.Ordinal) ? "a stack trace" : null;
        }
        catch (Exception fault) when (fault is not Xunit.Sdk.XunitException)
        {
            return $"{fault.GetType().Name}: {fault.Message} {fault.StackTrace?.Split('\n').FirstOrDefault(frame => frame.Contains("PackPlanner", StringComparison.Ordinal))?.Trim()}";
        }
    }

    private static int Setting(string name, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out int set) ? set : otherwise;
}
