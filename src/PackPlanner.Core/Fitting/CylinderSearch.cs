namespace PackPlanner.Core.Fitting;

/// <summary>Fills the cavity with round cells of one direction: layers along the axis, each a nest, then relaxed freely.</summary>
internal sealed class CylinderSearch(Scene scene, CellBody.Cylinder cell, Attitude attitude, CancellationToken cancel)
{
    private readonly Axis axis = attitude.RoundAlong!.Value;
    private readonly double distance = cell.DiameterMm + scene.Case.Clearances.CellGapMm;
    private readonly Dictionary<string, LayerAnswer> known = [];

    /// <summary>Layers chosen so that the quick nests in them hold most cells; each with where its centres may be.</summary>
    internal List<DiscRegion> Regions { get; } = [];

    /// <summary>Cells of the best regular nests.</summary>
    internal int RegularCount => Regions.Sum(r => known[r.Key].Nest.Count);

    /// <summary>Proven: no layout of one direction holds more.</summary>
    internal int Bound()
    {
        Clearances c = scene.Case.Clearances;
        double r = (cell.DiameterMm / 2) + c.WallMm;
        int sum = 0;
        foreach (Prism3 given in scene.Parts)
        {
            Prism3 part = given.Along(axis);
            (double low, double high) = part.Extent(axis);
            (Axis first, Axis second) = Axes3.Others(axis);
            (double u0, double u1) = part.Extent(first);
            (double v0, double v1) = part.Extent(second);
            (double[] u, double[] v) = part.Extrusion == axis ? (part.U, part.V) : ([u0, u1, u1, u0], [v0, v0, v1, v1]);
            sum += LayerBound.Of(scene, axis, cell, low, high, blocked => DiscBound.OneLayer(u, v, r, distance, blocked));
        }

        return sum;
    }

    /// <summary>Whether two layers that follow one another stand further apart than a link reaches.</summary>
    internal bool LayersApart { get; private set; }

    /// <summary>Chooses the layers and fills them with regular nests.</summary>
    /// <param name="thorough">Many phases, and rows drawn out.</param>
    /// <param name="linkable">Only layers close enough for a link from each to the next, though they may hold fewer cells.</param>
    internal void Nests(bool thorough, bool linkable)
    {
        double[] starts = Layers.Starts(scene, axis, cell, most: 72);
        if (linkable)
            starts = [.. starts.Concat(Layers.EvenStacks(scene, axis, cell, phases: 8)).Distinct()];
        Array.Sort(starts);
        DiscRegion[] regions = [.. starts.Select(s => Layers.At(scene, axis, cell, s))];
        double pitch = cell.LengthMm + scene.Case.Clearances.LayerGapMm;
        int[] quick = [.. regions.Select(r => r.IsEmpty ? 0 : Answer(r, phases: 2, stretched: false).Nest.Count)];
        double reach = scene.Case.LinkReachMm;
        List<int> chosen = linkable ? ChooseLinkable(starts, quick, pitch, reach) : ChooseLayers(starts, quick, pitch);
        LayersApart = chosen.Zip(chosen.Skip(1)).Any(two => starts[two.Second] - starts[two.First] > pitch + reach + Geometry2.RoundingMm);
        for (int k = 0; k < chosen.Count; k++)
        {
            double from = starts[chosen[k]], to = k + 1 < chosen.Count ? starts[chosen[k + 1]] - pitch : double.PositiveInfinity;
            Regions.Add(Widened(starts, from, to, regions[chosen[k]]));
        }

        known.Clear();
        foreach (DiscRegion region in Regions)
            Answer(region, thorough ? 10 : 4, thorough);
    }

    internal Layout Regular()
    {
        Nest first = Regions.Count > 0 ? known[Regions[0].Key].Nest.Nest : default;
        return new Layout(
            [.. Regions.SelectMany(r => Bodies(r, known[r.Key].Places))],
            first.Staggered ? "hex" : "square",
            first.AngleRad,
            Regular: true);
    }

    /// <summary>One nest through all layers, so that cells stand in line over one another; fewer cells, but links between layers.</summary>
    internal IEnumerable<Layout> InLine()
    {
        RegionRaster[] rasters = [.. Regions.Select(r => new RegionRaster(r, distance))];
        foreach (string key in Regions.Select(r => r.Key).Distinct())
        {
            if (cancel.IsCancellationRequested)
                yield break;
            Nest nest = known[key].Nest.Nest;
            List<Body> bodies = [];
            for (int k = 0; k < rasters.Length; k++)
            {
                List<(double X, double Y)> places = [];
                nest.Fill(Regions[k], rasters[k], places);
                bodies.AddRange(Bodies(Regions[k], places));
            }

            yield return new Layout(bodies, nest.Staggered ? "hex" : "square", nest.AngleRad, Regular: true);
        }
    }

    /// <summary>Relaxes every layer freely.</summary>
    internal Layout Free(long work, Action<int>? better)
    {
        int different = Math.Max(1, Regions.Select(r => r.Key).Distinct().Count());
        Dictionary<string, (double X, double Y)[]> free = [];
        foreach (DiscRegion region in Regions)
        {
            if (free.ContainsKey(region.Key))
                continue;
            LayerAnswer answer = known[region.Key];
            int others = RegularCount - answer.Places.Length;
            free[region.Key] = FreePacking.Improve(
                region, distance, [answer.Places, .. answer.Others], work / different, int.MaxValue, n => better?.Invoke(others + n), cancel);
        }

        return new Layout([.. Regions.SelectMany(r => Bodies(r, free[r.Key]))], "free", null, Regular: false);
    }

    /// <summary>Largest sum of quick counts with starts a pitch apart (dynamic programme over the sorted starts).</summary>
    private static List<int> ChooseLayers(double[] starts, int[] quick, double pitch)
    {
        int n = starts.Length;
        int[] best = new int[n + 1], before = new int[n + 1];
        for (int i = 1; i <= n; i++)
        {
            int p = i - 1;
            while (p > 0 && starts[p - 1] > starts[i - 1] - pitch + Geometry2.RoundingMm)
                p--;
            before[i] = p;
            best[i] = Math.Max(best[i - 1], best[p] + quick[i - 1]);
        }

        List<int> chosen = [];
        for (int i = n; i > 0;)
        {
            if (best[i] == best[i - 1])
            {
                i--;
            }
            else
            {
                chosen.Add(i - 1);
                i = before[i];
            }
        }

        chosen.Reverse();
        return chosen;
    }

    /// <summary>Largest sum of quick counts in one chain of layers of which each is within reach of a link from the last.</summary>
    private static List<int> ChooseLinkable(double[] starts, int[] quick, double pitch, double reach)
    {
        int n = starts.Length, last = -1;
        int[] best = new int[n], before = new int[n];
        for (int i = 0; i < n; i++)
        {
            (best[i], before[i]) = (quick[i], -1);
            for (int j = 0; j < i && quick[i] > 0; j++)
            {
                double spare = starts[i] - starts[j] - pitch;
                if (quick[j] > 0 && spare >= -Geometry2.RoundingMm && spare <= reach && best[j] + quick[i] > best[i])
                    (best[i], before[i]) = (best[j] + quick[i], j);
            }

            if (best[i] > (last < 0 ? 0 : best[last]))
                last = i;
        }

        List<int> chosen = [];
        for (int i = last; i >= 0; i = before[i])
            chosen.Add(i);
        chosen.Reverse();
        return chosen;
    }

    /// <summary>
    /// A layer may stand a little higher where floor or ceiling slopes, up to the next layer: the places allowed at each of those
    /// heights, together, if they are more.
    /// </summary>
    private DiscRegion Widened(double[] starts, double from, double to, DiscRegion plain)
    {
        HashSet<string> seen = [];
        List<RegionPiece> pieces = [];
        foreach (double start in starts.Where(s => s >= from - Geometry2.RoundingMm && s <= to + Geometry2.RoundingMm))
        {
            foreach (RegionPiece piece in Layers.PiecesAt(scene, axis, cell, start))
            {
                if (seen.Add(new DiscRegion([piece]).Key))
                    pieces.Add(piece);
            }
        }

        return pieces.Count > plain.Pieces.Count ? new DiscRegion(pieces) : plain;
    }

    private LayerAnswer Answer(DiscRegion region, int phases, bool stretched)
    {
        if (known.TryGetValue(region.Key, out LayerAnswer? answer))
            return answer;
        RegionRaster raster = new(region, distance);
        List<(Nest Nest, int Count)> nests = NestSweep.Best(region, raster, distance, phases, stretched, keep: 4, cancel);
        List<(double X, double Y)[]> places = [];
        foreach ((Nest nest, _) in nests)
        {
            List<(double X, double Y)> filled = [];
            nest.Fill(region, raster, filled);
            places.Add([.. filled]);
        }

        answer = nests.Count == 0 ? new LayerAnswer((default, 0), [], []) : new LayerAnswer(nests[0], places[0], [.. places.Skip(1)]);
        known[region.Key] = answer;
        return answer;
    }

    private IEnumerable<Body> Bodies(DiscRegion region, IEnumerable<(double X, double Y)> places)
    {
        foreach ((double x, double y) in places)
        {
            // The lowest start that allows the place, so that neighbours stand level.
            RegionPiece piece = region.Pieces.FirstOrDefault(p => p.Margin(x, y) >= -Geometry2.RoundingMm) ?? region.PieceAt(x, y);
            yield return new Body(Axes3.Place(axis, piece.BodyStart + (cell.LengthMm / 2), x, y), attitude);
        }
    }

    private sealed record LayerAnswer(
        (Nest Nest, int Count) Nest, (double X, double Y)[] Places, IReadOnlyList<(double X, double Y)[]> Others);
}
