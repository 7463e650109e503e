using CsCheck;
using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>The search's own geometry and its largest sets against plain counting.</summary>
public class FittingPropertiesTests
{
    // Up to fourteen candidates: every set there is, looked at one by one.
    [Fact]
    public void A_set_found_is_free_of_clashes_and_as_large_as_the_largest_of_all()
    {
        Gen.Select(Gen.Int[1, 14], Gen.Double[0.05, 0.6], Gen.Int[0, 1_000_000]).Sample((count, share, seed) =>
        {
            Random random = new(seed);
            int[] clash = new int[count];
            for (int i = 0; i < count; i++)
            {
                clash[i] |= 1 << i;
                for (int j = 0; j < i; j++)
                {
                    if (random.NextDouble() >= share)
                        continue;
                    clash[i] |= 1 << j;
                    clash[j] |= 1 << i;
                }
            }

            IndependentSet search = new([.. clash.Select(row => (ulong)row)], count, seed);
            int[] found = search.Search([[.. Enumerable.Range(0, count)]], 300, count, TestContext.Current.CancellationToken);

            Assert.Equal(found.Length, found.Distinct().Count());
            Assert.All(found, i => Assert.DoesNotContain(found, j => j != i && (clash[i] >> j & 1) == 1));
            int largest = Enumerable.Range(0, 1 << count).Where(set => Enumerable.Range(0, count).All(i => (set >> i & 1) == 0 || (clash[i] & set) == 1 << i))
                .Max(set => System.Numerics.BitOperations.PopCount((uint)set));
            Assert.Equal(largest, found.Length);
        }, seed: "0000KIcCwDG2", iter: 300);
    }

    // A star-shaped outline drawn by angle and radius: whether a point lies inside is told by its own angle and radius.
    [Fact]
    public void Inside_and_the_distance_to_the_border_are_those_of_a_thousand_points_on_it()
    {
        Gen.Select(Gen.Double[20, 100].Array[3, 12], Gen.Double[-110, 110], Gen.Double[-110, 110]).Sample((radii, x, y) =>
        {
            int n = radii.Length;
            double[] u = [.. radii.Select((r, i) => r * Math.Cos(2 * Math.PI * i / n))], v = [.. radii.Select((r, i) => r * Math.Sin(2 * Math.PI * i / n))];
            double turn = (Math.Atan2(y, x) / (2 * Math.PI) + 1) % 1 * n;
            int a = (int)turn % n, b = (a + 1) % n;
            // Of the triangle between the middle and two corners the point is inside where it lies on the middle's side of the edge.
            double side = (u[b] - u[a]) * (y - v[a]) - (v[b] - v[a]) * (x - u[a]);
            if (Math.Abs(side) < 1e-6)
                return;
            double nearest = double.PositiveInfinity;
            for (int i = 0; i < n; i++)
            {
                for (int k = 0; k <= 1000; k++)
                {
                    int j = (i + 1) % n;
                    double px = u[i] + (u[j] - u[i]) * k / 1000, py = v[i] + (v[j] - v[i]) * k / 1000;
                    nearest = Math.Min(nearest, Math.Sqrt((px - x) * (px - x) + (py - y) * (py - y)));
                }
            }

            double signed = Geometry2.SignedDistance(u, v, x, y);
            Assert.Equal(side > 0, signed > 0);
            Assert.InRange(Math.Abs(signed), nearest - 0.2, nearest + 1e-9);
            double twiceArea = Enumerable.Range(0, n).Sum(i => radii[i] * radii[(i + 1) % n] * Math.Sin(2 * Math.PI / n));
            Assert.Equal(twiceArea, Geometry2.TwiceArea(u, v), tolerance: 1e-6);
        }, seed: "0000KIcCwDG2", iter: 1000);
    }
}
