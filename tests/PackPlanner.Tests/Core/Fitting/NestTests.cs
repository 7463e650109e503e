using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Rows of a regular nest at any angle, against where its rule puts them.</summary>
public class NestTests
{
    private static readonly FitCase Tray = new(
        [new NamedSolid("tray", new Solid.Box(new PointMm(0, 0, 0), new PointMm(200, 150, 80)))], [], "cell", new CellBody.Cylinder(20, 70, [Axis.Z]), null,
        new Clearances(WallMm: 3, EndMm: 0, PlateMm: 4, TerminalMm: 12, CellGapMm: 1, SpacerMm: 2, LayerGapMm: 0));

    [Theory]
    [InlineData(0.0, false)]
    [InlineData(0.0, true)]
    [InlineData(0.4, false)]
    [InlineData(1.0, true)]
    [InlineData(Math.PI / 2, false)]
    [InlineData(Math.PI / 2, true)]
    [InlineData(2.5, true)]
    public void Places_lie_on_rows_at_the_angle_and_none_is_left_out(double angle, bool staggered)
    {
        DiscRegion region = Layers.At(new Scene(Tray), Axis.Z, (CellBody.Cylinder)Tray.Cell, 0);
        Nest nest = Nest.Of(staggered, angle, 21, staggered ? 0.05 : 0) with { AtX = 60, AtY = 55 };
        List<(double X, double Y)> places = [];

        nest.Fill(region, new RegionRaster(region, 21), places);

        Assert.Equal(places.Count, nest.Count(region, new RegionRaster(region, 21)));
        (double sin, double cos) = Math.SinCos(angle);
        HashSet<(int, int)> found = [];
        foreach ((double x, double y) in places)
        {
            double row = (((y - 55) * cos) - ((x - 60) * sin)) / nest.RowMm;
            double along = ((((x - 60) * cos) + ((y - 55) * sin)) / nest.PitchMm) - (staggered && ((int)Math.Round(row) & 1) != 0 ? 0.5 : 0);
            Assert.Equal(Math.Round(row), row, tolerance: 1e-9);
            Assert.Equal(Math.Round(along), along, tolerance: 1e-9);
            Assert.True(found.Add(((int)Math.Round(row), (int)Math.Round(along))));
        }

        // Every point of the nest within the walls, 3 mm and half a cell away from them, is there.
        int wanted = 0;
        for (int row = -30; row <= 30; row++)
        {
            for (int i = -30; i <= 30; i++)
            {
                double along = (i + (staggered && (row & 1) != 0 ? 0.5 : 0)) * nest.PitchMm, across = row * nest.RowMm;
                (double x, double y) = (60 + (along * cos) - (across * sin), 55 + (along * sin) + (across * cos));
                wanted += x >= 13 - 1e-6 && x <= 187 + 1e-6 && y >= 13 - 1e-6 && y <= 137 + 1e-6 ? 1 : 0;
            }
        }

        Assert.Equal(wanted, places.Count);
    }

    // By hand: at a right angle all of a row stand at one x, to the last digit.
    [Fact]
    public void Rows_at_a_right_angle_stay_on_their_wall_to_the_last_digit()
    {
        DiscRegion region = Layers.At(new Scene(Tray), Axis.Z, (CellBody.Cylinder)Tray.Cell, 0);
        List<(double X, double Y)> places = [];

        (Nest.Of(staggered: false, Math.PI / 2, 21, 0) with { AtX = 13, AtY = 13 }).Fill(region, new RegionRaster(region, 21), places);

        Assert.Equal(9, places.Select(place => place.X).Distinct().Count());
        Assert.Equal(54, places.Count);
    }
}
