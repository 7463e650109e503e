using PackPlanner.Core.Packs;

namespace PackPlanner.Tests.Outside;

/// <summary>Wire, cable, bar, fuse, pre-charge and short-circuit figures against published tables and examples.</summary>
public class ConductorTests
{
    // Source: [WireTable]: ohm for 1000 ft of solid copper at 20 °C; half a unit of its last digit or 0.2 %, because it starts from rounded diameters.
    [Theory]
    [InlineData(-3, 0.049)]
    [InlineData(-1, 0.078)]
    [InlineData(0, 0.0983)]
    [InlineData(2, 0.1563)]
    [InlineData(4, 0.2485)]
    [InlineData(6, 0.3951)]
    [InlineData(8, 0.6282)]
    [InlineData(10, 0.9989)]
    [InlineData(12, 1.588)]
    [InlineData(14, 2.525)]
    [InlineData(16, 4.016)]
    [InlineData(18, 6.385)]
    [InlineData(20, 10.15)]
    [InlineData(22, 16.14)]
    [InlineData(24, 25.67)]
    public void American_gauges_have_the_resistance_of_the_wire_table(int gauge, double ohmPer1000Ft)
    {
        double tolerance = Math.Max(0.0005, 0.001 * ohmPer1000Ft);

        Assert.Equal(ohmPer1000Ft, Conductors.AwgOhmPerKm(gauge) * 0.3048, tolerance);
    }

    // Source: [AstmB258], by hand: 0.127 x 92^(26/39) and 0.127 x 92 mm.
    [Fact]
    public void Diameters_follow_the_definition_of_the_gauge()
    {
        Assert.Equal(2.5882, Conductors.AwgDiameterMm(10), tolerance: 5e-5);
        Assert.Equal(11.6840, Conductors.AwgDiameterMm(-3), tolerance: 5e-5);
        Assert.Equal(0.127, Conductors.AwgDiameterMm(36), tolerance: 1e-12);
    }

    // Source: [Nec9-8]: 3.970 ohm/km for 10 AWG at 75 °C; it starts from another wire, so 1 %.
    [Fact]
    public void Warm_wire_has_more() => Assert.Equal(3.970, Conductors.AwgOhmPerKm(10, 75), tolerance: 0.0397);

    // Source: by hand from [AstmB258]: 5.6419 mm lies between No. 4 and No. 3; towards thicker is No. 3.
    [Fact]
    public void The_next_thicker_gauge_is_taken()
    {
        Assert.Equal(3, Conductors.AwgWithAtLeast(25));
        double exact = Math.PI * Math.Pow(Conductors.AwgDiameterMm(8), 2) / 4;
        Assert.Equal(8, Conductors.AwgWithAtLeast(exact));
    }

    // Source: [Iec60228]: 0.780 mΩ/m for 25 mm² class 5; by hand 150 A x 4 m x 0.780 mΩ/m.
    [Fact]
    public void The_drop_in_a_cable_comes_from_the_standards_table()
    {
        double ohm = CableTable.OhmPerKm(25, flexible: true) * 4 / 1000;

        Assert.Equal(0.468, 150 * ohm, tolerance: 1e-9);
        Assert.Equal(0.54157, 150 * ohm * Conductors.WarmCopper(60), tolerance: 5e-6);
        Assert.Equal(25, CableTable.SmallestForDrop(150, 2, 0.468));
        Assert.Equal(35, CableTable.SmallestForDrop(150, 2, 0.467));
        Assert.Null(CableTable.SmallestForDrop(150, 2, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => CableTable.OhmPerKm(26, flexible: true));
    }

    // Source: [Iec60228]: 50 mm² is the one size where class 5 may have less than class 2.
    [Fact]
    public void The_table_is_kept_as_it_stands_and_not_computed_from_areas()
    {
        Assert.All(CableTable.SizesMm2, size => Assert.Equal(size != 50, CableTable.OhmPerKm(size, true) > CableTable.OhmPerKm(size, false)));
        Assert.All(CableTable.SizesMm2, size => Assert.True(CableTable.OhmPerKm(size, true) > 1000 * Conductors.CopperOhmMm2PerM / size));
    }

    // Source: by hand: 60 A x 6 m of No. 6 solid.
    [Fact]
    public void The_drop_in_a_solid_lead() => Assert.Equal(0.46661, 60 * Conductors.AwgOhmPerKm(6) * 6 / 1000, tolerance: 5e-6);

    // Source: [CopperNo110]: micro-ohm for one foot of C11000 (99 % conductivity): 264, 132, 65.8, 32.9.
    [Theory]
    [InlineData(0.0625, 0.5, 264)]
    [InlineData(0.125, 0.5, 132)]
    [InlineData(0.125, 1, 65.8)]
    [InlineData(0.25, 1, 32.9)]
    public void Bus_bars_have_the_resistance_of_the_makers_table(double thickIn, double wideIn, double microOhm)
    {
        double ohm = Conductors.Ohm(Conductors.CopperOhmMm2PerM / 0.99, 0.3048, thickIn * 25.4 * wideIn * 25.4);

        Assert.Equal(microOhm, ohm * 1e6, tolerance: 0.003 * microOhm);
    }

    // Source: by hand from [MetalTables]: 0.0699 x 0.025 / 2 ohm; steel 0.143 x 0.025 / 2.
    [Fact]
    public void A_nickel_strip_and_one_of_steel()
    {
        Assert.Equal(0.87375, Conductors.Ohm(Conductors.NickelOhmMm2PerM, 0.025, 10 * 0.2) * 1000, tolerance: 1e-9);
        Assert.Equal(1.78750, Conductors.Ohm(Conductors.SteelOhmMm2PerM, 0.025, 10 * 0.2) * 1000, tolerance: 1e-9);
    }

    // Source: [LspFuseGuide] and [Nec240.6], by hand: 81.25, 100 exactly, 187.5.
    [Theory]
    [InlineData(65, 90)]
    [InlineData(80, 100)]
    [InlineData(150, 200)]
    public void The_next_standard_fuse_and_equal_is_enough(double continuousA, double expectedA) =>
        Assert.Equal(expectedA, FuseRule.NextStandardA(continuousA));

    [Fact]
    public void Above_the_largest_standard_fuse_there_is_none() => Assert.Null(FuseRule.NextStandardA(481));

    // Source: [Tidu73]: 5 RC = 0.5 s and 50 ohm give 2.0 mF.
    [Fact]
    public void The_published_pre_charge_design() => Assert.Equal(0.5, 5 * new PreCharge(400, 50, 0.002).TauS, tolerance: 1e-12);

    // Source: [PreChargePage]: 47 ohm on 800 V: tau 47.0 ms, 99 % after 216.4 ms, 17.02 A, 13 617 W, 320 J.
    [Fact]
    public void A_resistor_makers_pre_charge_figures()
    {
        PreCharge charge = new(800, 47, 0.001);

        Assert.Equal(0.0470, charge.TauS, tolerance: 1e-12);
        // Half a tenth of a millisecond, at 170 V a second.
        Assert.Equal(0.01 * 800, charge.MissingV(0.2164), tolerance: 0.0085);
        Assert.Equal(17.02, charge.PeakA, tolerance: 5e-3);
        Assert.Equal(13_617, charge.PeakW, tolerance: 0.5);
        Assert.Equal(320.0, charge.ResistorJ, tolerance: 0.05);
    }

    // Source: by hand: 0.5 s / (1.5 mF ln 100); with 68 ohm ln 100 x 0.102 s; 84 V e^-5.
    [Fact]
    public void A_pre_charge_within_half_a_second()
    {
        PreCharge charge = new(84, 68, 0.0015);

        Assert.Equal(72.382, PreCharge.LargestResistorOhm(0.0015, 0.99, 0.5), tolerance: 5e-4);
        Assert.Equal(0.01 * 84, charge.MissingV(0.46973), tolerance: 4.2e-5);
        Assert.Equal(0.56599, charge.MissingV(5 * charge.TauS), tolerance: 5e-6);
        Assert.Equal(5.2920, charge.ResistorJ, tolerance: 5e-5);
    }

    // Source: [Kirchhoff], by hand: 20 x 3.32 V over 10 + 0.95 + 2 mΩ, then over 5 + 0.95 + 2 mΩ.
    [Fact]
    public void The_two_figures_of_a_short_circuit()
    {
        Assert.Equal(5127.4, ShortCircuit.CurrentA(66.4, 0.01295), tolerance: 0.05);
        Assert.Equal(8352.2, ShortCircuit.CurrentA(66.4, 0.00795), tolerance: 0.05);
        Assert.Equal(960, ShortCircuit.IntoOneShortedCellA(9, 3.6, 0.030), tolerance: 1e-9);
    }

    // Source: [BatteryKnowledge] for the specific heats, by hand: 240 J into 45 g.
    [Theory]
    [InlineData(810, 6.5844)]
    [InlineData(690, 7.7295)]
    public void A_small_cell_at_ten_amperes_for_a_minute(double specificHeat, double riseK) =>
        Assert.Equal(riseK, CellHeat.RiseK(10 * 10 * 0.040, 60, 0.045, specificHeat), tolerance: 5e-5);

    // Source: by hand: 200² x 0.25 mΩ x 600 s / (5.42 kg x 1000).
    [Fact]
    public void A_large_cell_at_200_amperes_for_ten_minutes() =>
        Assert.Equal(1.10701, CellHeat.RiseK(200 * 200 * 0.00025, 600, 5.42, 1000), tolerance: 5e-6);

    // Source: by hand: 1e14 x 1.7241e-8 / (385 x 8890).
    [Fact]
    public void A_link_at_ten_amperes_for_each_square_millimetre() =>
        Assert.Equal(0.50373, Conductors.CopperKelvinPerSecond(10), tolerance: 1e-5);
}
