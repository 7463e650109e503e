using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class LooseWiresTests
{
    /// <summary>Five groups at 3.7 V; the tap between the second and third reads wrong by a jumping amount, where asked.</summary>
    private static DiagnosisColumns Log(Func<int, double> tapV, Func<int, double>? currentA = null, double grainV = 0.001, double thirdOhm = 0.002, double secondOhm = 0.002, Func<int, double>? otherTapV = null)
    {
        const int rows = 400;
        double[][] volts = [.. Enumerable.Range(0, 5).Select(_ => new double[rows])];
        double[] amps = new double[rows];
        for (int i = 0; i < rows; i++)
        {
            amps[i] = currentA?.Invoke(i) ?? 0;
            for (int k = 0; k < 5; k++)
            {
                double v = 3.7 + (0.003 * k) - (amps[i] * (k == 2 ? thirdOhm : k == 1 ? secondOhm : 0.002)) + (0.0004 * Math.Sin((7 * i) + k)) + (k == 1 ? tapV(i) : k == 2 ? (otherTapV?.Invoke(i) ?? 0) - tapV(i) : k == 3 ? -(otherTapV?.Invoke(i) ?? 0) : 0);
                volts[k][i] = Math.Round(v / grainV) * grainV;
            }
        }
        return new DiagnosisColumns([.. Enumerable.Range(0, rows).Select(i => (double)i)], amps, volts, null, false);
    }

    [Fact]
    public void A_wire_that_jumps_is_found_and_half_the_sum_stands_for_both_groups()
    {
        DiagnosisColumns log = Log(i => i / 40 % 2 == 0 ? 0.21 : -0.21);

        LooseWires.Wire wire = Assert.Single(LooseWires.Look(log).Loose);

        Assert.Equal(1, wire.Below);
        Assert.Equal(9, wire.Jumps);
        Assert.Equal(0.21, wire.ApartV, 0.003);
        DiagnosisColumns mended = LooseWires.Mended(log, [wire]);
        Assert.All(mended.GroupV[1], v => Assert.Equal(3.7045, v, 0.002));
        Assert.Equal(mended.GroupV[1], mended.GroupV[2]);
        Assert.Same(log.GroupV[0], mended.GroupV[0]);
    }

    // What the fit must judge instead: a constant error, a group that dips more than its neighbour on every step, coarse readings.
    [Fact]
    public void A_constant_error_a_bad_joint_and_coarse_readings_are_no_loose_wire()
    {
        Assert.Empty(LooseWires.Look(Log(_ => 0.04)).Loose);
        Assert.Empty(LooseWires.Look(Log(_ => 0, i => i / 30 % 2 * 60, thirdOhm: 0.004)).Loose);
        Assert.Empty(LooseWires.Look(Log(_ => 0, grainV: 0.01)).Loose);
        Assert.Empty(LooseWires.Look(Log(_ => 0, i => i / 30 % 2 * 200, thirdOhm: 0.0021, secondOhm: 0.0019)).Loose);
    }

    // Half a million rows of rest: four jumps are chance there, in four hundred rows they are a wire.
    [Fact]
    public void Jumps_are_counted_against_the_length_of_the_log()
    {
        DiagnosisColumns few = Log(i => i / 80 % 2 == 0 ? 0.21 : -0.21);
        double[] time = [.. Enumerable.Range(0, 500_000).Select(i => (double)i)];
        DiagnosisColumns many = new(time, new double[time.Length], [.. few.GroupV.Select(v => time.Select((_, i) => v[Math.Min(i, 399)]).ToArray())], null, false);

        Assert.Single(LooseWires.Look(few).Loose);
        Assert.Empty(LooseWires.Look(many).Loose);
    }

    // Two wires beside one another: of three groups only the sum is right, and it does not matter which wire is looked at first.
    [Fact]
    public void Wires_beside_one_another_are_mended_together_and_tell_when_they_jumped_first()
    {
        DiagnosisColumns log = Log(i => i / 40 % 2 == 0 ? 0.21 : -0.21, otherTapV: i => (i + 20) / 40 % 2 == 0 ? 0.15 : -0.15);

        IReadOnlyList<LooseWires.Wire> wires = LooseWires.Look(log).Loose;
        DiagnosisColumns mended = LooseWires.Mended(log, wires);

        Assert.Equal([1, 2], wires.Select(wire => wire.Below));
        Assert.Equal([40, 20], wires.Select(wire => wire.FirstJumpS));
        Assert.Equal([false, true, true, false], new[] { 0, 1, 2, 3 }.Select(wires[0].Touches));
        // By hand: 3.7 V and 3, 6 and 9 mV above it.
        Assert.All(mended.GroupV[1], v => Assert.Equal(3.706, v, 0.002));
        Assert.Equal(mended.GroupV[1], mended.GroupV[2]);
        Assert.Equal(mended.GroupV[1], mended.GroupV[3]);
    }

    // Thirty millivolts may also be two groups that answer the current unlike each other: spoken of, and nobody accused.
    [Fact]
    public void A_wire_that_jumps_by_less_is_spoken_of_only()
    {
        (IReadOnlyList<LooseWires.Wire> loose, IReadOnlyList<LooseWires.Wire> suspected) = LooseWires.Look(Log(i => i / 40 % 2 == 0 ? 0.015 : -0.015, grainV: 0.0001));

        Assert.Empty(loose);
        Assert.Equal(1, Assert.Single(suspected).Below);
        Assert.Contains("groups 2 and 3 jump by opposite amounts", Assert.Single(LooseWires.Notes(suspected)), StringComparison.Ordinal);
        Assert.Empty(LooseWires.Look(Log(_ => 0.04)).Suspected);
        Assert.Empty(LooseWires.Look(Log(i => i / 40 % 2 == 0 ? 0.21 : -0.21)).Suspected);
    }
}
