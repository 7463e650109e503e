using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Tests.Core.Jobs;

/// <summary>Values of a cell that are typed on the bench.</summary>
public class CellEditTests
{
    private static readonly DateOnly Today = new(2026, 11, 2);
    private static readonly Origin You = Origin.You(Today);

    private static Job With(params CellRow[] rows) => new() { Title = "tray", AddedRows = [.. rows] };

    private static ScreenedCell B1(Job job) => JobLot.Judge(job).Cells.Single(cell => cell.Label == "B1");

    // 100 mV in ten days, then 10 mV in twenty more: a leak that has not gone because the cell was looked at again.
    private static readonly CellRow Leaking = new()
    {
        Label = "B1",
        CapacityAh = 2.9,
        RestV = 3.9,
        Date = new DateTime(2026, 10, 1),
        LaterRestV = 3.8,
        LaterDate = new DateTime(2026, 10, 11),
        Chemistry = "NMC",
    };

    [Fact]
    public void Read_brings_back_the_reading_and_its_day()
    {
        Job before = With(Leaking);
        Job typed = FreshVolts.Write(Leaking, 1, new CellEdit(new JobValue.Number(3.79), You), Today).Apply(before);
        Job back = FreshVolts.Restore("B1", 1).Apply(typed);

        Assert.Equal(3.79, B1(typed).RestV);
        Assert.Empty(back.Edits);
        Assert.Equal(B1(before).SelfDischarge, B1(back).SelfDischarge);
        Assert.Equal(B1(before).Verdict, B1(back).Verdict);
    }

    // Left out, the table's own later reading would make 26 % a month less than 1.
    [Fact]
    public void A_fresh_reading_does_not_hide_what_was_lost_before_it()
    {
        Job typed = FreshVolts.Write(Leaking, 1, new CellEdit(new JobValue.Number(3.79), You), Today).Apply(With(Leaking));

        // Straight line by least squares through 3.9 V at 0, 3.8 V at 10 and 3.79 V at 32 days, by hand: 1.58 Vd / 536 d² = 2.948 mV a day.
        Assert.Equal(2.948, B1(typed).SelfDischarge!.MillivoltPerDay, 0.001);
        Assert.Equal(1, B1(typed).Rows.Count(row => row.CapacityAh is not null));
    }

    [Theory]
    [InlineData("bulging", "rust", "bulging; rust", "swollen")]
    [InlineData("no dents or rust", "swollen", "no dents or rust; swollen", "")]
    [InlineData(null, "smell", "smell", "")]
    public void A_tick_leaves_the_words_that_stood_there(string? before, string tick, string after, string already)
    {
        Job job = With(new CellRow { Label = "B1", CapacityAh = 2.9, Condition = before });
        Assert.Equal(already.Length > 0 ? [already] : [], CellLooks.Noted(job, "B1"));

        Job ticked = CellLooks.Tick(job, "B1", tick, You).Apply(job);

        Assert.Equal(after, ticked.Rows[0].Condition);
        Assert.Contains(tick, CellLooks.Noted(ticked, "B1"));
        Job unticked = CellLooks.Tick(ticked, "B1", tick, You).Apply(ticked);
        Assert.Equal(already.Length > 0 ? [already] : [], CellLooks.Noted(unticked, "B1"));
    }

    [Fact]
    public void Damage_of_another_row_is_seen_and_stays_when_something_else_is_unticked()
    {
        Job job = With(new CellRow { Label = "B1", CapacityAh = 2.9, Condition = "rust" }, new CellRow { Label = "B1", CapacityAh = 2.8, Condition = "geschwollen, aufgebläht" });
        Assert.Equal(["rust", "swollen"], CellLooks.Noted(job, "B1"));

        Job unticked = CellLooks.Tick(job, "B1", "rust", You).Apply(job);

        Assert.Equal(["swollen"], CellLooks.Noted(unticked, "B1"));
        Assert.Equal(Verdict.Reject, B1(unticked).Verdict);
        Assert.Empty(CellLooks.Noted(CellLooks.Tick(unticked, "B1", null, You).Apply(unticked), "B1"));
    }

    [Theory]
    [InlineData("4.1Ah", 4.1)]
    [InlineData("4100mAh", 4.1)]
    [InlineData("-2.95", null)]
    [InlineData("swollen", null)]
    public void A_capacity_is_read_as_people_type_it_and_never_below_nought(string typed, double? ampereHours)
    {
        string? why = TypedCellValue.Read(CellField.CapacityAh, typed, out JobValue? value);

        Assert.Equal(ampereHours is null, why is not null);
        Assert.Equal(ampereHours is { } ah ? new JobValue.Number(ah) : null, value);
    }
}
