using System.Globalization;
using System.Text;

namespace PackPlanner.Core.Fitting;

/// <summary>Where the centres of one layer's cells may be, inside one part of the cavity.</summary>
internal sealed class RegionPiece(Border2 inside, Border2[] outside, TubeBorder2[] tubes, double bodyStart)
{
    internal Border2 Inside { get; } = inside;

    internal IReadOnlyList<TubeBorder2> Tubes => tubes;

    /// <summary>Where along the axis the bare body begins, millimetres.</summary>
    internal double BodyStart { get; } = bodyStart;

    /// <summary>Distance to spare, millimetres; below zero when the place is not allowed.</summary>
    internal double Margin(double x, double y)
    {
        double least = Inside.Margin(x, y);
        foreach (Border2 border in outside)
            least = Math.Min(least, border.Margin(x, y));
        foreach (TubeBorder2 tube in tubes)
            least = Math.Min(least, tube.Margin(x, y));
        return least;
    }

    /// <summary>Adds the squares of what is lacking, square millimetres, and their gradient; <paramref name="extra"/> is asked on top.</summary>
    internal double Push(double x, double y, double extra, ref double gx, ref double gy)
    {
        double energy = Inside.Push(x, y, extra, ref gx, ref gy);
        foreach (Border2 border in outside)
            energy += border.Push(x, y, extra, ref gx, ref gy);
        foreach (TubeBorder2 tube in tubes)
            energy += tube.Push(x, y, extra, ref gx, ref gy);
        return energy;
    }

    /// <summary>Alike for pieces in which the same places are allowed, wherever they stand along the axis.</summary>
    internal void AppendKey(StringBuilder key)
    {
        AppendBorder(key, Inside);
        foreach (Border2 border in outside)
            AppendBorder(key.Append('|'), border);
        foreach (TubeBorder2 tube in tubes)
            key.Append('|').Append(tube.Key);
        key.Append('/');
    }

    private static void AppendBorder(StringBuilder key, Border2 border)
    {
        key.Append(CultureInfo.InvariantCulture, $"{border.Clearance}");
        for (int i = 0; i < border.U.Length; i++)
            key.Append(CultureInfo.InvariantCulture, $",{border.U[i]:R}:{border.V[i]:R}");
    }
}
