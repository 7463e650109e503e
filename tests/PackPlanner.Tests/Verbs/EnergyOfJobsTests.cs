using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

/// <summary>Usable energy asked of a job instead of a table of groups.</summary>
public class EnergyOfJobsTests
{
    [Fact]
    public void A_job_without_cells_is_counted_from_its_last_log()
    {
        string folder = Directory.CreateTempSubdirectory("packplanner-energy").FullName;
        try
        {
            string job = Path.Combine(folder, "tractor.job.json");
            Assert.Equal(0, Planner.Run("job", "new", job).ExitCode);
            Assert.Equal(0, Planner.Run("job", "add", job, Repository.At("sample-data", "tractor", "given.json"), Repository.At("sample-data", "tractor", "ride-october.csv")).ExitCode);

            (int exitCode, JsonElement answer) = Planner.Json("energy", job);

            Assert.Equal(0, exitCode);
            Assert.Equal(11, answer.GetProperty("endsAt").GetProperty("group").GetInt32());
            // October's cell 11 holds 71 of 105 Ah.
            Assert.InRange(answer.GetProperty("usableAhAtRest").GetDouble(), 67, 75);
            Assert.Equal(
                answer.GetProperty("usableWh").GetDouble(),
                answer.GetProperty("nominalWh").GetDouble() + answer.GetProperty("losses").EnumerateArray().Sum(step => step.GetProperty("wh") is { ValueKind: JsonValueKind.Number } wh ? wh.GetDouble() : 0),
                tolerance: 0.5);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // What a job knows of its cells must not be lost on the way to the same question: 1 kHz resistances tell no current that lasts.
    [Fact]
    public void A_job_of_cells_with_1_kHz_resistances_tells_only_the_first_instant_as_their_table_does()
    {
        using Folder folder = new();
        string job = folder.File("a.job.json"), cells = folder.File("cells.csv");
        File.WriteAllText(cells, "label,group,capacityAh,resistance 1 kHz (mOhm)\nA,1,2.5,20\nB,1,2.5,20\nC,2,2.5,20\nD,2,2.5,20\n");
        Assert.Equal(0, Planner.Run("job", "new", job).ExitCode);
        Assert.Equal(0, Planner.Run("job", "add", job, cells).ExitCode);
        Assert.Equal(0, Planner.Run("job", "set", job, "chemistry=NMC", "series=2", "parallel=2").ExitCode);

        JsonElement ofJob = Planner.Json("energy", job).Document, ofTable = Planner.Json("energy", cells, "--chemistry", "NMC").Document;

        Assert.Equal(JsonValueKind.Null, ofTable.GetProperty("shortCircuitA").ValueKind);
        Assert.Equal(JsonValueKind.Null, ofJob.GetProperty("shortCircuitA").ValueKind);
        Assert.Equal(ofTable.GetProperty("prospectiveShortCircuitA").GetDouble(), ofJob.GetProperty("prospectiveShortCircuitA").GetDouble(), tolerance: 1e-6);
    }

    [Fact]
    public void A_window_too_narrow_for_the_curve_is_refused_of_a_job_too()
    {
        using Folder folder = new();
        string job = folder.File("a.job.json"), cells = folder.File("cells.csv");
        File.WriteAllText(cells, "label,group,capacityAh\nA,1,2.5\nB,2,2.5\n");
        Assert.Equal(0, Planner.Run("job", "new", job).ExitCode);
        Assert.Equal(0, Planner.Run("job", "add", job, cells).ExitCode);
        Assert.Equal(0, Planner.Run("job", "set", job, "chemistry=NMC", "series=2", "parallel=1", "emptyV=4.19V").ExitCode);

        (int exitCode, JsonElement answer) = Planner.Json("energy", job);

        Assert.Equal(3, exitCode);
        Assert.Equal("limits-outside", answer.GetProperty("code").GetString());
    }

    [Fact]
    public void A_job_is_taken_under_each_name_that_job_takes_and_asked_with_what_is_typed()
    {
        using Folder folder = new();
        string cells = folder.File("cells.csv"), plain = folder.File("my.json");
        File.WriteAllText(cells, "label,group,capacityAh,resistanceMilliohm\nA,1,2.5,20\nB,1,2.5,20\nC,2,2.5,20\nD,2,2.4,20\n");
        foreach (string job in new[] { folder.File("trike"), plain })
        {
            Assert.Equal(0, Planner.Run("job", "new", job, "series=2").ExitCode);
            Assert.Equal(0, Planner.Run("job", "add", job, cells).ExitCode);
        }

        (int unknown, JsonElement why) = Planner.Json("energy", folder.File("trike"), "--parallel", "2");
        JsonElement byName = Planner.Json("energy", folder.File("trike"), "--chemistry", "NMC", "--parallel", "2").Document;
        JsonElement byFile = Planner.Json("energy", plain, "--chemistry", "NMC", "--parallel", "2").Document;

        Assert.Equal((3, "no-chemistry"), (unknown, why.GetProperty("code").GetString()));
        Assert.Equal(4.9, byName.GetProperty("usableAh").GetDouble(), 0.15);
        Assert.Equal(byName.GetProperty("usableWh").GetDouble(), byFile.GetProperty("usableWh").GetDouble());
    }

    // A cut-off of 4.2 V is that of a charger: an energy of the cells is told all the same, as if nothing had been said.
    [Fact]
    public void A_cut_off_that_no_discharge_has_is_not_taken_for_the_end_of_the_tests()
    {
        Assert.Equal(Usable(""), Usable(",4.2"), tolerance: 1e-9);
        Assert.NotEqual(Usable(""), Usable(",3.3"), tolerance: 0.01);

        static double Usable(string cutoff)
        {
            using Folder folder = new();
            string job = folder.File("a.job.json"), cells = folder.File("cells.csv");
            File.WriteAllText(cells, $"label,group,capacityAh{(cutoff.Length > 0 ? ",cutoff_V" : "")}\nA,1,2.5{cutoff}\nB,2,2.5{cutoff}\n");
            Assert.Equal(0, Planner.Run("job", "new", job).ExitCode);
            Assert.Equal(0, Planner.Run("job", "add", job, cells).ExitCode);
            Assert.Equal(0, Planner.Run("job", "set", job, "chemistry=NMC", "series=2", "parallel=1").ExitCode);
            (int exitCode, JsonElement answer) = Planner.Json("energy", job);
            Assert.Equal(0, exitCode);
            return answer.GetProperty("usableWh").GetDouble();
        }
    }

    // Of thirteen groups that are alike one is surely weaker than it reads: the figure as read lies above the range that is likely.
    [Fact]
    public void A_figure_outside_its_likely_range_is_not_said_with_plus_and_minus()
    {
        using Folder folder = new();
        Assert.Equal(0, Planner.Run("demo", "trike", "--into", folder.File("d")).ExitCode);
        string job = folder.File("d/trike.job.json");

        (_, JsonElement answer) = Planner.Json("energy", job);
        string words = Planner.Run("energy", job).Output;

        JsonElement range = answer.GetProperty("usableWhRange");
        Assert.True(answer.GetProperty("usableWh").GetDouble() > range.GetProperty("high").GetDouble());
        string said = words.Split('\n').First(line => line.StartsWith("Usable:", StringComparison.Ordinal));
        Assert.Contains(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"as read, likely {range.GetProperty("low").GetDouble():0} to {range.GetProperty("high").GetDouble():0}"), said, StringComparison.Ordinal);
    }
}
