using CsCheck;
using PackPlanner.Core.Packs;

namespace PackPlanner.Tests.Core.Packs;

/// <summary>What holds for every conductor, fuse and pre-charge.</summary>
public class PackPropertiesTests
{
    [Fact]
    public void The_cable_found_for_a_drop_keeps_it_and_the_next_thinner_does_not()
    {
        Gen.Select(Gen.Double[1, 400], Gen.Double[0.1, 8], Gen.Double[0.05, 3]).Sample((loadA, wayM, mostV) =>
        {
            double DropV(double areaMm2) => loadA * CableTable.OhmPerKm(areaMm2, flexible: true) / 1000 * 2 * wayM;
            double? found = CableTable.SmallestForDrop(loadA, wayM, mostV);
            foreach (double areaMm2 in CableTable.SizesMm2)
                Assert.Equal(found is { } size && areaMm2 >= size, DropV(areaMm2) <= mostV);
        }, seed: "0000KIcCwDG2", iter: 1000);
    }

    [Fact]
    public void A_larger_fuse_never_gets_a_thinner_cable()
    {
        Gen.Select(Gen.Double[1, 420], Gen.Double[1, 420]).Sample((one, other) =>
        {
            double small = CableTable.SmallestForFuse(Math.Min(one, other)) ?? double.PositiveInfinity;
            double large = CableTable.SmallestForFuse(Math.Max(one, other)) ?? double.PositiveInfinity;
            Assert.True(large >= small, $"{one} and {other} A: {small} and {large} mm²");
        }, seed: "0000KIcCwDG2", iter: 1000);
    }

    [Fact]
    public void The_fuse_carries_five_quarters_of_the_current_and_no_smaller_one_does()
    {
        Gen.Double[0.1, 600].Sample(loadA =>
        {
            double? found = FuseRule.NextStandardA(loadA);
            Assert.All(FuseRule.StandardA, rating => Assert.Equal(found is { } fuse && rating >= fuse, rating >= 1.25 * loadA));
        }, seed: "0000KIcCwDG2", iter: 500);
    }

    [Fact]
    public void The_gauge_found_has_the_metal_asked_for_and_the_next_thinner_has_not()
    {
        Gen.Double[0.02, 100].Sample(areaMm2 =>
        {
            static double MetalMm2(int gauge) => Math.PI / 4 * Math.Pow(Conductors.AwgDiameterMm(gauge), 2);
            int gauge = Conductors.AwgWithAtLeast(areaMm2);
            Assert.InRange(areaMm2, MetalMm2(gauge + 1), MetalMm2(gauge));
        }, seed: "0000KIcCwDG2", iter: 500);
    }

    [Fact]
    public void Pieces_side_by_side_and_one_after_the_other_add_up()
    {
        Gen.Select(Gen.Int[0, 2], Gen.Double[2, 40], Gen.Double[0.1, 5], Gen.Double[0.01, 3], Gen.Int[1, 6]).Sample((metal, wide, thick, lengthM, pieces) =>
        {
            Conductor one = Conductor.Bar((Metal)metal, wide, thick, lengthM, 1);
            Assert.Equal(one.Ohm / pieces, Conductor.Bar((Metal)metal, wide, thick, lengthM, pieces).Ohm, tolerance: 1e-12);
            Assert.Equal(one.Ohm * pieces, Conductor.Bar((Metal)metal, wide, thick, lengthM * pieces, 1).Ohm, tolerance: 1e-12 * pieces);
            // As much copper as CopperMm2 says has as many ohms.
            Assert.Equal(one.Ohm, Conductor.Bar(Metal.Copper, one.CopperMm2, 1, lengthM, 1).Ohm, tolerance: 1e-12);
        }, seed: "0000KIcCwDG2", iter: 500);
    }

    // The same circuit in ten thousand small steps of time: what the resistor takes is the sum of I²R.
    [Fact]
    public void A_pre_charge_in_small_steps_of_time_is_the_formula()
    {
        Gen.Select(Gen.Double[20, 120], Gen.Double[10, 500], Gen.Double[0.0001, 0.01], Gen.Double[0.3, 0.99]).Sample((packV, ohm, farad, fraction) =>
        {
            PreCharge charge = new(packV, ohm, farad);
            double stepS = ohm * farad / 1000, seconds = 0, volts = 0, joules = 0, reachedS = double.NaN;
            while (seconds < 15 * ohm * farad)
            {
                double amps = (packV - volts) / ohm;
                joules += amps * amps * ohm * stepS;
                volts += amps * stepS / farad;
                seconds += stepS;
                if (double.IsNaN(reachedS) && volts >= fraction * packV)
                    reachedS = seconds;
            }

            Assert.Equal(joules, charge.ResistorJ, tolerance: 0.002 * joules);
            Assert.Equal((1 - fraction) * packV, charge.MissingV(reachedS), tolerance: 0.004 * (1 - fraction) * packV);
            Assert.Equal(ohm, PreCharge.LargestResistorOhm(farad, fraction, reachedS), tolerance: 0.004 * ohm / Math.Log(1 / (1 - fraction)));
        }, seed: "0000KIcCwDG2", iter: 100);
    }
}
