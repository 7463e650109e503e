using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>Curves and tables of resting voltage: they fall all the way and bend smoothly, so that one wrong figure among them stands out.</summary>
public class CurveTableTests
{
    private static readonly double[] Table =
    [
        0, .005, .01, .02, .03, .04, .05, .075, .1, .125, .15, .175, .2, .225, .25, .275, .3, .325, .35, .375, .4, .425, .45,
        .475, .5, .525, .55, .575, .6, .625, .65, .675, .7, .725, .75, .775, .8, .85, .875, .9, .92, .94, .95, .96, .97, .98,
        .99, .995, 1,
    ];

    public static TheoryData<string> Curves => ["NMC111", "NCA", "LFP", "NMC811", "electrodes"];

    private static Func<double, double> Curve(string name) => name switch
    {
        "NMC111" => ReferenceCurves.Nmc111,
        "NCA" => ReferenceCurves.Nca,
        "LFP" => ReferenceCurves.Lfp,
        "NMC811" => ReferenceCurves.Nmc811,
        _ => ReferenceCurves.LfpElectrodes,
    };

    // The LFP discharge begins below its plateau for a point of charge: 0.6 mV up are the measurement's own.
    [Theory]
    [MemberData(nameof(Curves))]
    public void Voltage_falls_as_charge_is_drawn(string name)
    {
        Func<double, double> curve = Curve(name);

        for (int i = 1; i <= 1000; i++)
            Assert.InRange(curve((i - 1) / 1000.0) - curve(i / 1000.0), name == "LFP" ? -0.0001 : 0, 0.15);
    }

    // Whatever stands between two neighbours of a table lies between them when its own figure is a right one, and near their line.
    [Theory]
    [InlineData("NMC111", 0.05)]
    [InlineData("NCA", 0.07)]
    [InlineData("LFP", 0.29)]
    public void Every_figure_lies_between_its_neighbours(string name, double farV)
    {
        Func<double, double> curve = Curve(name);

        for (int i = 1; i < Table.Length - 1; i++)
        {
            double share = (Table[i] - Table[i - 1]) / (Table[i + 1] - Table[i - 1]), line = curve(Table[i - 1]) + (share * (curve(Table[i + 1]) - curve(Table[i - 1])));
            Assert.InRange(curve(Table[i]) - line, -0.05, farV);
        }
    }

    // From memory of the published fits, worked out apart: [Chen2020] and its cell, [Afshar2017] and [Kim2011].
    [Theory]
    [MemberData(nameof(KnownAnswers))]
    public void Fitted_electrodes_have_their_known_answers(string name, double drawn, double volts)
    {
        Assert.Equal(volts, Curve(name)(drawn), 5e-5);
    }

    public static TheoryData<string, double, double> KnownAnswers => new()
    {
        { "NMC811", 0, 4.19291 },
        { "NMC811", 0.1, 4.09405 },
        { "NMC811", 0.3, 3.92364 },
        { "NMC811", 0.35, 3.86212 },
        { "NMC811", 0.5, 3.70776 },
        { "NMC811", 0.62, 3.62035 },
        { "NMC811", 0.7, 3.54829 },
        { "NMC811", 0.85, 3.39609 },
        { "NMC811", 0.9, 3.25772 },
        { "NMC811", 0.97, 2.94031 },
        { "NMC811", 1, 2.49766 },
        { "electrodes", 0, 3.30745 },
        { "electrodes", 0.1, 3.29766 },
        { "electrodes", 0.3, 3.29140 },
        { "electrodes", 0.35, 3.28437 },
        { "electrodes", 0.5, 3.25387 },
        { "electrodes", 0.62, 3.24963 },
        { "electrodes", 0.7, 3.24066 },
        { "electrodes", 0.85, 3.16799 },
        { "electrodes", 0.9, 3.14530 },
        { "electrodes", 0.97, 3.04436 },
        { "electrodes", 1, 2.48696 },
    };

    // A table is straight between its figures and beyond its ends.
    [Fact]
    public void Between_its_figures_a_table_is_straight()
    {
        Assert.Equal(4.1937, ReferenceCurves.Nmc111(0), 1e-12);
        Assert.Equal(2.6997, ReferenceCurves.Nmc111(1), 1e-12);
        Assert.Equal((4.1937 + 4.1796) / 2, ReferenceCurves.Nmc111(0.0025), 1e-12);
        Assert.Equal(3.6710 + (0.2 * (3.6602 - 3.6710)), ReferenceCurves.Nmc111(0.505), 1e-12);
        Assert.Equal(4.1937 + (0.01 * (4.1937 - 4.1796) / 0.005), ReferenceCurves.Nmc111(-0.01), 1e-9);
        Assert.Equal(2.7051 - (0.01 * (2.9196 - 2.7051) / 0.005), ReferenceCurves.Nca(1.01), 1e-9);
    }

    // Full and empty are where the curve meets the two resting volts.
    [Fact]
    public void A_curve_is_cut_at_its_two_volts()
    {
        Func<double, double> straight = CurveMembers.Between(s => 4.3 - (1.5 * s), 4.2, 3.0), wide = CurveMembers.Between(s => 4.3 - s, 4.55, 3.1);

        Assert.Equal([4.2, 3.9, 3.0], new[] { straight(1), straight(0.75), straight(0) }.Select(v => Math.Round(v, 9)));
        // Full may lie a quarter beyond the table, empty a fifth and a bit.
        Assert.Equal([4.55, 3.1], new[] { wide(1), wide(0) }.Select(v => Math.Round(v, 9)));
    }

    // Nickel-rich, medium and NCA cells stand for NMC in the shares that are stated; each by itself is one way the curve may go.
    [Theory]
    [InlineData("NMC", 4.2, 3.0)]
    [InlineData("NCA", 4.15, 2.9)]
    public void The_middle_of_a_family_is_made_of_its_members(string family, double fullV, double emptyV)
    {
        bool nca = family == "NCA";
        (Func<double, double> mean, (Func<double, double> To, double Sd)[] modes) = CurveMembers.Of(nca ? CurveFamily.Nca : CurveFamily.Nmc, fullV, emptyV);
        double Member(Func<double, double> curve, double addV, double z)
        {
            double At(double v)
            {
                (double low, double high) = (-0.2, 1.2);
                for (int i = 0; i < 80; i++)
                    (low, high) = curve((low + high) / 2) + addV > v ? ((low + high) / 2, high) : (low, (low + high) / 2);
                return low;
            }

            return curve(At(emptyV) + ((At(fullV) - At(emptyV)) * z)) + addV;
        }

        foreach (double z in new[] { 0, 0.13, 0.5, 0.86, 1 })
        {
            double nickel = Member(ReferenceCurves.Nmc811, 0, z), medium = Member(ReferenceCurves.Nmc111, 0.008, z), aluminium = Member(ReferenceCurves.Nca, 0, z);
            Assert.Equal(nca ? (aluminium + nickel) / 2 : (0.75 * nickel) + (0.15 * medium) + (0.1 * aluminium), mean(z), 1e-6);
            Assert.Equal(nca ? [nickel, medium] : [nickel, medium, aluminium], modes.Select(m => m.To(z)), (a, b) => Math.Abs(a - b) < 1e-6);
        }

        Assert.Equal(nca ? [1.0, 0.2] : [0.8, 0.35, 0.2], modes.Select(m => m.Sd));
    }

    // Between the knees the measured branch counts a third, at both ends the fitted electrodes alone.
    [Fact]
    public void The_middle_of_LFP_is_the_fitted_one_at_its_ends_and_leans_to_the_measured_between()
    {
        (Func<double, double> mean, (Func<double, double> To, double Sd)[] modes) = CurveMembers.Of(CurveFamily.Lfp, 3.4, 2.8);
        Func<double, double> fit = modes.Single().To;

        foreach (double z in new[] { 0.12, 0.3, 0.7, 0.92 })
            Assert.Equal((0.65 * fit(z)) + (0.35 * (ReferenceCurves.Lfp(1 - z) + 0.008)), mean(z), 1e-9);
        foreach (double z in new[] { 0, 0.06, 0.96, 1 })
            Assert.Equal(fit(z), mean(z), 1e-9);
        // Half way up the ramp both count half of it.
        Assert.Equal(fit(0.09) + (0.35 * 0.5 * (ReferenceCurves.Lfp(0.91) + 0.008 - fit(0.09))), mean(0.09), 1e-9);
        Assert.Equal(fit(0.94) + (0.35 * 0.5 * (ReferenceCurves.Lfp(0.06) + 0.008 - fit(0.94))), mean(0.94), 1e-9);
        // A quarter up it is 0.25^2 x (3 - 0.5).
        Assert.Equal(fit(0.075) + (0.35 * 0.15625 * (ReferenceCurves.Lfp(0.925) + 0.008 - fit(0.075))), mean(0.075), 1e-9);
        Assert.Equal(0.6, modes[0].Sd);
    }

    [Fact]
    public void Slips_stretch_charge_and_hold_both_ends()
    {
        (Func<double, double> To, double Sd)[] slips = CurveMembers.Slips(CurveFamily.Nmc, z => z);

        Assert.Empty(CurveMembers.Slips(CurveFamily.Lfp, z => z));
        Assert.Equal([0.525, 0.25 + (0.025 * Math.Sqrt(0.5))], new[] { slips[0].To(0.5), slips[0].To(0.25) }, (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal([0.5, 0.262, 0.738], new[] { slips[1].To(0.5), slips[1].To(0.25), slips[1].To(0.75) }, (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal([1, 1], slips.Select(s => s.Sd));
    }
}
