using PackPlanner.Core.Cells;
using PackPlanner.Core.Packs;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Words;

namespace PackPlanner.Tests.Core.UsableEnergy;

public class StartingPointsTests
{
    private static readonly EnergyRequest Pack = new()
    {
        Groups = [.. Enumerable.Range(1, 10).Select(g => new SeriesGroup(g, 12, 5, null, 4))],
        Chemistry = Chemistries.NickelManganeseCobalt,
        NominalV = 3.6,
        Load = new LoadPlan.ConstantCurrent(65),
    };

    // Source: [Nec240.6] and [LspFuseGuide]: 81.25 A gives 90 A. [WireTable]: No. 6 is the first that carries 90 A (101 A), 1.296 ohm/km;
    // [Iec60228] class 5: 10 mm² has 1.91, 16 mm² 1.21. Drop: 1 % of 36 V over 2 x 3 m at 65 A allows 0.923 ohm/km: 25 mm² (0.780).
    [Fact]
    public void The_cable_is_the_larger_of_what_the_fuse_and_the_drop_ask_for()
    {
        StartingPoints start = Of(Pack, new StringProtection { CableM = 3 });

        Assert.Equal(90, start.FuseStandardA);
        Assert.Equal(16, start.CableByFuseMm2);
        Assert.Equal(25, start.CableByDropMm2);
        Assert.Equal(25, start.CableMm2);
        Assert.Equal(65 * 0.780e-3 * 6, start.CableDropV!.Value, tolerance: 1e-12);
        // Over a hand's breadth the drop would allow 1.5 mm²; the fuse does not.
        Assert.Equal(16, Of(Pack, new StringProtection { CableM = 0.1 }).CableMm2);
    }

    [Theory]
    // No. 10 has 3.277 ohm/km and carries 55 A: 10 A may meet 18.0 (1.5 mm² has 13.3), 30 A 6.01 (4 mm² has 4.95).
    [InlineData(10, 1.5)]
    [InlineData(30, 4.0)]
    [InlineData(55, 10.0)]
    [InlineData(56, 10.0)]
    [InlineData(73, 10.0)]
    [InlineData(74, 16.0)]
    // No. 2 has 0.5127 ohm/km; class 5 of 35 mm² 0.554, of 50 mm² 0.386.
    [InlineData(181, 50.0)]
    // 4/0 has 0.161 ohm/km, and the largest of the table 0.206.
    [InlineData(380, null)]
    public void A_cable_has_no_more_ohms_than_the_wire_that_carries_the_fuse(double ratingA, double? areaMm2) =>
        Assert.Equal(areaMm2, CableTable.SmallestForFuse(ratingA));

    [Fact]
    public void What_is_not_said_gives_no_figure()
    {
        StartingPoints start = Of(Pack with { Load = null }, new StringProtection());

        Assert.Null(start.FuseStandardA);
        Assert.Null(start.CableMm2);
        Assert.Null(start.PreCharge);
        Assert.Equal(2 * start.MustClearA!.Value, start.BreakingCapacityA!.Value, tolerance: 1e-9);
    }

    // By hand: ten groups of 5 mOhm at 4.2 V, 2 mOhm of leads: 42 V over 52 mOhm, and at 0 °C, where cells have twice theirs, over 102 mOhm.
    [Theory]
    [InlineData(null, 42 / 0.052)]
    [InlineData(40.0, 42 / 0.052)]
    [InlineData(0.0, 42 / 0.102)]
    public void The_fuse_must_clear_what_the_cold_pack_still_gives(double? degC, double clearA) =>
        Assert.Equal(clearA, Of(Pack with { TemperatureDegC = degC, LeadsMilliohm = 2 }, new StringProtection()).MustClearA!.Value, tolerance: 1e-6);

    [Fact]
    public void A_cable_that_is_only_proposed_is_not_counted_and_says_what_would_count_it()
    {
        StringFigures proposed = StringFigures.Of(Pack, new StringProtection { CableM = 3 }, TestContext.Current.CancellationToken);
        string from = StartingPointWords.Basis(proposed).Single(row => row.Figure == "cableMm2").From;
        Assert.Contains("usable does not count: --leads 4.68mohm", from, StringComparison.Ordinal);

        StringFigures counted = StringFigures.Of(Pack with { LeadsMilliohm = proposed.Start.CableMilliohm }, new StringProtection { CableM = 3 }, TestContext.Current.CancellationToken);
        Assert.True(counted.Budget.UsableWh < proposed.Budget.UsableWh);
        Assert.Contains("usable counts leads of 4.68 mohm", StartingPointWords.Basis(counted).Single(row => row.Figure == "cableMm2").From, StringComparison.Ordinal);
    }

    // By hand: 40 A over 4 cells, 10² x 20 mΩ = 2 W a cell; a joint of 0.5 mΩ 10² x 0.5 = 0.05 W, 10 x 2 x 0.5/4 = 2.5 mΩ in the string;
    // nine links of 0.2 mΩ 1.8 mΩ: 1600 x 4.3 mΩ = 6.88 W. At 80 A for 30 s four times, 8 W into 50 g: 240/(0.05 x 690) = 6.957 K.
    [Fact]
    public void Heat_of_cells_links_and_joints_riding_and_at_the_peak()
    {
        HeatParts heat = EnergyBudgets.Of(
            Pack with { Load = new LoadPlan.ConstantCurrent(40), LinkMilliohm = 0.2, JointMilliohm = 0.5, PeakA = 80, PeakS = 30, CellMassKg = 0.05 },
            TestContext.Current.CancellationToken).Heat;

        Assert.Equal(2, heat.Riding!.PerCellW!.Value, tolerance: 1e-9);
        Assert.Equal(0.05, heat.Riding.PerJointW!.Value, tolerance: 1e-12);
        Assert.Equal(6.88, heat.Riding.LinksW!.Value, tolerance: 1e-9);
        Assert.Equal(120 / (0.05 * 690), heat.Riding.RiseK!.Value.High, tolerance: 1e-9);
        Assert.Equal(8, heat.Peak!.PerCellW!.Value, tolerance: 1e-9);
        Assert.Equal(6.957, heat.Peak.RiseK!.Value.High, tolerance: 1e-3);
        Assert.Equal(240 / (0.05 * 1100), heat.Peak.RiseK.Value.Low, tolerance: 1e-9);
    }

    private static StartingPoints Of(EnergyRequest request, StringProtection protection) =>
        StringFigures.Of(request, protection, TestContext.Current.CancellationToken).Start;
}
