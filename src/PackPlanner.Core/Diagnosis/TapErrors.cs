using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Tries whether two neighbours read wrong by opposite amounts, and keeps it only where the fit gains a lot.</summary>
internal static class TapErrors
{
    // A tap is believed when it explains as much as this many squared spreads; one free number alone would gain about one. An end
    // tap has no mirror, so that a shift of charge can pass for it: it must explain more.
    private const double NeededAtEnd = 22, Needed = 12, NeededMirrored = 3, EndSpreads = 2.5;

    /// <summary>Errors that are tried, millivolts; the other neighbour has the opposite one.</summary>
    private static readonly int[] Errors = [-60, -35, -18, 18, 35, 60];

    /// <summary>Tries every tap; returns the fit with those freed that were believed.</summary>
    internal static (PackModel Model, PackFit Fit, IReadOnlyList<(int A, int B, double Gain)> Taps) Try(PackModel model, PackFit fit)
    {
        List<(int A, int B, double Gain)> found = [];
        HashSet<(int, int)> refused = [];
        double[] rawV = OffTheMiddle(model);
        for (int round = 0; round < 5 && found.Count < 3; round++)
        {
            (int A, int B)[] candidates = [.. Candidates(model, fit, found).Where(c => !refused.Contains(c))];
            Dictionary<int, (double[] Own, double Cost)[]> seen = Tried(model, fit, candidates);
            (int A, int B, int Error, double Gain) best = (-1, -1, 0, 0);
            foreach ((int a, int b) in candidates)
            {
                for (int e = 0; e < Errors.Length; e++)
                {
                    double gain = seen[a][^1].Cost - seen[a][e].Cost + (b < 0 ? 0 : seen[b][^1].Cost - seen[b][Opposite(e)].Cost);
                    if (gain > best.Gain && gain > Enough(model, fit, a, b))
                        best = (a, b, e, gain);
                }
            }
            if (best.A < 0)
                break;
            PackModel freed = model with { Taps = [.. found.Select(f => (f.A, f.B)), (best.A, best.B)] };
            PackFit trial = new(freed, WithRoom(model, fit.X, found.Count, Errors[best.Error] / 10.0));
            trial.CopyFloors(fit);
            trial.Place(best.A, seen[best.A][best.Error].Own);
            if (best.B >= 0)
                trial.Place(best.B, seen[best.B][Opposite(best.Error)].Own);
            trial.Run(25, adaptFloors: false);
            double tapV = 0.01 * trial.X[freed.TapAt + found.Count];
            if (fit.Cost - trial.Cost < Enough(model, fit, best.A, best.B) || Math.Abs(tapV) < 0.008)
                break;
            if (!SeenInReadings(rawV, best.A, best.B, tapV))
            {
                refused.Add((best.A, best.B));
                continue;
            }
            trial.Run(20, adaptFloors: true);
            fit = trial;
            found.Add((best.A, best.B, best.Gain));
        }
        return (model with { Taps = [.. found.Select(f => (f.A, f.B))] }, fit, found);
    }

    private static int Opposite(int error) => Errors.Length - 1 - error;

    /// <summary>Every group that a candidate touches, fitted by itself with each supposed error taken off, and last with none.</summary>
    private static Dictionary<int, (double[] Own, double Cost)[]> Tried(PackModel model, PackFit fit, (int A, int B)[] candidates)
    {
        int[] groups = [.. candidates.SelectMany(c => (int[])[c.A, c.B]).Where(k => k >= 0).Distinct()];
        (double[] Own, double Cost)[][] tried = new (double[], double)[groups.Length][];
        Parallel.For(0, groups.Length, g => tried[g] = [.. Errors.Append(0).Select(millivolt => Without(model, fit, groups[g], millivolt))]);
        return groups.Zip(tried).ToDictionary();
    }

    private static (double[] Own, double Cost) Without(PackModel model, PackFit fit, int group, int millivolt)
    {
        int from = fit.X.Length - ((model.Groups - group) * model.PerGroup);
        double[] asIs = fit.X[from..(from + model.PerGroup)];
        (double[] Own, double Cost) known = fit.Polish(group, asIs, 0.001 * millivolt, 10);
        // The group may have gone far off to explain its wrong readings: start also from where the others are.
        double[] ordinary = new double[model.PerGroup];
        (ordinary[PackParameters.LogCapacity], ordinary[PackParameters.Charge]) = (fit.X[model.MeanAt], fit.X[model.MeanAt + 1]);
        (ordinary[PackParameters.Cells], ordinary[PackParameters.Joint]) = (asIs[PackParameters.Cells], asIs[PackParameters.Joint]);
        (double[] Own, double Cost) other = fit.Polish(group, ordinary, 0.001 * millivolt, 10);
        return other.Cost < known.Cost ? other : known;
    }

    /// <summary>How far each group reads off the middle group, volts: the median over the pieces.</summary>
    private static double[] OffTheMiddle(PackModel model)
    {
        ChargeSlices.Piece[] whole = [.. model.Slices.Pieces.Where(p => p.Readings.All(r => r > 0))];
        double[] middle = [.. whole.Select(p => Robust.Median(p.Volts))];
        return [.. Enumerable.Range(0, model.Groups).Select(k => whole.Length == 0 ? 0 : Robust.Median([.. whole.Select((p, i) => p.Volts[k] - middle[i])]))];
    }

    /// <summary>With the supposed error taken off, one of both neighbours at least must read like an ordinary group.</summary>
    /// <remarks>A weak group beside a sound one can make the fit believe in a tap that no reading of the sound one shows.</remarks>
    private static bool SeenInReadings(double[] rawV, int a, int b, double tapV)
    {
        // An end tap has no mirror: in a pack whose groups scatter, a charge that differs would pass for it.
        double spreadV = 1.4826 * Robust.Median([.. rawV.Select(Math.Abs)]);
        if (b < 0 && Math.Abs(tapV) < EndSpreads * spreadV)
            return false;
        double limitV = Math.Max(0.010, 0.4 * Math.Abs(tapV));
        return Math.Abs(rawV[a] - tapV) < limitV || (b >= 0 && Math.Abs(rawV[b] + tapV) < limitV);
    }

    /// <summary>The parameters with a place for one more tap error, at a start.</summary>
    private static double[] WithRoom(PackModel model, double[] x, int taps, double start) =>
        [.. x[..(model.TapAt + taps)], start, .. x[(model.TapAt + taps)..]];

    /// <summary>What a tap must explain: much, unless its two neighbours already stand off by opposite amounts.</summary>
    /// <remarks>In a short window an offset of charge and one of volts look alike; two neighbours off by just opposite amounts do not.</remarks>
    private static double Enough(PackModel model, PackFit fit, int a, int b)
    {
        if (b < 0)
            return NeededAtEnd;
        double middle = Robust.Median([.. Enumerable.Range(0, model.Groups).Select(Charge)]);
        double high = Charge(a) - middle, low = Charge(b) - middle;
        bool mirrored = high * low < 0 && Math.Min(Math.Abs(high), Math.Abs(low)) > 0.01
            && Math.Abs(high + low) < 0.5 * Math.Max(Math.Abs(high), Math.Abs(low));
        return mirrored ? NeededMirrored : Needed;

        double Charge(int k) => fit.X[fit.X.Length - ((model.Groups - k) * model.PerGroup) + PackParameters.Charge];
    }

    /// <summary>Taps worth a trial: the groups on both sides of it stand out from the rest in charge, capacity or misfit.</summary>
    private static IEnumerable<(int A, int B)> Candidates(PackModel model, PackFit fit, List<(int A, int B, double Gain)> found)
    {
        bool[] odd = [.. Enumerable.Range(0, model.Groups).Select(k => Odd(model, fit, k))];
        for (int a = 0; a + 1 < model.Groups; a++)
        {
            if ((odd[a] || odd[a + 1]) && !found.Any(f => f.A == a && f.B == a + 1))
                yield return (a, a + 1);
        }
        foreach (int end in (int[])[0, model.Groups - 1])
        {
            if (odd[end] && !found.Any(f => f.A == end && f.B == -1))
                yield return (end, -1);
        }
    }

    private static bool Odd(PackModel model, PackFit fit, int k)
    {
        int At(int i) => fit.X.Length - ((model.Groups - i) * model.PerGroup);
        int at = At(k);
        double Usual(int parameter) => Robust.UpperMedian(Enumerable.Range(0, model.Groups).Select(i => fit.X[At(i) + parameter]));
        // In a small string every tap is tried; in a long one, those of groups that stand out or bend the curve their own way.
        double own = 0;
        for (int j = PackParameters.Warp; j < PackParameters.Bend + PackParameters.Bends; j++)
            own = Math.Max(own, Math.Abs(fit.X[at + j]) / (j < PackParameters.Bend ? 0.4 : 1));
        return model.Groups <= 24 || own > 3
            || Math.Abs(fit.X[at + PackParameters.Charge] - Usual(PackParameters.Charge)) > 0.012
            || Math.Abs(fit.X[at + PackParameters.LogCapacity] - Usual(PackParameters.LogCapacity)) > 0.03
            || fit.FloorV[k] > 1.8 * Robust.UpperMedian(fit.FloorV);
    }
}
