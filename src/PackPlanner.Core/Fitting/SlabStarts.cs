namespace PackPlanner.Core.Fitting;

/// <summary>Where a slab may begin so that something is gained: a sum of thicknesses and gaps away from a wall, a corner or a keep-out.</summary>
internal static class SlabStarts
{
    /// <summary>The starts of one class among classes of one axis; of more than <paramref name="most"/> an even choice.</summary>
    internal static SortedSet<double> Of(Scene scene, SlabClass slab, IReadOnlyList<SlabClass> classes, int most)
    {
        Axis along = slab.Along;
        SortedSet<double> starts = [];
        double[] steps = [.. classes.SelectMany(a => classes.Select(b => a.Thickness + a.GapTo(b))).Distinct()];
        foreach (Prism3 part in scene.Parts)
        {
            (double low, double high) = part.Extent(along);
            List<double> ups = [low], downs = [high];
            if (along != part.Extrusion)
            {
                ups.AddRange(along == part.First ? part.U : part.V);
                downs.AddRange(along == part.First ? part.U : part.V);
            }

            ups.AddRange(scene.Blocks.Select(b => b.Extent(along).High));
            downs.AddRange(scene.Blocks.Select(b => b.Extent(along).Low));
            ups.AddRange(scene.Tubes.Select(t => Math.Max(t.From[along], t.To[along]) + t.Radius));
            downs.AddRange(scene.Tubes.Select(t => Math.Min(t.From[along], t.To[along]) - t.Radius));
            double first = low + slab.WallBelow, last = high - slab.WallAbove - slab.Thickness;
            foreach (double sum in Sums(steps, high - low, 200))
            {
                foreach (SlabClass at in classes)
                {
                    foreach (double up in ups)
                        Add(sum == 0 ? up + slab.WallBelow : up + at.WallBelow + sum, first, last);
                    foreach (double down in downs)
                        Add(sum == 0 ? down - slab.WallAbove - slab.Thickness : down - at.WallAbove - sum - slab.Thickness, first, last);
                }
            }
        }

        double[] all = [.. starts];
        return all.Length <= most ? starts : [.. Enumerable.Range(0, most).Select(i => all[i * (all.Length - 1) / (most - 1)])];

        void Add(double s, double first, double last)
        {
            s = Math.Round(s, 7);
            if (s >= first - Geometry2.RoundingMm && s <= last + Geometry2.RoundingMm)
                starts.Add(s);
        }
    }

    /// <summary>Sums of steps up to a length, 0 included; of very many only so many.</summary>
    internal static SortedSet<double> Sums(double[] steps, double length, int most)
    {
        SortedSet<double> sums = [0];
        Queue<double> todo = new([0]);
        while (todo.TryDequeue(out double sum) && sums.Count < most)
        {
            foreach (double step in steps)
            {
                double next = Math.Round(sum + step, 7);
                if (next <= length && sums.Add(next))
                    todo.Enqueue(next);
            }
        }

        return sums;
    }
}
