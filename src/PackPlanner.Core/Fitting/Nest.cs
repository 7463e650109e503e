namespace PackPlanner.Core.Fitting;

/// <summary>A regular nest of discs: rows at one angle, square or staggered, perhaps drawn out along the rows so that they close up.</summary>
/// <param name="Staggered">Each row half a pitch beside the last (hexagonal) or straight above it (square).</param>
/// <param name="AngleRad">Direction of the rows.</param>
/// <param name="PitchMm">Centre to centre along a row.</param>
/// <param name="RowMm">Row to row.</param>
/// <param name="AtX">A point on a row.</param>
/// <param name="AtY">A point on a row.</param>
internal readonly record struct Nest(bool Staggered, double AngleRad, double PitchMm, double RowMm, double AtX, double AtY)
{
    internal static Nest Of(bool staggered, double angleRad, double distance, double stretch)
    {
        double pitch = distance * (1 + stretch);
        double row = staggered ? Math.Sqrt((distance * distance) - (pitch * pitch / 4)) : distance;
        return new Nest(staggered, angleRad, pitch, row, 0, 0);
    }

    /// <summary>The places of the nest that lie in a region, row by row.</summary>
    internal void Fill(DiscRegion region, RegionRaster raster, List<(double X, double Y)> places)
    {
        places.Clear();
        Walk(region, raster, places);
    }

    /// <summary>How many places of the nest lie in a region.</summary>
    internal int Count(DiscRegion region, RegionRaster raster) => Walk(region, raster, null);

    private int Walk(DiscRegion region, RegionRaster raster, List<(double X, double Y)>? places)
    {
        (double sin, double cos) = SinCos(AngleRad);
        double minI = double.PositiveInfinity, maxI = double.NegativeInfinity, minJ = double.PositiveInfinity, maxJ = double.NegativeInfinity;
        for (int corner = 0; corner < 4; corner++)
        {
            double x = ((corner & 1) == 0 ? region.MinX : region.MaxX) - AtX, y = ((corner & 2) == 0 ? region.MinY : region.MaxY) - AtY;
            double i = ((x * cos) + (y * sin)) / PitchMm, j = ((y * cos) - (x * sin)) / RowMm;
            (minI, maxI, minJ, maxJ) = (Math.Min(minI, i), Math.Max(maxI, i), Math.Min(minJ, j), Math.Max(maxJ, j));
        }

        const double Hair = 1e-6;
        int count = 0;
        for (int j = (int)Math.Ceiling(minJ - Hair); j <= maxJ + Hair; j++)
        {
            double shift = Staggered && (j & 1) != 0 ? 0.5 : 0;
            for (int i = (int)Math.Ceiling(minI - shift - Hair); i <= maxI - shift + Hair; i++)
            {
                double along = (i + shift) * PitchMm, across = j * RowMm;
                double x = AtX + (along * cos) - (across * sin), y = AtY + (along * sin) + (across * cos);
                if (!raster.Allows(region, x, y))
                    continue;
                count++;
                places?.Add((x, y));
            }
        }

        return count;
    }

    /// <summary>Exact at right angles, so that rows along a wall stay on it to the last digit.</summary>
    private static (double Sin, double Cos) SinCos(double angle)
    {
        if (Math.Abs(angle) < 1e-12)
            return (0, 1);
        return Math.Abs(angle - (Math.PI / 2)) < 1e-12 ? (1, 0) : Math.SinCos(angle);
    }
}
