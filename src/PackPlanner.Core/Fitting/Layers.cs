namespace PackPlanner.Core.Fitting;

/// <summary>Cuts the cavity into layers of cells along one axis and says where the centres of a layer may be.</summary>
internal static class Layers
{
    /// <summary>Where a layer's bare bodies may begin so that something is gained: against each wall, keep-out and neighbour layer.</summary>
    internal static double[] Starts(Scene scene, Axis axis, CellBody.Cylinder cell, int most)
    {
        Clearances c = scene.Case.Clearances;
        double pitch = cell.LengthMm + c.LayerGapMm;
        SortedSet<double> starts = [];
        foreach (Prism3 part in scene.Parts)
        {
            (double low, double high) = part.Extent(axis);
            double first = low + c.EndMm, last = high - c.EndMm - cell.LengthMm;
            List<double> bottoms = [first], tops = [last];
            if (part.Along(axis).Extrusion != axis)
            {
                double[] across = axis == part.First ? part.U : part.V;
                bottoms.AddRange(across.Select(s => s + c.EndMm));
                tops.AddRange(across.Select(s => s - c.EndMm - cell.LengthMm));
            }

            foreach (Prism3 block in scene.Blocks)
            {
                (double blockLow, double blockHigh) = block.Extent(axis);
                bottoms.Add(blockHigh + c.EndMm);
                tops.Add(blockLow - c.EndMm - cell.LengthMm);
            }

            foreach (Tube3 tube in scene.Tubes)
            {
                bottoms.Add(Math.Max(tube.From[axis], tube.To[axis]) + tube.Radius + c.EndMm);
                tops.Add(Math.Min(tube.From[axis], tube.To[axis]) - tube.Radius - c.EndMm - cell.LengthMm);
            }

            foreach (double bottom in bottoms)
            {
                for (double s = bottom; s <= last + Geometry2.RoundingMm; s += pitch)
                    AddUnlessThere(starts, s, first, last);
            }

            foreach (double top in tops)
            {
                for (double s = top; s >= first - Geometry2.RoundingMm; s -= pitch)
                    AddUnlessThere(starts, s, first, last);
            }
        }

        // Very many corners would make as many layers to look at: keep an even choice, ends included.
        double[] all = [.. starts];
        return all.Length <= most ? all : [.. Enumerable.Range(0, most).Select(i => all[i * (all.Length - 1) / (most - 1)])];
    }

    /// <summary>Starts of layers stacked without slack between them, the whole stack pushed up in even steps from the lowest wall.</summary>
    internal static IEnumerable<double> EvenStacks(Scene scene, Axis axis, CellBody.Cylinder cell, int phases)
    {
        Clearances c = scene.Case.Clearances;
        double pitch = cell.LengthMm + c.LayerGapMm;
        foreach (Prism3 part in scene.Parts)
        {
            (double low, double high) = part.Extent(axis);
            double first = low + c.EndMm, room = high - c.EndMm - cell.LengthMm - first;
            if (room < 0)
                continue;
            double slack = room % pitch;
            for (double stack = first; stack <= first + room - slack + Geometry2.RoundingMm; stack += pitch)
            {
                for (int k = 0; k <= phases; k++)
                    yield return stack + (slack * k / phases);
            }
        }
    }

    /// <summary>Where centres may be when the bare bodies begin at one place along the axis.</summary>
    internal static DiscRegion At(Scene scene, Axis axis, CellBody.Cylinder cell, double start)
    {
        return new DiscRegion([.. PiecesAt(scene, axis, cell, start)]);
    }

    internal static IEnumerable<RegionPiece> PiecesAt(Scene scene, Axis axis, CellBody.Cylinder cell, double start)
    {
        Clearances c = scene.Case.Clearances;
        double low = start - c.EndMm, high = start + cell.LengthMm + c.EndMm, r = (cell.DiameterMm / 2) + c.WallMm;
        Border2[] outside = [.. scene.Blocks.SelectMany(b => Obstacles(b.Along(axis), axis, low, high, r))];
        TubeBorder2[] tubes = [.. scene.Tubes
            .Where(t => Math.Min(t.From[axis], t.To[axis]) - t.Radius < high && Math.Max(t.From[axis], t.To[axis]) + t.Radius > low)
            .Select(t => new TubeBorder2(t, axis, low, high, r))];
        foreach (Prism3 given in scene.Parts)
        {
            foreach (Border2 inside in Insides(given.Along(axis), axis, low, high, r))
                yield return new RegionPiece(inside, outside, tubes, start);
        }
    }

    private static IEnumerable<Border2> Insides(Prism3 part, Axis axis, double low, double high, double r)
    {
        const double Eps = Geometry2.RoundingMm;
        (double partLow, double partHigh) = part.Extent(axis);
        if (low < partLow - Eps || high > partHigh + Eps)
            yield break;
        if (part.Extrusion == axis)
        {
            yield return new Border2(part.U, part.V, r, keepInside: true);
            yield break;
        }

        if (part.High - part.Low < (2 * r) - Eps)
            yield break;
        foreach ((double from, double to) in FreeAcross(part, axis, low, high))
        {
            if (to - from < (2 * r) - Eps)
                continue;
            double e0 = part.Low + r, e1 = Math.Max(e0, part.High - r), w0 = from + r, w1 = Math.Max(w0, to - r);
            yield return Rectangle(part, axis, w0, w1, e0, e1, keepInside: true);
        }
    }

    private static IEnumerable<Border2> Obstacles(Prism3 block, Axis axis, double low, double high, double r)
    {
        const double Eps = Geometry2.RoundingMm;
        (double blockLow, double blockHigh) = block.Extent(axis);
        if (blockLow >= high - Eps || blockHigh <= low + Eps)
            yield break;
        if (block.Extrusion == axis)
        {
            yield return new Border2(block.U, block.V, r, keepInside: false);
            yield break;
        }

        foreach ((double from, double to) in TakenAcross(block, axis, low, high))
            yield return Rectangle(block, axis, from - r, to + r, block.Low - r, block.High + r, keepInside: false);
    }

    private static Border2 Rectangle(Prism3 prism, Axis axis, double w0, double w1, double e0, double e1, bool keepInside)
    {
        Axis extrusion = prism.Extrusion;
        bool extrusionFirst = Axes3.Others(axis).First == extrusion;
        (double u0, double u1, double v0, double v1) = extrusionFirst ? (e0, e1, w0, w1) : (w0, w1, e0, e1);
        return new Border2([u0, u1, u1, u0], [v0, v0, v1, v1], 0, keepInside);
    }

    /// <summary>
    /// Intervals across the axis, in the prism's outline, over which the whole band low..high lies inside the outline.
    /// </summary>
    private static List<(double From, double To)> FreeAcross(Prism3 part, Axis axis, double low, double high)
    {
        (double[] along, double[] across) = axis == part.First ? (part.U, part.V) : (part.V, part.U);
        List<(double From, double To)> taken = [];
        for (int i = 0, j = along.Length - 1; i < along.Length; j = i++)
        {
            if (ClipBand(along[j], across[j], along[i], across[i], low, high, out double a, out double b))
                taken.Add((Math.Min(a, b), Math.Max(a, b)));
        }

        taken.Sort();
        List<(double From, double To)> free = [];
        double at = double.NegativeInfinity, middle = (low + high) / 2;
        foreach ((double from, double to) in taken)
        {
            if (from > at && !double.IsInfinity(at) && Geometry2.Contains(along, across, middle, (at + from) / 2))
                free.Add((at, from));
            at = Math.Max(at, to);
        }

        return free;
    }

    /// <summary>Intervals across the axis over which some of the band low..high lies inside the outline.</summary>
    private static List<(double From, double To)> TakenAcross(Prism3 block, Axis axis, double low, double high)
    {
        (double[] along, double[] across) = axis == block.First ? (block.U, block.V) : (block.V, block.U);
        List<(double From, double To)> spans = [];
        SortedSet<double> stops = [];
        for (int i = 0, j = along.Length - 1; i < along.Length; j = i++)
        {
            if (!ClipBand(along[j], across[j], along[i], across[i], low, high, out double a, out double b))
                continue;
            spans.Add((Math.Min(a, b), Math.Max(a, b)));
            stops.Add(a);
            stops.Add(b);
        }

        double[] marks = [.. stops];
        List<(double From, double To)> taken = [];
        for (int i = 0; i + 1 < marks.Length; i++)
        {
            double middle = (marks[i] + marks[i + 1]) / 2;
            if (!spans.Any(s => s.From < middle && s.To > middle) && !Geometry2.Contains(along, across, (low + high) / 2, middle))
                continue;
            if (taken.Count > 0 && taken[^1].To == marks[i])
                taken[^1] = (taken[^1].From, marks[i + 1]);
            else
                taken.Add((marks[i], marks[i + 1]));
        }

        return taken;
    }

    private static bool ClipBand(double a0, double b0, double a1, double b1, double low, double high, out double from, out double to)
    {
        const double Eps = Geometry2.RoundingMm;
        double wide = Math.Max(Math.Abs(b0), Math.Abs(b1)) + 1;
        bool any = Geometry2.ClipToRectangle(a0, b0, a1, b1, low + Eps, -wide, high - Eps, wide, out double t0, out double t1);
        (from, to) = (b0 + (t0 * (b1 - b0)), b0 + (t1 * (b1 - b0)));
        return any;
    }

    private static void AddUnlessThere(SortedSet<double> starts, double s, double first, double last)
    {
        if (s < first - Geometry2.RoundingMm || s > last + Geometry2.RoundingMm)
            return;
        // Two starts a hair apart would be two layers to look at with one answer.
        if (starts.GetViewBetween(s - 1e-7, s + 1e-7).Count == 0)
            starts.Add(s);
    }
}
