using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>From which jump on a wire is loose or suspected, on both sides of each limit.</summary>
public class LooseWireLimitsTests
{
    /// <summary>Five groups at rest, the last with a grain of 0.1 mV; the tap between the second and third jumps to and fro.</summary>
    private static (int Loose, int Suspected) Look(double jumpV, double mirrored = 1, int jumps = 6, int groups = 5, double usualV = 0)
    {
        const int rows = 400;
        int every = rows / (jumps + 1) + 1;
        double[][] volts = [.. Enumerable.Range(0, groups).Select(k => Enumerable.Range(0, rows).Select(i =>
            3.7 + (k == groups - 1 ? 0.0001 * (i % 2) : 0) + (i / every % 2 == 0 ? 0 : k == 1 ? jumpV : k == 2 ? -mirrored * jumpV : 0)
            + (k == 1 ? usualV * (i % 2) : 0)).ToArray())];
        DiagnosisColumns log = new([.. Enumerable.Range(0, rows).Select(i => (double)i)], new double[rows], volts, null, false);
        (IReadOnlyList<LooseWires.Wire> loose, IReadOnlyList<LooseWires.Wire> suspected) = LooseWires.Look(log);
        return (loose.Count, suspected.Count);
    }

    // Fifty millivolts are a loose wire, twenty a suspected one; a grain more, because what the others do is taken off.
    [Theory]
    [InlineData(0.0502, 1, 0)]
    [InlineData(0.0499, 0, 1)]
    [InlineData(0.0202, 0, 1)]
    [InlineData(0.0199, 0, 0)]
    public void Jumps_count_from_their_limits_on(double jumpV, int loose, int suspected)
    {
        Assert.Equal((loose, suspected), Look(jumpV));
    }

    // Mirrored to a fifth of the larger.
    [Theory]
    [InlineData(0.81, 1)]
    [InlineData(0.79, 0)]
    [InlineData(1.24, 1)]
    [InlineData(1.26, 0)]
    public void Both_must_jump_by_as_much(double mirrored, int loose)
    {
        Assert.Equal(loose, Look(0.1, mirrored).Loose);
    }

    [Theory]
    [InlineData(4, 1)]
    [InlineData(3, 0)]
    public void Four_jumps_are_the_least(int jumps, int loose)
    {
        Assert.Equal(loose, Look(0.1, jumps: jumps).Loose);
    }

    [Fact]
    public void Two_groups_tell_nothing()
    {
        Assert.Equal((0, 0), Look(0.1, groups: 2));
        Assert.Equal(1, Look(0.1, groups: 3).Loose);
    }

    // What moves by 10 mV at every other row must jump by eight times that.
    [Theory]
    [InlineData(0.01, 0.12, 1)]
    [InlineData(0.01, 0.07, 0)]
    public void A_restless_reading_must_jump_further(double usualV, double jumpV, int loose)
    {
        Assert.Equal(loose, Look(jumpV, usualV: usualV, mirrored: 1).Loose);
    }

    // Figures of both groups are their mean: each may stand off it by three percent, by half of that in charge.
    [Fact]
    public void Beside_a_loose_wire_doubts_are_wider()
    {
        GroupEstimate g = VerdictsTests.Sound() with { CapacitySd = 0.04, ShareSd = 0.01, OffsetSd = 0.008, ResistanceSd = 0.04 };

        GroupEstimate[] wide = LooseWires.Widened([g, g, g], [new LooseWires.Wire(1, 0.21, 9, 0)]);

        Assert.Same(g, wide[0]);
        Assert.Equal([0.05, Math.Sqrt(0.001), 0.017, 0.05], new[] { wide[1].CapacitySd, wide[1].ShareSd, wide[1].OffsetSd, wide[1].ResistanceSd }, (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal((0.21, 0.21), (wide[1].TapV, wide[2].TapV));
    }
}
