using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Formats;

/// <summary>A spelled file that no line expects anything of would pass whatever is read from it.</summary>
public class SpellingFilesTests
{
    [Theory]
    [InlineData("cells")]
    [InlineData("logs")]
    [InlineData("refused")]
    public void Every_spelled_file_has_its_expected_reading(string kind)
    {
        string[] expected = [.. File.ReadLines(Repository.Data("spellings", kind + ".expected.txt")).Where(line => line.Length > 0).Select(line => line.Split('\t')[0])];

        Assert.Equal(Directory.GetFiles(Repository.Data("spellings", kind)).Select(file => Path.GetFileName(file).Split('.')[0]).Order(StringComparer.Ordinal), expected.Order(StringComparer.Ordinal));
    }
}
