using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>From columns to a fitted pack: counts, cuts, looks over the valleys, fits, and tries tap errors.</summary>
internal static class PackEstimator
{
    /// <summary>Resistance times capacity of an ordinary group, ohm ampere-hours (common practice, no source).</summary>
    internal const double UsualOhmAh = 0.085;

    // A valley gets this many steps before it is judged, and is left when it then costs this much more than the best.
    private const int FirstSteps = 5;
    private const double Hopeless = 60;

    /// <summary>The fitted pack and what led to it.</summary>
    internal sealed record Estimate(
        PackModel Model, PackFit Fit, ResistanceFit Resistance, IReadOnlyList<(int A, int B, double Gain)> Taps, double StepS, double EmptyV)
    {
        /// <summary>Median of the groups' capacities.</summary>
        internal double MedianCapacityAh { get; } = Model.RatedAh * Math.Exp(Robust.Median(
            [.. Enumerable.Range(0, Model.Groups).Select(k => Fit.X[Model.GroupAt(k) + PackParameters.LogCapacity])]));

        /// <summary>Mean current while the pack was discharged; a third of the rated capacity an hour when it never was.</summary>
        internal required double MeanDischargeA { get; init; }

        /// <summary>The largest current either way, amperes.</summary>
        internal required double LargestA { get; init; }

        /// <summary>How far the counted charge may be off as a share of what moved, one standard deviation.</summary>
        internal double CountSd { get; init; }

        /// <summary>How far other capacities of the pack lie that explain the log nearly as well, one standard deviation of the logarithm.</summary>
        internal double ValleySd { get; init; }

        /// <summary>Median of the groups' states of charge at the first row, 0..1.</summary>
        internal double MedianCharge { get; } = Robust.Median(
            [.. Enumerable.Range(0, Model.Groups).Select(k => Fit.X[Model.GroupAt(k) + PackParameters.Charge])]);
    }

    /// <summary>Fits a log.</summary>
    /// <param name="log">The log, or the stretch of it that is to be fitted.</param>
    /// <param name="count">The charge of that log or stretch.</param>
    /// <param name="given">What the owner knows.</param>
    /// <param name="cancel">Ends the work early.</param>
    internal static Estimate Of(DiagnosisColumns log, ChargeCount count, PackGiven given, CancellationToken cancel)
    {
        (double ratedAh, double fullV, double emptyV) = (given.RatedGroupAh, given.FullV, given.EmptyV);
        bool flat = given.Chemistry.HasFlatCurve;
        (double lastS, double stepS, int groups) = (log.TimeS[^1], log.UsualStepS, log.Groups);
        (double samplingAh, double meanDischargeA, double largestA) = (count.SamplingAh(log.RowsAreAverages), count.MeanDischargeA(ratedAh), count.CurrentA.Max(Math.Abs));
        ResistanceWindows windows = ResistanceWindows.Of(log, count, ratedAh);
        cancel.ThrowIfCancellationRequested();
        double topV = flat ? fullV - 0.25 : fullV - 0.13;
        ChargeSlices slices = Cut(log, count, ratedAh, topV);
        double meanDegC = slices.Pieces.Select(p => p.TemperatureDegC).DefaultIfEmpty(double.NaN).Average();
        ResistanceFit resistance = ResistanceFit.Of(windows, (_, _) => 1, log.Groups);
        double floorV = flat ? 0.0012 : 0.0015;
        PackModel model = new(slices, CurvePrior.For(given.Chemistry, fullV, emptyV), ResistanceShape.Prior(meanDegC), resistance, ratedAh,
            Unit(resistance, ratedAh), floorV, log.GrainV, flat ? 0.012 : 0.004, lastS > 12 * 3600, [], OwnCurves: false, LoadError: 0.06,
            OffsetSd: Math.Max(0.3, count.ZeroSpreadA / (0.001 * ratedAh)));

        (model, PackFit fit) = Refined(model, windows, meanDegC, groups, cancel);
        cancel.ThrowIfCancellationRequested();
        if (!flat && AnchoredStart.Better(model, fit) is { } anchored)
            (model, fit) = Refine(model, anchored, windows, meanDegC, groups);
        (fit, double valleySd) = flat ? (fit, 0) : StretchedStarts.Best(model, fit);
        cancel.ThrowIfCancellationRequested();
        (model, fit, IReadOnlyList<(int, int, double)> taps) = TapErrors.Try(model, fit);
        // A wrong tap bends the shared curve; with it taken off, another capacity of the pack may be the better one.
        if (!flat && taps.Count > 0)
            (fit, valleySd) = StretchedStarts.Best(model, fit);
        double movedAh = slices.Pieces.Max(p => p.DrawnAh) - slices.Pieces.Min(p => p.DrawnAh);
        return new Estimate(model, fit, model.Resistance, taps, stepS, emptyV)
        {
            MeanDischargeA = meanDischargeA,
            LargestA = largestA,
            CountSd = samplingAh / Math.Max(0.02 * ratedAh, movedAh),
            ValleySd = valleySd,
        };
    }

    /// <summary>The best of the first fits, each with what resistance does over charge and with curves of its own.</summary>
    private static (PackModel Model, PackFit Fit) Refined(PackModel first, ResistanceWindows windows, double meanDegC, int groups, CancellationToken cancel)
    {
        (PackModel Model, PackFit Fit)? best = null;
        foreach (PackFit start in FirstFits(first, new PackScan(first)))
        {
            cancel.ThrowIfCancellationRequested();
            (PackModel tried, PackFit trial) = Refine(first, start, windows, meanDegC, groups);
            (tried, trial) = Refine(tried with { OwnCurves = true }, trial, windows, meanDegC, groups);
            if (best is null || trial.Judgement < best.Value.Fit.Judgement)
                best = (tried, trial);
        }

        return best!.Value;
    }

    private static ChargeSlices Cut(DiagnosisColumns log, ChargeCount count, double ratedAh, double topV)
    {
        double shortestS = Math.Max(10, log.UsualStepS);
        ChargeSlices slices = ChargeSlices.Of(log, count, ratedAh, shortestS, topV);
        while (slices.Pieces.Length > 650 && shortestS < 600)
        {
            shortestS *= 1.5 * Math.Max(1, slices.Pieces.Length / 3000.0);
            slices = ChargeSlices.Of(log, count, ratedAh, shortestS, topV);
        }
        return slices;
    }

    /// <summary>The first fits worth going on with: the best, and another valley that comes near it.</summary>
    private static List<PackFit> FirstFits(PackModel model, PackScan scan)
    {
        List<PackFit> fits = [];
        foreach (PackScan.Start start in scan.Median(4))
        {
            PackFit fit = new(model, Begin(model, start));
            LookAgain(model, fit, scan, keepBetter: false);
            fit.Run(20, adaptFloors: false, enough: 0.01);
            fits.Add(fit);
        }
        fits.Sort((a, b) => a.Judgement.CompareTo(b.Judgement));
        List<PackFit> kept = [fits[0]];
        PackFit? second = fits.Skip(1).FirstOrDefault(f => f.Judgement < fits[0].Judgement + 60
            && (Math.Abs(f.X[model.MeanAt] - fits[0].X[model.MeanAt]) > 0.04 || Math.Abs(f.X[model.MeanAt + 1] - fits[0].X[model.MeanAt + 1]) > 0.03));
        if (second is not null)
            kept.Add(second);
        return kept;
    }

    private static double[] Begin(PackModel model, PackScan.Start start)
    {
        double[] x = new double[model.Size];
        start.Weights.CopyTo(x, 0);
        PackStart.ExpectedSlow(model).Select(slow => slow.Mean).ToArray().CopyTo(x, model.SlowAt);
        start.Hysteresis.CopyTo(x, model.HysteresisAt);
        (x[model.MeanAt], x[model.MeanAt + 1]) = (start.LogCapacity, start.Charge);
        for (int k = 0; k < model.Groups; k++)
            Own(model, k, start.LogCapacity, start.Charge).CopyTo(x, model.GroupAt(k));
        return x;
    }

    private static double[] Own(PackModel model, int group, double logCapacity, double charge)
    {
        double[] own = new double[model.PerGroup];
        PackStart.ResistanceBelief(model, group, out double cells, out double joint, out _, out _, out _);
        (own[PackParameters.LogCapacity], own[PackParameters.Charge]) = (logCapacity, charge);
        (own[PackParameters.Cells], own[PackParameters.Joint]) = (cells, joint);
        return own;
    }

    /// <summary>Looks over the valleys of every group under the curve as it now is, and moves the group where one is better.</summary>
    /// <returns>True when a group moved.</returns>
    private static bool LookAgain(PackModel model, PackFit fit, PackScan scan, bool keepBetter)
    {
        double[] x = fit.X;
        PackScan.Start now = new(x[model.MeanAt], x[model.MeanAt + 1], x[..model.Curve.Shapes],
            x[model.HysteresisAt..model.MeanAt], 0);
        // A group's own fit rests on what is common only, so the groups are looked at side by side.
        (double[] Own, bool Moved)[] best = new (double[], bool)[model.Groups];
        Parallel.For(0, model.Groups, k =>
        {
            int at = model.GroupAt(k);
            (double[] Own, double Cost) stays = fit.Polish(k, x[at..(at + model.PerGroup)], 0, keepBetter ? 6 : 12);
            (double[] Own, double Cost)[] trials = [.. scan.Group(k, now, 3).Select(v => fit.Polish(k, Own(model, k, v.LogCapacity, v.Charge), 0, FirstSteps))];
            double least = Math.Min(stays.Cost, trials.Select(t => t.Cost).DefaultIfEmpty(stays.Cost).Min());
            (double[] Own, double Cost) goes = stays;
            foreach ((double[] own, double cost) in trials.Where(t => t.Cost < least + Hopeless))
            {
                (double[] Own, double Cost) trial = fit.Polish(k, own, 0, 12 - FirstSteps);
                if (trial.Cost < goes.Cost)
                    goes = trial;
            }
            best[k] = (goes.Own, goes.Cost < stays.Cost - 3);
        });
        for (int k = 0; k < model.Groups; k++)
            fit.Place(k, best[k].Own);
        return best.Any(b => b.Moved);
    }

    /// <summary>With charges known, reads how resistance depends on charge, and fits again.</summary>
    private static (PackModel Model, PackFit Fit) Refine(PackModel model, PackFit fit, ResistanceWindows windows, double meanDegC, int groups)
    {
        double[][] charge = new double[windows.All.Count][];
        for (int w = 0; w < charge.Length; w++)
        {
            int piece = Nearest(model.Slices, windows.All[w].TimeS);
            charge[w] = [.. Enumerable.Range(0, groups).Select(k => fit.ChargeAt(piece, k))];
        }
        ResistanceShape shape = model.Shape;
        ResistanceFit resistance = model.Resistance;
        for (int round = 0; round < 2; round++)
        {
            ResistanceShape now = shape;
            resistance = ResistanceFit.Of(windows, (w, k) => now.At(charge[w][k], windows.All[w].TemperatureDegC, out _), groups);
            shape = ResistanceShape.Fit(
                [.. resistance.Factors().Select(f => new ResistanceShape.Reading(
                    charge[f.Window][f.Group], windows.All[f.Window].TemperatureDegC, f.Factor, f.Variance))], meanDegC);
        }
        PackModel next = model with { LoadError = 0.015, Shape = shape, Resistance = resistance, UnitOhm = Unit(resistance, model.RatedAh) };
        double[] x = (double[])fit.X.Clone();
        for (int k = 0; k < groups; k++)
        {
            x[next.GroupAt(k) + PackParameters.Cells] *= model.UnitOhm / next.UnitOhm;
            x[next.GroupAt(k) + PackParameters.Joint] *= model.UnitOhm / next.UnitOhm;
        }
        PackFit again = new(next, x);
        PackScan scan = new(next);
        for (int round = 0; round < 3; round++)
        {
            bool moved = LookAgain(next, again, scan, keepBetter: true);
            again.Run(round == 0 ? 25 : 15, adaptFloors: round == 0);
            if (!moved)
                break;
        }
        return (next, again);
    }

    private static int Nearest(ChargeSlices slices, double timeS)
    {
        int low = 0, high = slices.Pieces.Length - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = slices.Pieces[middle].TimeS < timeS ? (middle + 1, high) : (low, middle);
        }
        return low > 0 && timeS - slices.Pieces[low - 1].TimeS < slices.Pieces[low].TimeS - timeS ? low - 1 : low;
    }

    private static double Unit(ResistanceFit resistance, double ratedAh)
    {
        double middle = Robust.UpperMedian(resistance.CellOhm.Zip(resistance.JointOhm, (c, j) => c + j));
        double usual = UsualOhmAh / ratedAh;
        return middle > 0.1 * usual && middle < 10 * usual ? middle : usual;
    }
}
