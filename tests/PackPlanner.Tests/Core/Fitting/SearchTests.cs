using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Whole searches over rooms so small that the answer is known by hand, each in milliseconds.</summary>
public class SearchTests
{
    private static FitAnswer Search(FitCase fitCase) => LayoutSearch.Search(fitCase, FitEffort.Quick, null, CancellationToken.None);

    private static FitCase Tray(double x, double y, int? series = null, int? parallel = null, double z = 80) =>
        Cases.Of(Cases.Round, [Cases.Box(0, 0, 0, x, y, z)]) with { Series = series, Parallel = parallel, LinkReachMm = 2 };

    [Fact]
    public void A_tray_of_three_by_two_is_counted_weighed_and_grouped()
    {
        // 26 mm for the first cell and 21 for each more.
        FitAnswer answer = Search(Tray(68, 47, series: 3) with { NominalV = 3.6, FullV = 4.2, Parts = [new WeighedPart("box", 0.5, new PointMm(34, 23.5, 0))] });

        Assert.True(answer.Fits);
        Assert.Equal((6, 3, 2, 6), (answer.Cells.Count, answer.Series, answer.Parallel, answer.Used));
        Assert.Equal(0.42, answer.CellMassKg!.Value, 1e-9);
        Assert.Equal(0.92, answer.PackMassKg!.Value, 1e-9);
        Assert.Equal(new PointMm(34, 23.5, 40), answer.CellsCentreOfMass!.Value, (a, b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y) + Math.Abs(a.Z - b.Z) < 1e-6);
        // 0.42 kg at 40 mm and 0.5 kg on the floor.
        Assert.Equal(0.42 * 40 / 0.92, answer.CentreOfMass!.Value.Z, 1e-6);
        Assert.Equal(6 * Math.PI / 4 * 400 * 70 / 1e6, answer.UsedVolumeL, 1e-9);
        Assert.Equal(68 * 47 * 80 / 1e6, answer.CavityVolumeL, 1e-9);
        Assert.All(answer.MarginMm, m => Assert.Equal(0, m, 1e-5));
        Assert.Equal(("square", 2, 1.0), (answer.NestKind, answer.NarrowestLink, Math.Round(answer.BusbarRatio!.Value, 9)));
        Assert.Equal([2, 2], answer.LinkPairs);
        Assert.Empty(answer.Jumpers);
        Assert.Equal(4, answer.Taps.Count);
        // Groups first and in series order; every second group stands the other way round.
        Assert.Equal([1, 1, 2, 2, 3, 3], answer.Cells.Select(c => c.Group!.Value));
        Assert.Equal(["+z", "+z", "-z", "-z", "+z", "+z"], answer.Cells.Select(c => c.Plus!));
        Assert.Equal([1, 2, 3, 4, 5, 6], answer.Cells.Select(c => c.Cell));
        Assert.All(answer.Groups, g => Assert.Equal(0.14, g.MassKg!.Value, 1e-9));
    }

    [Fact]
    public void What_is_unknown_is_not_reckoned()
    {
        FitAnswer answer = Search(Tray(68, 47) with { CellMassG = null, Parts = [new WeighedPart("box", 0.5, null)] });

        Assert.Equal((6, 6), (answer.Cells.Count, answer.Used));
        Assert.Equal((null, null, null), (answer.CellMassKg, answer.PackMassKg, answer.CentreOfMass));
        Assert.NotNull(answer.CellsCentreOfMass);
        Assert.All(answer.Cells, c => Assert.Equal((null, null), (c.Group, c.Plus)));
        // A part of no weight may stand anywhere.
        Assert.NotNull(Search(Tray(68, 47) with { Parts = [new WeighedPart("label", 0, null)] }).CentreOfMass);
    }

    // The mass limit takes cells away; a spare stays without a group.
    [Fact]
    public void Limits_of_mass_and_spares()
    {
        Assert.Equal(5, Search(Tray(68, 47) with { CellMassLimitKg = 0.41 }).Cells.Count);
        Assert.Equal(6, Search(Tray(68, 47) with { CellMassLimitKg = 0.42 }).Cells.Count);
        FitAnswer spare = Search(Tray(89, 26, series: 3));
        Assert.Equal((4, 1, 3), (spare.Cells.Count, spare.Parallel, spare.Used));
        Assert.Single(spare.Cells, c => c.Group is null);
        Assert.Equal(0.21, spare.CellMassKg!.Value, 1e-9);
        FitAnswer heavy = Search(Tray(68, 47, series: 3, parallel: 2) with { CellMassLimitKg = 0.41 });
        Assert.Equal("mass-over", Assert.Single(heavy.Reasons).Code);
        Assert.Contains("use 5 cells at most", heavy.Reasons[0].Change, StringComparison.Ordinal);
        Assert.Contains("6 cells of 70 g weigh 0.42 kg, the limit is 0.41 kg", heavy.Reasons[0].Text, StringComparison.Ordinal);
    }

    // A cell of 20 x 70 mm does not stand in 40 mm, but lies in 100 x 89 x 40 mm: 70 + 10 one way, 20 + 6 and 21 for each more the other, and
    // a staggered second layer has no room; in 60 x 60 x 40 mm it does neither.
    [Theory]
    [InlineData(89, 40, 4)]
    [InlineData(60, 40, null)]
    public void A_cell_that_would_lie_where_it_does_not_stand_is_said_to(double side, double z, int? lying)
    {
        FitReason reason = Assert.Single(Search(Tray(side, side, z: z)).Reasons);

        Assert.Equal(lying, reason.WhenTurned);
        Assert.Equal(lying is not null, reason.Change!.StartsWith("Turn the cells another way, where their maker allows it: at least 4 go in", StringComparison.Ordinal));
    }

    // In 80 x 47 x 131 mm 3 x 2 stand, one layer; along x lie 2 x 6: 26 + 5 x 21 mm is the height.
    [Theory]
    [InlineData(9, 12)]
    [InlineData(12, 12)]
    [InlineData(13, null)]
    public void Turning_is_offered_where_it_holds_what_is_asked(int series, int? turned)
    {
        FitAnswer answer = Search(Tray(80, 47, series, z: 131));

        Assert.Equal((6, turned), (answer.Cells.Count, answer.Reasons[0].WhenTurned));
    }

    // By how much, and along which axis, a cell is too large: 70 + 10, 20 + 6.
    [Theory]
    [InlineData(60, 60, 79, Axis.Z, 1.0, "1 mm short in height (z): 70 mm of cell + 5 mm at -z + 5 mm at +z = 80 mm, the space is 79 mm")]
    [InlineData(24.5, 60, 80, Axis.X, 1.5, "1.5 mm short in length (x): 20 mm of cell + 3 mm at -x + 3 mm at +x = 26 mm, the space is 24.5 mm")]
    [InlineData(60, 25.75, 80, Axis.Y, 0.25, "0.25 mm short in width (y)")]
    public void A_cell_too_large_is_told_by_how_much(double x, double y, double z, Axis along, double shortMm, string text)
    {
        FitReason reason = Assert.Single(Search(Tray(x, y, z: z)).Reasons);

        Assert.Equal(("cell-too-large", along), (reason.Code, reason.Along));
        Assert.Equal(shortMm, reason.ShortMm!.Value, 1e-9);
        Assert.StartsWith(text, reason.Text, StringComparison.Ordinal);
    }

    // Six places, eight needed: one more row of cells is 21 mm along y, along x two more columns of 10.5 to 21 by closing up.
    [Fact]
    public void Too_few_places_are_told_with_what_would_help()
    {
        FitAnswer answer = Search(Tray(68, 47, series: 4, parallel: 2));

        Assert.False(answer.Fits);
        Assert.All(answer.Reasons, r => Assert.Equal("too-few-places", r.Code));
        Assert.Equal(answer.Reasons.OrderBy(r => r.ShortMm), answer.Reasons);
        FitReason longer = answer.Reasons.Single(r => r.Along == Axis.X), wider = answer.Reasons.Single(r => r.Along == Axis.Y), higher = answer.Reasons.Single(r => r.Along == Axis.Z);
        Assert.Equal(21, longer.ShortMm!.Value, 0.51);
        Assert.InRange(wider.ShortMm!.Value, 15, 21.5);
        // A second layer: 78 mm.
        Assert.Equal(78, higher.ShortMm!.Value, 78 / 50.0 + 0.1);
        Assert.StartsWith("6 places fit, 8 are needed:", longer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_keep_out_that_fills_the_cavity_is_named()
    {
        FitCase filled = Tray(68, 47, series: 3, parallel: 2) with { KeepOuts = [new NamedSolid("post", new Solid.Box(new PointMm(30, 20, 0), new PointMm(38, 27, 80))), new NamedSolid("strip", new Solid.Box(new PointMm(0, 0, 79), new PointMm(2, 2, 80)))] };

        FitReason reason = Search(filled).Reasons.Single(r => r.Code == "keep-outs-fill-cavity");

        Assert.Equal("without keep-outs 6 cells would fit; with them not", reason.Text);
        Assert.Equal("Move or shrink one of: post.", reason.Change);
    }

    // Two trays a wall apart: two groups of six each, which a cable must join.
    [Fact]
    public void Pieces_that_no_link_joins_are_told()
    {
        FitCase apart = Cases.Of(Cases.Round, [Cases.Box(0, 0, 0, 68, 47, 80), Cases.Box(105, 0, 0, 173, 47, 80)]) with { Series = 2, Parallel = 6, LinkReachMm = 2 };

        FitReason reason = Assert.Single(Search(apart).Reasons);
        Assert.Equal("no-series-path", reason.Code);
        Assert.Contains("12 places fit, but 2 groups cannot all be linked: the cells lie in 2 separate pieces of 6, 6", reason.Text, StringComparison.Ordinal);
        Assert.StartsWith("Allow 1 links by cable", reason.Change, StringComparison.Ordinal);
        FitAnswer cabled = Search(apart with { JumpersAllowed = 1 });
        Assert.True(cabled.Fits);
        Assert.Equal([1], cabled.Jumpers);
    }

    // Four corners and the middle: more than a square nest of four holds.
    [Fact]
    public void Free_packing_finds_one_more_than_a_nest()
    {
        // Between the middles 42 / sqrt(2) and a hair: from each corner to the middle 21 mm.
        double side = 26 + (42 / Math.Sqrt(2)) + 0.01;
        FitAnswer free = LayoutSearch.Search(Tray(side, side), new FitEffort(1), null, CancellationToken.None);

        Assert.Equal(5, free.Cells.Count);
        Assert.Empty(LayoutCheck.Broken(new Scene(Tray(side, side)), [.. free.Cells.Select(c => new Body(c.Centre, Cases.Grid(1, 1)[0].Attitude))]));
    }

    // Boxes: ten in two columns of five slabs, closed up to a corner; the bound says that no more go in.
    [Fact]
    public void Boxes_fill_their_cavity_and_that_is_proved()
    {
        FitAnswer answer = LayoutSearch.Search(Cases.Of(Cases.Brick, [Cases.Box(0, 0, 0, 203, 267, 170)]) with { Series = 5, LinkReachMm = 3 }, FitEffort.Quick, null, CancellationToken.None);

        Assert.Equal((10, 2, 10), (answer.Cells.Count, answer.Parallel, answer.Bound));
        Assert.True(answer.Proven);
        Assert.Equal("slabs", answer.NestKind);
        Assert.All(answer.Cells, c => Assert.Equal("+z", c.Terminals));
    }
}
