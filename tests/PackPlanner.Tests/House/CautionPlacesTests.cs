using PackPlanner.Core.Cautions;

namespace PackPlanner.Tests.House;

/// <summary>A caution that nothing raises is a promise broken in silence.</summary>
public class CautionPlacesTests
{
    [Fact]
    public void Every_caution_is_raised_somewhere_and_tested_somewhere()
    {
        string raised = TextOf("src", but: ["CellCautionWords.cs", "PackCautionWords.cs"]);
        string tested = TextOf("tests", but: ["CautionPlacesTests.cs"]);

        Assert.DoesNotContain(CautionCatalogue.All.Select(entry => entry.Code), code => !raised.Contains($"\"{code}\"", StringComparison.Ordinal));
        Assert.DoesNotContain(CautionCatalogue.All.Select(entry => entry.Code), code => !tested.Contains(code, StringComparison.Ordinal));
    }

    private static string TextOf(string folder, string[] but) => string.Concat(
        Directory.EnumerateFiles(Repository.At(folder), "*.cs", SearchOption.AllDirectories)
            .Where(file => !but.Contains(Path.GetFileName(file)) && !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Select(File.ReadAllText));
}
