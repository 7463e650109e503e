using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>A case is refused with the place of each mistake, and not one step before.</summary>
public class FitCaseCheckTests
{
    private static readonly FitCase Sound = Cases.Of(Cases.Round, [Cases.Box(0, 0, 0, 100, 100, 100)], [Cases.Tube(new(0, 0, 50), new(100, 0, 50), 5)]) with { Series = 4, Parallel = 2, LinkReachMm = 2, Parts = [new WeighedPart("box", 0, null)] };

    private static string[] Where(FitCase c) => [.. FitCaseCheck.Problems(c).Select(p => p.Where)];

    [Fact]
    public void A_sound_case_has_no_problem()
    {
        Assert.Empty(Where(Sound));
        Assert.Empty(Where(Sound with { Series = 1000, Parallel = 10_000, LinkReachMm = 0, JumpersAllowed = 0, Boxes = 4, CellMassLimitKg = 0.1 }));
        Assert.Empty(Where(Sound with { Series = 1, Parallel = 1, Boxes = 1 }));
        Assert.Empty(Where(Sound with { Series = null, Parallel = null, CellMassG = null, Clearances = new Clearances() }));
    }

    [Fact]
    public void Figures_of_the_pack_are_held_to_their_ranges()
    {
        Assert.Equal(["pack.series", "boxes"], Where(Sound with { Series = 0, Boxes = 2 }));
        Assert.Equal(["pack.series"], Where(Sound with { Series = 1001 }));
        Assert.Equal(["pack.parallel"], Where(Sound with { Parallel = 0 }));
        Assert.Equal(["pack.parallel"], Where(Sound with { Parallel = 10_001 }));
        Assert.Equal(["pack.parallel"], Where(Sound with { Series = null }));
        Assert.Equal(["pack.linkReachMm"], Where(Sound with { LinkReachMm = -0.1 }));
        Assert.Equal(["pack.linkReachMm"], Where(Sound with { LinkReachMm = double.NaN }));
        Assert.Equal(["pack.jumpersAllowed"], Where(Sound with { JumpersAllowed = -1 }));
        Assert.Equal(["limits.cellMassKg"], Where(Sound with { CellMassLimitKg = 0 }));
        Assert.Equal(["limits.cellMassKg"], Where(Sound with { CellMassLimitKg = 5, CellMassG = null }));
        Assert.Equal(["boxes"], Where(Sound with { Boxes = 0 }));
        Assert.Equal(["boxes"], Where(Sound with { Boxes = 5 }));
        Assert.Equal(["parts, box"], Where(Sound with { Parts = [new WeighedPart("box", -0.1, null)] }));
        Assert.Equal(["parts, box"], Where(Sound with { Parts = [new WeighedPart("box", double.NaN, null)] }));
    }

    [Fact]
    public void Cells_have_a_size_a_direction_and_a_mass()
    {
        Assert.Equal(["cell.diameterMm"], Where(Sound with { Cell = Cases.Round with { DiameterMm = 0 } }));
        Assert.Equal(["cell.lengthMm"], Where(Sound with { Cell = Cases.Round with { LengthMm = double.PositiveInfinity } }));
        Assert.Equal(["cell"], Where(Sound with { Cell = Cases.Round with { Axes = [] } }));
        Assert.Equal(["cell.thicknessMm", "cell.heightMm"], Where(Sound with { Cell = Cases.Brick with { ThicknessMm = -1, HeightMm = 0 } }));
        Assert.Equal(["cell"], Where(Sound with { Cell = Cases.Brick with { Poses = [] } }));
        Assert.Equal(["cell.massG"], Where(Sound with { CellMassG = 0 }));
        Assert.Equal(["cell.massG"], Where(Sound with { CellMassG = double.NaN }));
    }

    [Theory]
    [InlineData("wallMm")]
    [InlineData("endMm")]
    [InlineData("plateMm")]
    [InlineData("terminalMm")]
    [InlineData("cellGapMm")]
    [InlineData("spacerMm")]
    [InlineData("layerGapMm")]
    public void Clearances_are_nought_or_more(string name)
    {
        double At(string of) => of == name ? -0.001 : 0;
        Clearances c = new(At("wallMm"), At("endMm"), At("plateMm"), At("terminalMm"), At("cellGapMm"), At("spacerMm"), At("layerGapMm"));

        Assert.Equal(["clearance." + name], Where(Sound with { Clearances = c }));
    }

    [Fact]
    public void Shapes_have_a_volume()
    {
        Assert.Equal(["cavity.parts"], Where(Sound with { Cavity = [] }));
        Assert.Equal(["tube"], Where(Sound with { Cavity = [Cases.Tube(new(0, 0, 0), new(9, 9, 9), 5)] }));
        Assert.Equal(["box"], Where(Sound with { Cavity = [Cases.Box(0, 0, 0, 100, 0, 100)] }));
        Assert.Equal(["box"], Where(Sound with { Cavity = [Cases.Box(0, 0, 0, 100, double.NaN, 100)] }));
        Assert.Equal(["tube"], Where(Sound with { KeepOuts = [Cases.Tube(new(0, 0, 0), new(9, 9, 9), 0)] }));
        Assert.Equal(["tube"], Where(Sound with { KeepOuts = [Cases.Tube(new(0, double.NaN, 0), new(9, 9, 9), 5)] }));
        Assert.Equal(["prism"], Where(Sound with { Cavity = [Cases.Prism(Axis.Z, 50, 50, (0, 0), (100, 0), (0, 100))] }));
        Assert.Equal(["prism"], Where(Sound with { Cavity = [Cases.Prism(Axis.Z, 0, 50, (0, 0), (100, 0))] }));
        Assert.Equal(["prism"], Where(Sound with { Cavity = [Cases.Prism(Axis.Z, 0, 50, (0, 0), (100, 0), (double.NaN, 100))] }));
        Assert.Equal(["prism"], Where(Sound with { Cavity = [Cases.Prism(Axis.Z, 0, 50, (0, 0), (100, 100), (100, 0), (0, 100))] }));
        Assert.Equal(["prism"], Where(Sound with { Cavity = [Cases.Prism(Axis.Z, 0, 50, (0, 0), (50, 0.000000001), (100, 0))] }));
    }

    [Fact]
    public void Openings_have_an_area()
    {
        Opening lid = new("lid", Axis.Z, true, new(0, 0), new(10, 10));

        Assert.Empty(Where(Sound with { Openings = [lid] }));
        Assert.Equal(["lid"], Where(Sound with { Openings = [lid with { To = new(0, 10) }] }));
        Assert.Equal(["lid"], Where(Sound with { Openings = [lid with { To = new(10, 0) }] }));
        Assert.Equal(["lid"], Where(Sound with { Openings = [lid with { To = new(10, double.NaN) }] }));
    }

    // A hundred metres, and thirty thousand cells by volume.
    [Fact]
    public void Noughts_too_many_are_told()
    {
        Assert.Empty(Where(Sound with { KeepOuts = [Cases.Box(0, 0, 0, 1, 1, 100_000)] }));
        Assert.Equal(["box"], Where(Sound with { KeepOuts = [Cases.Box(0, 0, 0, 1, 1, 100_001)] }));
        Assert.Equal(["box"], Where(Sound with { KeepOuts = [Cases.Box(-100_001, 0, 0, 1, 1, 1)] }));
        Assert.Equal(["tube"], Where(Sound with { KeepOuts = [Cases.Tube(new(0, 0, 0), new(0, 100_001, 0), 5)] }));
        Assert.Equal(["prism"], Where(Sound with { KeepOuts = [Cases.Prism(Axis.Z, 0, 5, (0, 0), (100_001, 0), (0, 5))] }));
        // 20 x 20 x 70 each: 28 litres hold 1000 by volume.
        Assert.Empty(Where(Sound with { Cavity = [Cases.Box(0, 0, 0, 1000, 1000, 839)] }));
        Assert.Equal(["cavity"], Where(Sound with { Cavity = [Cases.Box(0, 0, 0, 1000, 1000, 841)] }));
        Assert.Equal(["cavity"], Where(Sound with { Cavity = [Cases.Box(0, 0, 0, 1000, 1000, 421), Cases.Box(0, 0, 0, 1000, 1000, 421)] }));
        Assert.Equal(["cavity"], Where(Sound with { Cavity = [Cases.Prism(Axis.Z, 0, 1682, (0, 0), (1000, 0), (0, 1000))] }));
        Assert.Empty(Where(Sound with { Cavity = [Cases.Prism(Axis.Z, 0, 1678, (0, 0), (1000, 0), (0, 1000))] }));
        // 130 x 36 x 140 each.
        Assert.Empty(Where(Sound with { Cell = Cases.Brick, Cavity = [Cases.Box(0, 0, 0, 4000, 4000, 1228)] }));
        Assert.Equal(["cavity"], Where(Sound with { Cell = Cases.Brick, Cavity = [Cases.Box(0, 0, 0, 4000, 4000, 1229)] }));
    }
}
