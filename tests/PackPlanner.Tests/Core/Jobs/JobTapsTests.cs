using System.Collections.Immutable;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Jobs;

/// <summary>Tap readings before a monitor is plugged in. The limits are common practice, no source.</summary>
public class JobTapsTests
{
    private static readonly Origin You = Origin.You(new DateOnly(2026, 11, 2));

    private static IReadOnlyList<Caution> Judge(params (int Tap, double Volts)[] readings) => JobTaps.Cautions(
        new Job
        {
            Title = "tray",
            Givens = new JobGivens()
                .With("chemistry", new Given(new JobValue.Word("NMC"), You))
                .With("series", new Given(new JobValue.Number(3), You))
                .With("emptyV", new Given(new JobValue.Number(3), You))
                .With("fullV", new Given(new JobValue.Number(4.2), You)),
            TapReadings = readings.ToImmutableSortedDictionary(one => one.Tap, one => new TapReading(one.Volts, You)),
        },
        []);

    // Groups that nobody measured may stand anywhere from 3.0 to 4.2 V: a sound pack at 3.85 V a group is right.
    [Fact]
    public void A_sound_pack_away_from_its_nominal_volts_is_right() => Assert.Empty(Judge((0, 0), (1, 3.85), (2, 7.7), (3, 11.55)));

    [Theory]
    [InlineData(1, -3.7)]
    [InlineData(1, 2.85)]
    [InlineData(1, 4.35)]
    [InlineData(2, 30)]
    [InlineData(4, 14.8)]
    public void A_reading_that_no_group_can_give_says_stop(int tap, double volts)
    {
        Caution caution = Assert.Single(Judge((tap, volts)));

        Assert.Equal(("caution-19", $"tap B{tap}"), (caution.Code, caution.Where));
        Assert.EndsWith("stop, do not plug in", caution.Saw, StringComparison.Ordinal);
    }

    // 7.7 V at the second tap is possible, but not 0.2 V above the first.
    [Fact]
    public void A_step_is_judged_by_itself() => Assert.Single(Judge((1, 4.2), (2, 6.3), (3, 10.3)));

    [Theory]
    [InlineData(3.70, true)]
    [InlineData(3.79, true)]
    [InlineData(3.81, false)]
    [InlineData(3.59, false)]
    public void A_measured_group_is_held_to_a_tenth_of_a_volt(double read, bool right) => Assert.Equal(
        right, TapCheck.IsRight(1, TapCheck.Expected([TapCheck.Group(3.7, 3, 4.2)]), new Dictionary<int, double> { [1] = read }));

    // Groups that were measured: 3.6 V each. One bad contact is one bad reading, not two.
    [Fact]
    public void Beside_a_wrong_reading_the_next_one_is_not_blamed_for_its_step()
    {
        VoltSpan[] expected = TapCheck.Expected([.. Enumerable.Repeat(TapCheck.Group(3.6, 3, 4.2), 4)]);
        Dictionary<int, double> contact = new() { [0] = 0, [1] = 3.6, [2] = -7.2, [3] = 10.8, [4] = 14.4 };
        Assert.Equal([TapFault.None, TapFault.None, TapFault.FromMinus, TapFault.None, TapFault.None], Enumerable.Range(0, 5).Select(tap => TapCheck.Fault(tap, expected, contact)!.Value));
        Assert.Equal("7.20 V expected from pack minus", JobTaps.Why(2, expected, contact));

        // A group the wrong way round moves all that come after it.
        Dictionary<int, double> reversed = new() { [1] = 3.6, [2] = 0, [3] = 3.6, [4] = 7.2 };
        Assert.Equal([TapFault.None, TapFault.FromMinus, TapFault.FromMinus, TapFault.FromMinus], Enumerable.Range(1, 4).Select(tap => TapCheck.Fault(tap, expected, reversed)!.Value));

        // Both are possible from pack minus, and 3.78 V is no step of a group at 3.6.
        Dictionary<int, double> step = new() { [1] = 3.51, [2] = 7.29 };
        Assert.Equal(TapFault.Step, TapCheck.Fault(2, expected, step));
        Assert.Equal("3.78 V above B1, 3.60 V expected", JobTaps.Why(2, expected, step));
    }

    // The volts stay those that were read; what they are of does not.
    [Fact]
    public void Readings_of_cells_that_moved_are_measured_again()
    {
        IReadOnlyList<JobGroup> then = Groups("AB", "CD", "EF"), now = Groups("AB", "CE", "DF");
        Job job = new()
        {
            Title = "tray",
            TapReadings = Enumerable.Range(0, 4).ToImmutableSortedDictionary(tap => tap, tap => new TapReading(3.6 * tap, You, JobTaps.GroupsBelow(then)[tap])),
        };

        Assert.Empty(JobTaps.Cautions(job, then));
        Assert.Equal([0, 1], JobTaps.Readings(job, now).Keys.Order());
        Assert.Equal(["tap B2", "tap B3"], JobTaps.Cautions(job, now).Select(caution => caution.Where));
        Assert.All(JobTaps.Cautions(job, now), caution => Assert.EndsWith("other cells stood below it then: measure it again", caution.Saw, StringComparison.Ordinal));
        // Typed where nobody knew the groups, a reading is judged as it is.
        Assert.Empty(JobTaps.Cautions(job with { TapReadings = job.TapReadings.SetItem(2, new TapReading(7.2, You)).SetItem(3, new TapReading(10.8, You)) }, now));

        static JobGroup[] Groups(params string[] labels) => [.. labels.Select((some, i) => new JobGroup(i + 1, [.. some.Select(label => LotScreening.Judge([new CellRow { Label = label.ToString(), RestV = 3.6 }], new ScreeningRequest()).Cells[0])]))];
    }
}
