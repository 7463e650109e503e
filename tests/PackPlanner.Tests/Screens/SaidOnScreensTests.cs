using System.Globalization;
using System.Text.RegularExpressions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Screens;

/// <summary>What an answer line says must bear being held against the table below it.</summary>
public partial class SaidOnScreensTests
{
    [Fact]
    public void A_verdict_by_hand_that_safety_does_not_let_stand_does_not_hide_why()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Desk.Do(new JobChange("add", job => job with { AddedRows = [new CellRow { Label = "X1", CapacityAh = 4.5, ResistanceMilliohm = 31, RestV = 0.3 }] }));
        bench.Desk.Do(JobChanges.SetVerdict("X1", new VerdictOverride(Verdict.Use, "it is fine", Origin.You(new DateOnly(2026, 11, 2)))));

        bench.Press("2");

        Assert.Matches("X1 +reject .*rests at 0.300 V", bench.Text(120, 36));
    }

    [Fact]
    public void The_energy_of_many_like_groups_is_said_with_the_range_that_is_likely()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");

        bench.Press("6");

        // Of thirteen groups alike within noise one is weaker than it reads, so that the figure of the readings lies above its range.
        Match said = AnswerOfEnergy().Match(bench.Desk.Step.Picture.Answer);
        Assert.True(said.Success, bench.Desk.Step.Picture.Answer);
        double Number(int group) => double.Parse(said.Groups[group].Value, CultureInfo.InvariantCulture);
        Assert.True(Number(2) < Number(3) && Number(3) < Number(1) + 0.005, said.Value);
    }

    [Fact]
    public void What_a_remedy_gains_is_a_share_of_the_energy_that_stands_before_it()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("tractor");
        bench.Press("7");
        bench.Text();

        Match said = AnswerOfLog().Match(bench.Desk.Step.Picture.Answer);
        Assert.True(said.Success, bench.Desk.Step.Picture.Answer);
        double Number(int group) => double.Parse(said.Groups[group].Value, CultureInfo.InvariantCulture);

        // By hand from two decimals of a kWh: within a percent.
        Assert.Equal(100 * (Number(2) / Number(1) - 1), Number(3), tolerance: 1.0);
    }

    [Fact]
    public void A_remark_of_the_table_stands_beside_the_cell_and_in_its_page()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Desk.Do(new JobChange("add", job => job with { AddedRows = [new CellRow { Label = "A1", CapacityAh = 4.5, ResistanceMilliohm = 31, RestV = 3.6, Remark = "stopped at 3.1 V" }] }));

        bench.Press("2", "/");
        bench.Type("A1");
        bench.Press("Enter");

        Assert.Contains("remark: stopped at 3.1 V", bench.Text(120, 36), StringComparison.Ordinal);
        bench.Press("Enter");
        Assert.Matches("remark +stopped at 3.1 V", bench.Text(120, 36));
    }

    [GeneratedRegex(@"^([\d.]+) kWh as read, likely ([\d.]+)-([\d.]+),")]
    private static partial Regex AnswerOfEnergy();

    [GeneratedRegex(@"Now ([\d.]+) kWh.* ([\d.]+) kWh \(\+(\d+) %\)")]
    private static partial Regex AnswerOfLog();
}
