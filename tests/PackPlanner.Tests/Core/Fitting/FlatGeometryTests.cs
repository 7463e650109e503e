using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Distances, insides and overlaps in the plane: by hand, at the limit on both sides, and against dense points along an outline.</summary>
public class FlatGeometryTests
{
    // An L: 40 x 40 with the upper right quarter cut out.
    private static readonly double[] U = [0, 40, 40, 20, 20, 0], V = [0, 0, 20, 20, 40, 40];

    [Theory]
    [InlineData(5, 3, 3, 5, 0)]
    [InlineData(-3, 4, 5, 0, 0)]
    [InlineData(13, 4, 5, 10, 0)]
    [InlineData(10, 0, 0, 10, 0)]
    public void A_segment_is_as_far_as_its_nearest_point(double x, double y, double distance, double qx, double qy)
    {
        double squared = Geometry2.SegmentDistanceSquared(x, y, 0, 0, 10, 0, out double atX, out double atY);

        Assert.Equal((distance * distance, qx, qy), (squared, atX, atY));
    }

    [Fact]
    public void A_segment_of_no_length_is_its_point()
    {
        Assert.Equal(25, Geometry2.SegmentDistanceSquared(3, 4, 0, 0, 0, 0, out double x, out double y));
        Assert.Equal((0, 0), (x, y));
    }

    [Theory]
    [InlineData(10, 30, true)]
    [InlineData(30, 30, false)]
    [InlineData(30, 10, true)]
    [InlineData(-1, 10, false)]
    [InlineData(41, 10, false)]
    [InlineData(10, 41, false)]
    [InlineData(19.999, 39.999, true)]
    [InlineData(20.001, 20.001, false)]
    public void A_point_is_inside_or_not(double x, double y, bool inside)
    {
        Assert.Equal(inside, Geometry2.Contains(U, V, x, y));
        Assert.Equal(inside, Geometry2.SignedDistance(U, V, x, y) > 0);
    }

    [Theory]
    [InlineData(10, 30, 10)]
    [InlineData(19, 19, 1.4142135623730951)]
    [InlineData(30, 30, -10)]
    [InlineData(43, -4, -5)]
    [InlineData(5, 20, 5)]
    public void Signed_distances_by_hand(double x, double y, double mm)
    {
        Assert.Equal(mm, Geometry2.SignedDistance(U, V, x, y), 1e-12);
    }

    [Fact]
    public void Area_has_the_sign_of_its_turn_and_only_the_L_is_not_convex()
    {
        Assert.Equal(2400, Geometry2.TwiceArea(U, V));
        Assert.Equal(-2400, Geometry2.TwiceArea([.. U.Reverse()], [.. V.Reverse()]));
        Assert.False(Geometry2.IsConvex(U, V));
        Assert.True(Geometry2.IsConvex([0, 40, 40, 0], [0, 0, 20, 20]));
        Assert.True(Geometry2.IsConvex([0, 20, 40, 40, 0], [0, 0, 0, 20, 20]));
        Assert.True(Geometry2.IsConvex([0, 40, 40, 0], [20, 20, 0, 0]));
        Assert.False(Geometry2.IsConvex([0, 40, 40, 20, 0], [0, 0, 20, 19.9, 20]));
    }

    [Fact]
    public void A_segment_is_clipped_to_a_rectangle()
    {
        Assert.True(Geometry2.ClipToRectangle(-10, 5, 30, 5, 0, 0, 20, 10, out double from, out double to));
        Assert.Equal((0.25, 0.75), (from, to));
        Assert.True(Geometry2.ClipToRectangle(30, 5, -10, 5, 0, 0, 20, 10, out from, out to));
        Assert.Equal((0.25, 0.75), (from, to));
        Assert.True(Geometry2.ClipToRectangle(5, 2, 6, 3, 0, 0, 20, 10, out from, out to));
        Assert.Equal((0, 1), (from, to));
        // Along its side, past its corner, beyond it: not within.
        Assert.False(Geometry2.ClipToRectangle(-10, 10, 30, 10, 0, 0, 20, 10, out _, out _));
        Assert.False(Geometry2.ClipToRectangle(-10, 0, 30, 0, 0, 0, 20, 10, out _, out _));
        Assert.False(Geometry2.ClipToRectangle(-5, 5, 5, 15, 0, 0, 20, 10, out _, out _));
        Assert.False(Geometry2.ClipToRectangle(21, 0, 21, 10, 0, 0, 20, 10, out _, out _));
        Assert.False(Geometry2.ClipToRectangle(-2, 5, 0, 5, 0, 0, 20, 10, out _, out _));
    }

    // A millionth of a millimetre is forgiven, more is not.
    [Theory]
    [InlineData(0, 0, 20, 40, true)]
    [InlineData(0, 0, 40, 20, true)]
    [InlineData(-0.0000005, 0, 20, 40, true)]
    [InlineData(-0.00001, 0, 20, 40, false)]
    [InlineData(0, 0, 20.00001, 40, false)]
    [InlineData(0, 0, 40, 20.0000005, true)]
    [InlineData(0, 0, 40, 20.00001, false)]
    [InlineData(0, 0, 20, 40.00001, false)]
    [InlineData(0, -0.00001, 20, 40, false)]
    [InlineData(21, 21, 30, 30, false)]
    public void A_rectangle_lies_inside_or_not(double x0, double y0, double x1, double y1, bool inside)
    {
        Assert.Equal(inside, Geometry2.RectangleInside(U, V, x0, y0, x1, y1));
    }

    [Theory]
    [InlineData(20, 20, 40, 40, false)]
    [InlineData(19.99999, 20, 40, 40, true)]
    [InlineData(20, 19.99999, 40, 40, true)]
    [InlineData(40, 0, 50, 20, false)]
    [InlineData(39.99999, 0, 50, 20, true)]
    [InlineData(-10, -10, 50, 50, true)]
    [InlineData(5, 5, 6, 6, true)]
    [InlineData(-10, 0, 0, 40, false)]
    public void A_rectangle_overlaps_or_not(double x0, double y0, double x1, double y1, bool overlaps)
    {
        Assert.Equal(overlaps, Geometry2.RectangleOverlaps(U, V, x0, y0, x1, y1));
    }

    // A bow tie crosses itself; a corner on another side touches; a side that folds back lies on the last.
    [Theory]
    [InlineData(new double[] { 0, 10, 10, 0 }, new double[] { 0, 10, 0, 10 }, 0, 2)]
    [InlineData(new double[] { 0, 10, 10, 5, 0 }, new double[] { 0, 0, 10, 0, 10 }, 0, 2)]
    [InlineData(new double[] { 0, 10, 4, 4 }, new double[] { 0, 0, 0, 10 }, 0, 1)]
    [InlineData(new double[] { 5, 10, 10, 0, 0, 8 }, new double[] { 0, 0, 10, 10, 0, 0 }, 0, 4)]
    [InlineData(new double[] { 0, 10, 10, 0 }, new double[] { 0, 0, 10, 10 }, -1, -1)]
    [InlineData(new double[] { 0, 40, 40, 20, 20, 0 }, new double[] { 0, 0, 20, 20, 40, 40 }, -1, -1)]
    [InlineData(new double[] { 0, 5, 10, 10, 0 }, new double[] { 0, 0, 0, 10, 10 }, -1, -1)]
    [InlineData(new double[] { 0, 10, 10, 5, 0 }, new double[] { 0, 0, 10, 0.01, 10 }, -1, -1)]
    [InlineData(new double[] { 0, 20, 20, 0, 0, 10, 10, 0 }, new double[] { 0, 0, 20, 20, 15, 15, 5, 5 }, -1, -1)]
    public void An_outline_that_meets_itself_is_told(double[] u, double[] v, int a, int b)
    {
        Assert.Equal(a < 0 ? null : (a, b), OutlineCrossing.First(u, v));
    }

    /// <summary>The least distance to many points on an outline, below zero on its other side.</summary>
    private static double Dense(double[] u, double[] v, double x, double y)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < u.Length; i++)
        {
            int j = (i + 1) % u.Length;
            for (int k = 0; k < 400; k++)
                least = Math.Min(least, Math.Pow(u[i] + (k / 400.0 * (u[j] - u[i])) - x, 2) + Math.Pow(v[i] + (k / 400.0 * (v[j] - v[i])) - y, 2));
        }

        return Geometry2.Contains(u, v, x, y) ? Math.Sqrt(least) : -Math.Sqrt(least);
    }

    private static double BoxDistance(double[] u, double[] v, double x, double y) =>
        Math.Sqrt(Math.Pow(Math.Max(0, Math.Max(u.Min() - x, x - u.Max())), 2) + Math.Pow(Math.Max(0, Math.Max(v.Min() - y, y - v.Max())), 2));

    public static TheoryData<double[], double[], bool> Borders => new()
    {
        { U, V, true },
        { U, V, false },
        { [0, 50, 40, 5], [0, 0, 30, 35], true },
        { [0, 50, 40, 5], [0, 0, 30, 35], false },
    };

    // On the right side the margin is the distance less the clearance; on the wrong one never more than that.
    [Theory]
    [MemberData(nameof(Borders))]
    public void Margins_of_a_border_are_distances_less_the_clearance(double[] u, double[] v, bool inside)
    {
        Border2 border = new(u, v, 3, inside);
        Random random = new(1);

        for (int n = 0; n < 400; n++)
        {
            double x = (90 * random.NextDouble()) - 20, y = (80 * random.NextDouble()) - 20, far = Dense(u, v, x, y) * (inside ? 1 : -1) - 3, told = border.Margin(x, y);
            bool box = !inside && BoxDistance(u, v, x, y) > 3;
            if (far > -3 && !box)
                Assert.Equal(far, told, 0.02);
            // Where the outline's box already tells that it is far enough, or on the wrong side, the margin may be less than the distance.
            else if (box)
                Assert.Equal(BoxDistance(u, v, x, y) - 3, told, 1e-9);
            else
                Assert.InRange(told, double.NegativeInfinity, -3 + 1e-9);
            Assert.True(told <= Math.Max(far, -3) + 0.02);
        }
    }

    // What is lacking, squared: one lack for each edge that is too near on the right side, one for the nearest on the wrong one; pulled along its gradient.
    [Theory]
    [MemberData(nameof(Borders))]
    public void A_border_pushes_along_the_slope_of_what_is_lacking(double[] u, double[] v, bool inside)
    {
        Border2 border = new(u, v, 3, inside);
        Random random = new(2);
        double Energy(double x, double y)
        {
            double gx = 0, gy = 0;
            return border.Push(x, y, 0.5, ref gx, ref gy);
        }

        int pushed = 0;
        for (int n = 0; n < 400; n++)
        {
            double x = (70 * random.NextDouble()) - 10, y = (60 * random.NextDouble()) - 10, gx = 7, gy = -2;
            double energy = border.Push(x, y, 0.5, ref gx, ref gy), margin = border.Margin(x, y);
            Assert.True(margin < 0.5 || energy == 0);
            double lack = 3.5 - (Dense(u, v, x, y) * (inside ? 1 : -1));
            if (lack < 3.4)
                Assert.InRange(Math.Sqrt(energy), Math.Max(0, lack - 0.02), (Math.Max(0, lack + 0.02) * Math.Sqrt(3)) + 1e-9);
            if (margin < -3.001 && !(inside && Geometry2.IsConvex(u, v)))
                Assert.Equal(3.5 + Math.Abs(Dense(u, v, x, y)), Math.Sqrt(energy), 0.08);
            const double h = 1e-6;
            Assert.Equal((Energy(x + h, y) - Energy(x - h, y)) / (2 * h), gx - 7, 1e-3);
            Assert.Equal((Energy(x, y + h) - Energy(x, y - h)) / (2 * h), gy + 2, 1e-3);
            pushed += energy > 0 ? 1 : 0;
        }

        Assert.InRange(pushed, 50, 399);
    }

    // On the border itself the way out is square to it, to the side where the point should be.
    [Theory]
    [InlineData(true, -1)]
    [InlineData(false, 1)]
    public void On_the_border_itself_the_way_is_square_to_it(bool inside, int sign)
    {
        double gx = 0, gy = 0;

        double energy = new Border2(U, V, 3, inside).Push(10, 0, 0, ref gx, ref gy);

        Assert.Equal(9, energy, 1e-9);
        Assert.Equal((0, 6.0 * sign), (gx, gy), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-6 && Math.Abs(a.Item2 - b.Item2) < 1e-6);
    }

    [Fact]
    public void An_edge_of_no_length_asks_for_nothing()
    {
        Border2 twice = new([0, 40, 40, 40, 0], [0, 0, 0, 20, 20], 3, keepInside: true);
        double gx = 0, gy = 0;

        Assert.Equal(7, twice.Margin(20, 10), 1e-12);
        Assert.Equal(0, twice.Push(20, 10, 0, ref gx, ref gy));
        Assert.Equal((0, 0), (gx, gy));
        Assert.Equal(1, twice.Push(20, 2, 0, ref gx, ref gy), 1e-12);
    }
}
