using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Fuzz;

/// <summary>Inputs that once brought a verb down, kept as they were found, through every verb that reads.</summary>
public sealed class BrokenFilesTests
{
    private static readonly string[][] Lines =
    [
        ["look"], ["cells"], ["capacity"], ["share", "--load", "10A", "--link", "0.2mohm"], ["join", "--link", "0.2mohm"],
        ["balance", "--bleed", "60mA", "--chemistry", "NMC"], ["match", "--series", "2", "--parallel", "2", "--all"],
        ["diagnose", "--chemistry", "NMC", "--series", "3", "--parallel", "2", "--rated-ah", "10"],
        ["energy", "--load", "10A", "--chemistry", "NMC"], ["size"], ["fit", "--quick"], ["job", "show"],
    ];

    private static readonly string Folder = Repository.Data("broken");

    /// <summary>The files, by name.</summary>
    public static TheoryData<string> Files { get; } = [.. Directory.EnumerateFiles(Folder).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void An_input_that_once_brought_a_verb_down_brings_none_down_now(string name)
    {
        string file = Path.Combine(Folder, name);
        string[] faults = [.. Lines
            .Select(line => line[0] == "job" ? [.. line, file, "--json"] : (string[])[line[0], file, .. line[1..], "--json"])
            .Select(line => (Line: string.Join(' ', line), Fault: FuzzTry.Fault(line, TestContext.Current.CancellationToken)))
            .Where(tried => tried.Fault is not null).Select(tried => $"{tried.Line}: {tried.Fault}")];
        Assert.True(faults.Length == 0, string.Join("\n", faults));
    }
}
