using System.Globalization;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Fuzz;

/// <summary>
/// Spoiled inputs through every verb that reads: an answer or a clear refusal, always one JSON document, never an
/// exception. The long run is a program of its own, tests/PackPlanner.Fuzzing, over the same inputs.
/// </summary>
public sealed class FuzzTests : IDisposable
{
    private const int Inputs = 5000;

    private readonly string folder = Directory.CreateTempSubdirectory("packplanner-fuzz-").FullName;

    [Fact]
    public void No_spoiled_input_brings_a_verb_down()
    {
        List<string> faults = [];
        for (int seed = 1; seed <= Inputs && faults.Count < 5; seed++)
            if (FuzzTry.OfSeed(seed, folder, out string[] line, out _) is { } fault)
                faults.Add(string.Create(CultureInfo.InvariantCulture, $"seed {seed}, {string.Join(' ', line)}: {fault}"));
        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    [Fact]
    public void Every_whole_input_of_this_test_is_understood_before_it_is_spoiled()
    {
        foreach (FuzzCase one in FuzzCase.Each)
        {
            string file = Path.Combine(folder, "whole" + one.Ending);
            File.WriteAllBytes(file, one.Bytes);
            (int exitCode, string output, _) = Planner.Run(one.Line(file));
            Assert.True(exitCode == 0, $"{string.Join(' ', one.Line(file))} gives {exitCode}: {output[..Math.Min(400, output.Length)]}");
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(folder, recursive: true);
}
