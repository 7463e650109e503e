using PackPlanner.Screens;
using PackPlanner.Screens.Keys;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Screens;

public class KeyBookTests
{
    [Fact]
    public void No_key_stands_twice_in_the_list()
    {
        string[] twice = [.. KeyBook.All.GroupBy(entry => entry.Key).Where(same => same.Count() > 1).Select(same => same.Key)];

        Assert.Empty(twice);
    }

    [Fact]
    public void Every_key_in_use_is_in_the_list_and_every_key_in_the_list_is_declared_once()
    {
        string[] declared =
        [
            .. typeof(KeyBook).GetFields(System.Reflection.BindingFlags.Static | System.Reflection.BindingFlags.NonPublic)
                .Where(field => field.FieldType == typeof(KeyEntry)).Select(field => ((KeyEntry)field.GetValue(null)!).Key),
        ];

        Assert.Equal(declared.Order(StringComparer.Ordinal), KeyBook.All.Select(entry => entry.Key).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void No_screen_gives_one_key_two_meanings()
    {
        using Bench bench = new();
        bench.OpenLot();
        foreach (IStep step in bench.Desk.Steps)
        {
            string[] twice = [.. step.Keys.GroupBy(key => key.Entry.Key).Where(same => same.Count() > 1)
                .Concat(step.Keys.Concat(bench.Desk.GeneralKeys).GroupBy(key => key.Entry.Key).Where(same => same.Select(key => key.Entry).Distinct().Count() > 1))
                .Select(same => $"{step.Name} {same.Key}")];

            Assert.Empty(twice);
        }
    }

    [Fact]
    public void Every_key_of_the_list_has_a_place()
    {
        // Paging and the ends of a list move the cursor and are no actions; ListTable takes them.
        string[] moves = ["Pages", "Ends"];
        string source = string.Concat(Directory.EnumerateFiles(Repository.At("src", "PackPlanner", "Screens"), "*.cs", SearchOption.AllDirectories)
            .Where(file => Path.GetFileName(file) != "KeyBook.cs").Select(File.ReadAllText));

        string[] without =
        [
            .. typeof(KeyBook).GetFields(System.Reflection.BindingFlags.Static | System.Reflection.BindingFlags.NonPublic)
                .Where(field => field.FieldType == typeof(KeyEntry) && !moves.Contains(field.Name))
                .Select(field => field.Name)
                .Where(name => !source.Contains($"KeyBook.{name}", StringComparison.Ordinal)),
        ];

        Assert.Empty(without);
    }

    [Fact]
    public void Everything_a_job_may_be_told_has_a_line_on_its_form() =>
        Assert.Equal(
            PackPlanner.Core.Jobs.GivenCatalogue.All.Select(entry => entry.Key).Order(StringComparer.Ordinal),
            PackPlanner.Screens.JobScreen.GivenRow.All.SelectMany(row => row.Keys).Order(StringComparer.Ordinal));

    [Fact]
    public void Keys_that_terminals_swallow_are_not_needed()
    {
        Assert.DoesNotContain(KeyBook.All, entry => entry.Key.Contains("Ctrl", StringComparison.Ordinal) || entry.Key.Contains("Alt", StringComparison.Ordinal)
            || entry.Key is ['F', >= '0' and <= '9', ..]);
    }

    [Fact]
    public void The_page_of_keys_is_the_list()
    {
        string file = Repository.At("docs", "keys.md");
        if (Environment.GetEnvironmentVariable("ACCEPT_GOLDEN") == "1")
            File.WriteAllText(file, KeyBook.Document());

        Assert.Equal(File.ReadAllText(file), KeyBook.Document());
    }
}
