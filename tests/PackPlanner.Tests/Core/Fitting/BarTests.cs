using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Bars against boxes and cylinders: distances against dense points along the bar.</summary>
public class BarTests
{
    private static IEnumerable<(Tube3 Bar, double X, double Y)> Draws(int seed, int n)
    {
        Random random = new(seed);
        double Next(double from, double to) => from + ((to - from) * random.NextDouble());
        for (int i = 0; i < n; i++)
        {
            PointMm from = new(Next(-60, 60), Next(-60, 60), Next(-60, 160)), to = new(Next(-60, 60), Next(-60, 60), Next(-60, 160));
            // A third across, a third along the cells, the others slanting.
            to = (i % 3) switch { 0 => to with { Z = from.Z }, 1 => to with { X = from.X, Y = from.Y }, _ => to };
            yield return (new Tube3(from, to, Next(2, 12)), Next(-40, 40), Next(-40, 40));
        }
    }

    private static double Least(Tube3 bar, Func<PointMm, double> distance) =>
        Enumerable.Range(0, 1601).Min(i => distance(new(bar.From.X + (i / 1600.0 * (bar.To.X - bar.From.X)), bar.From.Y + (i / 1600.0 * (bar.To.Y - bar.From.Y)), bar.From.Z + (i / 1600.0 * (bar.To.Z - bar.From.Z)))));

    private static double Beyond(double value, double low, double high) => Math.Max(0, Math.Max(low - value, value - high));

    [Fact]
    public void From_a_cylinder_and_from_a_box()
    {
        foreach ((Tube3 bar, double x, double y) in Draws(1, 120))
        {
            double cylinder = Least(bar, p => Math.Sqrt(Math.Pow(Beyond(p.Z, 0, 100), 2) + Math.Pow(Math.Max(0, Math.Sqrt(Math.Pow(p.X - x, 2) + Math.Pow(p.Y - y, 2)) - 10), 2)));
            Assert.Equal(cylinder, bar.ToCylinder(Axis.Z, 0, 100, x, y, 10, out double at), 0.02);
            Assert.InRange(at, 0, 1);
            Box3 box = new(x - 10, y - 15, 0, x + 10, y + 15, 100);
            double toBox = Least(bar, p => Math.Sqrt(Math.Pow(Beyond(p.X, box.X0, box.X1), 2) + Math.Pow(Beyond(p.Y, box.Y0, box.Y1), 2) + Math.Pow(Beyond(p.Z, box.Z0, box.Z1), 2)));
            Assert.Equal(toBox, bar.ToBox(box), 0.02);
            Assert.True(bar.CanTouch(box) || toBox >= bar.Radius - 1e-9, $"{toBox} and told that it cannot touch");
            PointMm point = new(x, y, 50);
            Assert.Equal(Least(bar, p => Math.Pow(p.X - point.X, 2) + Math.Pow(p.Y - point.Y, 2) + Math.Pow(p.Z - point.Z, 2)) < Math.Pow(bar.Radius, 2), bar.Holds(point));
        }
    }

    // A cylinder along x and one along y: the same numbers with the axes turned.
    [Fact]
    public void Turned_axes_give_the_same_distances()
    {
        foreach ((Tube3 bar, double x, double y) in Draws(2, 30))
        {
            double upright = bar.ToCylinder(Axis.Z, 0, 100, x, y, 10, out _);
            Tube3 alongX = new(new(bar.From.Z, bar.From.X, bar.From.Y), new(bar.To.Z, bar.To.X, bar.To.Y), bar.Radius), alongY = new(new(bar.From.X, bar.From.Z, bar.From.Y), new(bar.To.X, bar.To.Z, bar.To.Y), bar.Radius);

            Assert.Equal(upright, alongX.ToCylinder(Axis.X, 0, 100, x, y, 10, out _), 1e-9);
            Assert.Equal(upright, alongY.ToCylinder(Axis.Y, 0, 100, x, y, 10, out _), 1e-9);
        }
    }

    // Each side by itself, touching not counted.
    [Theory]
    [InlineData(-5.001, 0, 0, false)]
    [InlineData(-4.999, 0, 0, true)]
    [InlineData(15.001, 0, 0, false)]
    [InlineData(14.999, 0, 0, true)]
    [InlineData(5, -5.001, 0, false)]
    [InlineData(5, -4.999, 0, true)]
    [InlineData(5, 25.001, 0, false)]
    [InlineData(5, 24.999, 0, true)]
    [InlineData(5, 5, -5.001, false)]
    [InlineData(5, 5, -4.999, true)]
    [InlineData(5, 5, 35.001, false)]
    [InlineData(5, 5, 34.999, true)]
    public void Outer_measures_tell_where_a_bar_cannot_touch(double x, double y, double z, bool can)
    {
        Assert.Equal(can, new Tube3(new(x, y, z), new(x, y, z), 5).CanTouch(new Box3(0, 0, 0, 10, 20, 30)));
    }

    // A bar as a border for discs: what a disc's cylinder must keep, and the push along its slope.
    [Fact]
    public void A_bar_is_a_border_for_the_places_of_cells()
    {
        Random random = new(3);
        int near = 0;
        foreach ((Tube3 bar, _, _) in Draws(3, 90))
        {
            TubeBorder2 border = new(bar, Axis.Z, 0, 100, 11);
            for (int n = 0; n < 20; n++)
            {
                double x = (160 * random.NextDouble()) - 80, y = (160 * random.NextDouble()) - 80, distance = bar.ToCylinder(Axis.Z, 0, 100, x, y, 11, out _);
                double margin = border.Margin(x, y);
                Assert.Equal(distance >= bar.Radius, margin >= 0);
                // No more than a millimetre for each millimetre moved: what is that far from the border is that far.
                if (double.IsFinite(margin))
                    Assert.InRange(Math.Abs(border.Margin(x + 0.6, y - 0.8) - margin), 0, 1 + 1e-9);
                double gx = 0, gy = 0, energy = border.Push(x, y, 0.25, ref gx, ref gy);
                Assert.True(margin < 0.25 || energy == 0);
                Assert.True(margin >= 0 || energy > 0);
                if (energy == 0)
                    continue;
                near++;
                // A step down the slope lessens it.
                double size = Math.Sqrt((gx * gx) + (gy * gy)), none = 0;
                Assert.Equal(2 * Math.Sqrt(energy), size, 1e-6);
                Assert.True(border.Push(x - (1e-4 * gx / size), y - (1e-4 * gy / size), 0.25, ref none, ref none) <= energy);
            }
        }

        Assert.InRange(near, 100, 1700);
    }

    // Beside the ends a bar of radius 13 that lies 5 mm below the cells reaches sqrt(169 - 25) = 12 mm sideways.
    [Theory]
    [InlineData(-5, 12)]
    [InlineData(105, 12)]
    [InlineData(50, 13)]
    public void A_bar_across_the_cells_is_a_rounded_strip(double z, double reach)
    {
        TubeBorder2 border = new(new Tube3(new(-50, 0, z), new(50, 0, z), 13), Axis.Z, 0, 100, 10);

        Assert.Equal(30 - 10 - reach, border.Margin(0, 30), 1e-9);
        Assert.Equal(double.PositiveInfinity, new TubeBorder2(new Tube3(new(-50, 0, -14), new(50, 0, -14), 13), Axis.Z, 0, 100, 10).Margin(0, 0));
    }

    // Bars alike against the layer make regions alike; a bar elsewhere does not.
    [Fact]
    public void The_key_tells_bars_apart_as_the_layer_sees_them()
    {
        Tube3 bar = new(new(-50, 0, 20), new(50, 0, 40), 13), higher = new(new(-50, 0, 25), new(50, 0, 45), 13), thicker = new(new(-50, 0, 20), new(50, 0, 40), 14);

        Assert.Equal(new TubeBorder2(bar, Axis.Z, 0, 100, 10).Key, new TubeBorder2(higher, Axis.Z, 5, 105, 10).Key);
        Assert.NotEqual(new TubeBorder2(bar, Axis.Z, 0, 100, 10).Key, new TubeBorder2(higher, Axis.Z, 0, 100, 10).Key);
        Assert.NotEqual(new TubeBorder2(bar, Axis.Z, 0, 100, 10).Key, new TubeBorder2(thicker, Axis.Z, 0, 100, 10).Key);
    }
}
