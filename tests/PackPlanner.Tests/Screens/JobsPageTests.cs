using System.Text.RegularExpressions;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens;
using PackPlanner.Screens.CellsScreen;
using PackPlanner.Screens.Keys;
using PackPlanner.Tests.House;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.Screens;

/// <summary>The page that says where each job is done: what it names must exist.</summary>
public class JobsPageTests
{
    private static readonly string[][] Rows =
    [
        .. File.ReadLines(Repository.At("docs", "jobs.md")).Where(line => line.StartsWith("| ", StringComparison.Ordinal))
            .Select(line => line.Split('|', StringSplitOptions.TrimEntries)[1..^1]),
    ];

    private static string[][] Jobs => [.. Rows.Where(row => row[0].All(char.IsAsciiDigit))];

    private static string[][] CautionRows => [.. Rows.Where(row => row[0].StartsWith("caution-", StringComparison.Ordinal))];

    [Fact]
    public void All_jobs_stand_there_once_each_with_a_screen_and_a_verb()
    {
        Assert.Equal(Enumerable.Range(1, 42).Select(i => i.ToString(System.Globalization.CultureInfo.InvariantCulture)), Jobs.Select(row => row[0]));
        Assert.All(Jobs, row =>
        {
            Assert.Matches(@"^(\d [A-Z][a-z]+|any screen)", row[2]);
            Assert.StartsWith("`packplanner ", row[3], StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Every_step_that_is_named_has_that_number_and_every_key_is_one_of_its_keys()
    {
        using Bench bench = new();
        bench.OpenLot();
        string[] moves = ["Enter"];
        Assert.All(Jobs.Concat(CautionRows), row =>
        {
            foreach (Match named in Regex.Matches(row[2], @"(?:(\d) ([A-Z][a-z]+)|any screen)([^\d]*?)(?=(?:, )?\d [A-Z]|$)"))
            {
                if (named.Groups[1].Success)
                    Assert.Equal(bench.Desk.Steps[named.Groups[1].Value[0] - '1'].Name, named.Groups[2].Value);
                foreach (Match key in Regex.Matches(named.Groups[3].Value, "`([^`]+)`"))
                {
                    KeyEntry entry = Assert.Single(KeyBook.All, known => known.Key == key.Groups[1].Value);
                    if (!named.Groups[1].Success)
                        Assert.Contains(bench.Desk.GeneralKeys, known => known.Entry == entry);
                    else if (!moves.Contains(entry.Key))
                        Assert.Contains(KeysOf(named.Groups[2].Value).Concat(bench.Desk.GeneralKeys.Select(known => known.Entry)), known => known == entry);
                }
            }
        });
    }

    [Fact]
    public void Every_verb_and_every_option_that_is_named_exists()
    {
        Assert.All(Jobs, row =>
        {
            string[] words = row[3].Trim('`').Split(' ');
            Verb verb = Assert.Single(VerbList.All, known => known.Name == words[1]);
            foreach (string option in words.Where(word => word.StartsWith("--", StringComparison.Ordinal)))
                Assert.Contains(verb.Options.Concat(CommonOptions.All), known => known.Name == option);
        });
    }

    [Fact]
    public void Each_screen_has_its_verb_on_the_page_and_in_the_list_of_commands()
    {
        using Bench bench = new();
        bench.OpenLot();
        string[][] rows = [.. Rows.Where(row => row.Length == 2 && char.IsAsciiDigit(row[0][0]))];

        Assert.Equal(bench.Desk.Steps.Select((step, i) => $"{i + 1} {step.Name}"), rows.Select(row => row[0]));
        for (int i = 0; i < rows.Length; i++)
        {
            string verb = rows[i][1].Trim('`');
            Assert.Contains(VerbList.All, known => known.Name == verb.Split(' ')[1]);
            bench.Desk.GoTo(i);
            bench.Press(":");
            bench.Type("by script");
            Assert.Contains($"by script: {verb}", bench.Text(120, 36));
            bench.Press("Esc");
        }
    }

    [Fact]
    public void Every_caution_has_a_place_and_what_feeds_it_exists()
    {
        Assert.Equal(CautionCatalogue.All.Select(entry => entry.Code).Order(StringComparer.Ordinal), CautionRows.Select(row => row[0]).Order(StringComparer.Ordinal));
        string[] options = [.. VerbList.All.SelectMany(verb => verb.Options).Concat(CommonOptions.All).Select(option => option.Name)];
        Assert.All(CautionRows, row =>
        {
            foreach (Match given in Regex.Matches(row[3], @"given ([A-Za-z, ]+)"))
                Assert.All(given.Groups[1].Value.Split(',', StringSplitOptions.TrimEntries), key => Assert.NotNull(GivenCatalogue.Find(key)));
            foreach (Match option in Regex.Matches(row[3], "--[a-z-]+"))
                Assert.Contains(option.Value, options);
            foreach (Match field in Regex.Matches(row[2], @"\(([^)]+)\)"))
                Assert.Contains(field.Groups[1].Value, CellColumns.Fields.Keys);
        });
    }

    // Keys of a step over the invented scenes, because some have a use only when there is a log, a space or a pack.
    private static HashSet<KeyEntry> KeysOf(string step) => Known.Value[step];

    private static readonly Lazy<Dictionary<string, HashSet<KeyEntry>>> Known = new(() =>
    {
        Dictionary<string, HashSet<KeyEntry>> known = [];
        foreach (string scene in new[] { "trike", "tractor" })
        {
            using Bench bench = new();
            bench.Desk.Store.Demo(scene);
            foreach (IStep step in bench.Desk.Steps)
            {
                if (!known.TryGetValue(step.Name, out HashSet<KeyEntry>? keys))
                    known.Add(step.Name, keys = []);
                keys.UnionWith(step.Keys.Select(key => key.Entry));
            }
        }

        return known;
    });

    [Fact]
    public void The_log_tells_what_to_bleed_and_what_changed_and_the_space_what_there_is_to_choose_from()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("tractor");
        bench.Desk.GoTo(6);
        bench.Text();
        bench.Press("t", "t", "t", "t");
        string balance = bench.Text();
        Assert.Contains("bleed Ah", balance);
        Assert.Matches(@"\d \s*\d+\.\d\d\s+\d+\.\d\d", balance);
        bench.Press("=");
        Assert.Contains("what balances group 1", bench.Text());
        Assert.Matches(@"% of charge below the fullest group, of \d+\.\d Ah", bench.Text());
        bench.Press("Esc");
        // The latest of both logs is shown first: it tells how the pack is now.
        bench.Press("t");
        Assert.Contains("log 2 of 2", bench.Text());
        Assert.Contains("change Ah", bench.Text());
        bench.Press("d");
        Assert.Contains("log before", bench.Text());

        using Bench other = new();
        other.Desk.Store.Demo("scooter");
        other.Desk.GoTo(3);
        other.Text();
        Assert.NotNull(other.Desk.Job!.SizeNeed);
        other.Press("Enter");
        Assert.Matches(@"\d+s\d+p .* V .* kWh", other.Text(120, 36));
        other.Press("Enter");
        Assert.Contains("take ", other.Desk.Says);
        other.Press("u");
        Assert.Contains("undone: take ", other.Desk.Says);
    }
}
