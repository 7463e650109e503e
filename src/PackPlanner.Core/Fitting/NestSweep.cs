namespace PackPlanner.Core.Fitting;

/// <summary>Lays regular nests over a region at many angles, stretches and phases and keeps those that hold most cells.</summary>
internal static class NestSweep
{
    /// <summary>Nests by falling count; among equals the plainer first. Empty when no cell fits.</summary>
    internal static List<(Nest Nest, int Count)> Best(
        DiscRegion region, RegionRaster raster, double distance, int phases, bool stretched, int keep, CancellationToken cancel)
    {
        List<Nest> families = [.. Families(region, distance, stretched)];
        (Nest Nest, int Count)[] best = new (Nest, int)[families.Count];
        // One answer for each family, whatever the number of cores.
        Parallel.For(0, families.Count, f => best[f] = BestPhase(families[f], region, raster, phases, cancel));
        return [.. best.Select((b, i) => (b, i)).Where(e => e.b.Count > 0)
            .OrderByDescending(e => e.b.Count).ThenBy(e => e.i).Take(keep).Select(e => e.b)];
    }

    private static (Nest Nest, int Count) BestPhase(
        Nest family, DiscRegion region, RegionRaster raster, int phases, CancellationToken cancel)
    {
        (Nest Nest, int Count) best = (family, 0);
        (double sin, double cos) = Math.SinCos(family.AngleRad);
        if (Math.Abs(family.AngleRad - (Math.PI / 2)) < 1e-12)
            (sin, cos) = (1, 0);
        (double a0, double a1, double c0, double c1) = Extents(region, sin, cos);
        for (int j = 0; j <= phases; j++)
        {
            // The last phase starts from the opposite wall instead of a fraction of a row.
            double across = j == phases ? c1 : c0 + (j * family.RowMm / phases);
            for (int i = 0; i <= phases; i++)
            {
                if (cancel.IsCancellationRequested && best.Count > 0)
                    return best;
                double along = i == phases ? a1 : a0 + (i * family.PitchMm / phases);
                Nest nest = family with { AtX = (along * cos) - (across * sin), AtY = (along * sin) + (across * cos) };
                int count = nest.Count(region, raster);
                if (count > best.Count)
                    best = (nest, count);
            }
        }

        return best;
    }

    private static (double A0, double A1, double C0, double C1) Extents(DiscRegion region, double sin, double cos)
    {
        (double a0, double a1, double c0, double c1) = (double.PositiveInfinity, double.NegativeInfinity, double.PositiveInfinity, double.NegativeInfinity);
        foreach (RegionPiece piece in region.Pieces)
        {
            for (int i = 0; i < piece.Inside.U.Length; i++)
            {
                double along = (piece.Inside.U[i] * cos) + (piece.Inside.V[i] * sin);
                double across = (piece.Inside.V[i] * cos) - (piece.Inside.U[i] * sin);
                double k = piece.Inside.Clearance;
                (a0, a1) = (Math.Min(a0, along + k), Math.Max(a1, along - k));
                (c0, c1) = (Math.Min(c0, across + k), Math.Max(c1, across - k));
            }
        }

        return (a0, a1, c0, c1);
    }

    private static IEnumerable<Nest> Families(DiscRegion region, double distance, bool stretched)
    {
        double[] stretches = stretched ? [0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.065, 0.08, 0.10, 0.13] : [0];
        foreach (double angle in Angles(region))
        {
            yield return Nest.Of(staggered: false, angle, distance, 0);
            foreach (double stretch in stretches.Concat(stretched ? ClosingUp(region, angle, distance) : []))
                yield return Nest.Of(staggered: true, angle, distance, stretch);
        }
    }

    /// <summary>Stretches at which a whole number of rows just fits between the outermost walls.</summary>
    private static IEnumerable<double> ClosingUp(DiscRegion region, double angle, double distance)
    {
        (double sin, double cos) = Math.SinCos(angle);
        (double a0, double a1, double c0, double c1) = Extents(region, sin, cos);
        int rows = (int)Math.Floor((c1 - c0) / (distance * Math.Sqrt(0.75))) + 1;
        double row = (c1 - c0) / Math.Max(1, rows);
        double pitch = row < distance ? 2 * Math.Sqrt((distance * distance) - (row * row)) : 0;
        if (rows > 0 && pitch > distance && pitch < distance * 1.42)
            yield return (pitch / distance) - 1 + 1e-9;
        int columns = (int)Math.Floor((a1 - a0) / distance);
        double wide = columns > 0 ? (a1 - a0) / columns : 0;
        if (wide > distance * 1.0001 && wide < distance * 1.42)
            yield return (wide / distance) - 1 - 1e-9;
        double half = columns > 0 ? (a1 - a0) / (columns - 0.5) : 0;
        if (half > distance * 1.0001 && half < distance * 1.42)
            yield return (half / distance) - 1 - 1e-9;
    }

    private static List<double> Angles(DiscRegion region)
    {
        List<double> angles = [0, Math.PI / 2];
        foreach (RegionPiece piece in region.Pieces)
        {
            ReadOnlySpan<double> u = piece.Inside.U, v = piece.Inside.V;
            for (int i = 0; i < u.Length && angles.Count < 12; i++)
            {
                int j = (i + 1) % u.Length;
                double angle = Math.Atan2(v[j] - v[i], u[j] - u[i]);
                angle = angle < 0 ? angle + Math.PI : angle;
                foreach (double turned in new[] { angle, angle + (Math.PI / 2) })
                {
                    double a = turned >= Math.PI - 1e-9 ? turned - Math.PI : turned;
                    if (!angles.Any(known => Math.Abs(known - a) < 1e-3 || Math.Abs(Math.Abs(known - a) - Math.PI) < 1e-3))
                        angles.Add(a);
                }
            }
        }

        return angles;
    }
}
