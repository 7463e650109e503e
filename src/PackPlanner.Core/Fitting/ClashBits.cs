using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PackPlanner.Core.Fitting;

/// <summary>Which candidates of one slab clash with which, a row of bits for each, worked out eight at a time.</summary>
internal static class ClashBits
{
    private const int RowsTogether = 16;

    /// <summary>Words of 64 bits in a row.</summary>
    internal static int Words(int count) => (count + 63) / 64;

    /// <summary>One row of bits for each candidate, itself included; the two axes are those across the slab.</summary>
    internal static ulong[] Of(IReadOnlyList<Body> bodies, Axis first, Axis second)
    {
        int n = bodies.Count, words = Words(n);
        List<Attitude> attitudes = [.. bodies.Select(b => b.Attitude).Distinct()];
        int[] kind = [.. bodies.Select(b => attitudes.IndexOf(b.Attitude))];
        Side across = new(bodies, kind, attitudes, first, 64 * words), up = new(bodies, kind, attitudes, second, 64 * words);
        ulong[] bits = new ulong[words * n];
        // Word by word for a few rows at a time, so that what the word needs is read once for all of them.
        Parallel.For(0, (n + RowsTogether - 1) / RowsTogether, block =>
        {
            int from = block * RowsTogether, to = Math.Min(n, from + RowsTogether);
            for (int w = 0; w < words; w++)
            {
                for (int i = from; i < to; i++)
                    bits[(i * words) + w] = Word(across, up, kind[i], i, 64 * w);
            }
        });
        return bits;
    }

    private static ulong Word(Side across, Side up, int kind, int i, int from)
    {
        ulong word = 0;
        for (int k = 0; k < 64; k += Vector512<double>.Count)
        {
            ulong near = across.TooNear(kind, i, from + k);
            if (near != 0)
                word |= (near & up.TooNear(kind, i, from + k)) << k;
        }

        return word;
    }

    /// <summary>Where the candidates begin and end along one axis, and what gap each kind wants before and behind each of them.</summary>
    private sealed class Side
    {
        private readonly double[] low;
        private readonly double[] high;
        private readonly double[][] before;
        private readonly double[][] behind;

        internal Side(IReadOnlyList<Body> bodies, int[] kind, List<Attitude> attitudes, Axis axis, int length)
        {
            const double Eps = Geometry2.RoundingMm / 2;
            (low, high) = (Padded(j => bodies[j].Box.Low(axis)), Padded(j => bodies[j].Box.High(axis)));
            before = [.. attitudes.Select(a => Padded(j => Need(a, attitudes[kind[j]]) - Eps))];
            behind = [.. attitudes.Select(a => Padded(j => Need(attitudes[kind[j]], a) - Eps))];

            // Behind the last candidate stands what is near to nothing.
            double[] Padded(Func<int, double> of) => [.. Enumerable.Range(0, length).Select(j => j < bodies.Count ? of(j) : double.NaN)];
            double Need(Attitude below, Attitude above) => Math.Max(below.Want(Attitude.Face(axis, true)), above.Want(Attitude.Face(axis, false)));
        }

        /// <summary>A bit for each of eight candidates that is nearer to candidate i, of the given kind, than the gap wanted between them.</summary>
        internal ulong TooNear(int kind, int i, int j)
        {
            Vector512<double> above = At(low, j) - Vector512.Create(high[i]), below = Vector512.Create(low[i]) - At(high, j);
            return (Vector512.LessThan(above, At(before[kind], j)) & Vector512.LessThan(below, At(behind[kind], j))).ExtractMostSignificantBits();
        }

        private static Vector512<double> At(double[] values, int j) => Vector512.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(values), (nuint)j);
    }
}
