using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Tests.Formats.JobFiles;

/// <summary>What is exported is read again as what the job held.</summary>
public class JobExportTests
{
    private static readonly CellRow Full = Jobs.Row() with { Remark = "swollen" };

    private static T Value<T>(Outcome<T> outcome)
        where T : class => Assert.IsType<Outcome<T>.Given>(outcome).Value;

    private static Job Again(Job job, string file, bool comma)
    {
        using Folder folder = new();
        OpenJob open = Value(JobFile.Create(folder.File("one"), JobHistory.Of(job)));
        Value(JobExport.Write(open, folder.File("out"), comma, TestContext.Current.CancellationToken));
        return Value(JobAdding.Add(JobHistory.Of(new Job { Title = "again" }), [folder.File($"out/{file}")], new())).History.Now;
    }

    private static Job Holding(params CellRow[] rows) => JobHistory.Of(new Job { Title = "one" }).Do(JobChanges.AddTable(new JobTable(
        new JobSource("s1", "cells.csv", new string('a', 64), SourceKind.Cells, []), rows, 0))).Now;

    // Where a row was read and the step of its figures follow from the table that it stands in.
    private static CellRow Bare(CellRow row) => row with { File = null, Line = null, CapacityStepAh = null };

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Rows_of_cells_come_back_with_every_figure(bool comma)
    {
        CellRow[] rows =
        [
            Full,
            Full with { Label = "T043", Remark = null, Condition = null, CapacityAh = 4.391, StateOfChargeFraction = 0.29, Date = new DateTime(2026, 10, 12, 14, 30, 5) },
            Full with { Label = "T044", AcResistanceMilliohm = null, LaterRestV = null, LaterDate = null, Group = null, CapacityAh = 4.402 },
        ];

        Job again = Again(Holding(rows), "cells.csv", comma);

        Assert.Equal(rows.Select(Bare), again.Rows.Select(Bare));
    }

    [Fact]
    public void Rows_of_several_kinds_of_resistance_keep_their_kind()
    {
        CellRow[] rows =
        [
            new() { Label = "A", CapacityAh = 2.5, ResistanceMilliohm = 31, ResistanceKind = ResistanceKind.Dc },
            new() { Label = "B", CapacityAh = 2.4, ResistanceMilliohm = 17, ResistanceKind = ResistanceKind.Ac1Khz },
            new() { Label = "C", CapacityAh = 2.3, ResistanceMilliohm = 33, SelfDischargeMillivoltPerDay = 1.25 },
        ];

        Assert.Equal(rows.Select(Bare), Again(Holding(rows), "cells.csv", comma: false).Rows.Select(Bare));
    }

    [Fact]
    public void A_swollen_cell_is_rejected_after_export_and_adding_too()
    {
        Job job = Holding([.. Enumerable.Range(1, 12).Select(i => new CellRow { Label = $"T{i:00}", CapacityAh = 4.4 + (i * 0.001), ResistanceMilliohm = 32, Remark = i == 5 ? "swollen" : null })]);

        Job again = Again(job, "cells.csv", comma: false);

        Assert.Equal(Verdict.Reject, JobLot.Judge(job).Cells.Single(cell => cell.Label == "T05").Verdict);
        Assert.Equal(JobLot.Judge(job).Cells.Select(cell => cell.Verdict), JobLot.Judge(again).Cells.Select(cell => cell.Verdict));
    }

    [Fact]
    public void A_log_comes_back_with_pack_volts_and_state_of_charge()
    {
        const int rows = 60;
        double[] time = [.. Enumerable.Range(0, rows).Select(i => (double)i)];
        RideLog log = new()
        {
            TimeS = time,
            CurrentA = [.. time.Select(t => 20 + (t % 7))],
            GroupV = [[.. time.Select(t => 3.9 - (t / 500))], [.. time.Select(t => 3.88 - (t / 480))], [.. time.Select(t => 3.91 - (t / 510))]],
            TemperatureDegC = [[.. time.Select(t => 21 + (t / 100))]],
            PackV = [.. time.Select(t => Math.Round(11.7 - (t / 160), 3))],
            ShownStateOfCharge = [.. time.Select(t => Math.Round(0.91 - (t / 1000), 3))],
            Source = "ride.csv",
        };
        Job job = JobHistory.Of(new Job { Title = "one" }).Do(JobChanges.AddLog(new JobLog(new JobSource("s1", "ride.csv", new string('a', 64), SourceKind.PackLog, []), log, 0))).Now;

        RideLog again = Assert.Single(Again(job, "log-s1.csv", comma: false).Logs).Log;

        Assert.Equal(log.GroupV, again.GroupV);
        Assert.Equal(log.CurrentA, again.CurrentA);
        Assert.Equal(log.PackV, again.PackV);
        Assert.Equal(log.ShownStateOfCharge.Select(fraction => Math.Round(fraction, 9)), again.ShownStateOfCharge!.Select(fraction => Math.Round(fraction, 9)));
    }

    [Fact]
    public void Nothing_that_a_row_holds_is_left_out()
    {
        string[] names = [.. CellRowText.Columns.Keys.Except(["file", "line", "capacityStepAh"])];

        Assert.Equal(typeof(CellRow).GetProperties().Length - 3, names.Length);
        Assert.Equal(names.Length - 1, ExportedCells.Of([Full]).Headings.Count);
    }

    [Fact]
    public void Locks_come_as_a_table_and_verdicts_by_hand_are_told()
    {
        Origin you = Origin.You(new DateOnly(2026, 11, 2));
        Job job = JobHistory.Of(Holding(Full, Full with { Label = "T044" }, Full with { Label = "T045" }))
            .Do(JobChanges.SetVerdict("T044", new VerdictOverride(Verdict.Hold, "smells", you)))
            .Do(JobChanges.SetVerdict("T045", new VerdictOverride(Verdict.Use, "tested again", you)))
            .Do(new JobChange("lock", before => before with { Locks = before.Locks.SetItem(Full.Label, 2) })).Now;
        using Folder folder = new();

        Value(JobExport.Write(Value(JobFile.Create(folder.File("one"), JobHistory.Of(job))), folder.File("out"), decimalComma: false, TestContext.Current.CancellationToken));

        GroupingRead locks = Value(GroupingFile.Read(folder.File("out/locks.csv"), new()));
        Assert.Equal([(Full.Label, 2)], locks.Pairs);
        Assert.Collection(
            JobExport.NotInTheTable(job),
            apart => Assert.EndsWith("--leave-out T044", apart, StringComparison.Ordinal),
            used => Assert.EndsWith(": T045", used, StringComparison.Ordinal),
            pins => Assert.EndsWith("--lock locks.csv", pins, StringComparison.Ordinal));
    }

    // Other verbs take the groups that the screens show, arranged by hand or not.
    [Fact]
    public void Groups_of_the_search_are_written_too()
    {
        CellRow[] rows = [.. Enumerable.Range(1, 6).Select(i => new CellRow { Label = $"K{i}", CapacityAh = 2 + (0.01 * i), RestV = 3.6 })];
        Origin you = Origin.You(new DateOnly(2026, 11, 2));
        JobHistory job = JobHistory.Of(Holding(rows)).Do(JobChanges.Set("series", new Given(new JobValue.Number(3), you))).Do(JobChanges.Set("parallel", new Given(new JobValue.Number(2), you)));
        using Folder folder = new();
        Value(JobExport.Write(Value(JobFile.Create(folder.File("one"), job)), folder.File("out"), decimalComma: false, TestContext.Current.CancellationToken));

        string[] lines = File.ReadAllText(folder.File("out/groups.csv")).Split('\n', StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal("cell,group", lines[0].Trim());
        // 2.01 with 2.06, 2.02 with 2.05, 2.03 with 2.04: all 4.07 Ah.
        Assert.Equal(["K1 K6", "K2 K5", "K3 K4"], lines.Skip(1).Select(line => line.Trim().Split(',')).GroupBy(parts => parts[1]).Select(group => string.Join(' ', group.Select(parts => parts[0]).Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal));
    }
}
