using System.Globalization;
using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

/// <summary>A file of groups in a job: what it says is followed, or refused by name, by every verb.</summary>
public sealed class JobGroupingTests : IDisposable
{
    private readonly Folder folder = new();

    public void Dispose() => folder.Dispose();

    private string Job => folder.File("pack.job.json");

    private static (int ExitCode, JsonElement Answer) Done(params string[] args) => Planner.Json(args);

    // Eight invented cells for 3s2p; one of them was noted as swollen.
    private void Make(string groups, int series = 3)
    {
        IEnumerable<string> rows = Enumerable.Range(1, 8).Select(i => string.Create(CultureInfo.InvariantCulture, $"A{i},{3.0 + (0.005 * i):0.000},20,3.60,{(i == 3 ? "swollen" : "fine")}"));
        File.WriteAllLines(folder.File("cells.csv"), ["label,capacity_Ah,resistance_mohm,rest_V,condition", .. rows]);
        File.WriteAllText(folder.File("groups.json"), groups);
        Assert.Equal(0, Done("job", "new", Job, "chemistry=NMC", "ratedAh=3.1", $"series={series}", "parallel=2").ExitCode);
        Assert.Equal(0, Done("job", "add", Job, folder.File("cells.csv"), folder.File("groups.json")).ExitCode);
    }

    private static string Groups(params string[] cells) => JsonSerializer.Serialize(new { groups = cells.Select(group => new { cells = group.Split(' ') }) });

    [Theory]
    [InlineData("A3 A4", 3, "A3 is rejected (damaged, caution-05)")]
    [InlineData("ZZ9 A4", 3, "ZZ9 is not among the cells")]
    [InlineData("A7 A4", 4, "there are 3 of them, and the job says 4 in series")]
    [InlineData("A7 A4 A8", 3, "group 2 has 3 cells, and the job says 2 in parallel")]
    public void Groups_that_cannot_be_followed_are_refused_with_the_reason(string second, int series, string why)
    {
        Make(Groups("A1 A2", second, "A5 A6"), series);

        (int sheets, JsonElement noSheet) = Done("sheet", Job, "pick", "--into", folder.File("out"));
        (int energy, JsonElement noEnergy) = Done("energy", Job);

        Assert.Equal((4, 3), (sheets, energy));
        Assert.Contains(why, noSheet.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Contains(why, noEnergy.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.File("out")));
    }

    [Fact]
    public void Groups_of_usable_cells_are_followed_and_the_damaged_one_is_on_no_pick_list()
    {
        Make(Groups("A1 A8", "A7 A4", "A5 A6"));

        Assert.Equal(0, Done("sheet", Job, "pick", "--into", folder.File("out")).ExitCode);

        string pick = File.ReadAllText(folder.File("out/pick.html"));
        Assert.Matches("A7</b></td><td[^>]*><span class=\"num\">2<", pick);
        Assert.DoesNotContain(">A3<", pick, StringComparison.Ordinal);
        // Whoever goes to the trays meets it there.
        Assert.Contains("damaged cell", pick, StringComparison.Ordinal);
        Assert.Contains("A3: ", pick, StringComparison.Ordinal);
    }

    // The tenth group of a lock that is left from a longer string.
    [Fact]
    public void A_lock_above_the_groups_in_series_is_told()
    {
        Make(Groups("A1 A8", "A7 A4", "A5 A6"));
        Done("job", "undo", Job);
        Assert.Equal(0, Done("job", "lock", Job, "A5=10").ExitCode);

        JsonElement energy = Done("energy", Job).Answer;

        Assert.Contains("Not locked: A5 in group 10; there are 3 groups.", energy.GetProperty("understood").EnumerateArray().Select(line => line.GetString()));
    }
}
