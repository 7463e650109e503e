using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Reads every group's figures and spreads out of a fitted pack.</summary>
/// <remarks>
/// The inverse curvature of a fit supposes independent errors. Curves err over whole stretches of charge, so it is several times
/// too small: it is multiplied, and a share that no log escapes is added. Both were set on simulated packs until 90 %
/// ranges held about nine times in ten (see docs/methods/diagnosis.md).
/// </remarks>
internal static class GroupEstimates
{
    private const double Proud = 3.0;
    private const double LeastShare = 0.007, LeastOffset = 0.0025;
    private const double MostCapacity = 0.14, MostOffset = 0.10, MostLeaked = 0.06;

    private const double OneKnee = 0.09;

    // Of logs that tell capacities about one in a hundred was off by more than an eighth (docs/methods/diagnosis.md): doubts that add
    // up to more than this are not borne out.
    private const double MostTold = 0.068;

    /// <summary>Figures of all groups.</summary>
    internal static GroupEstimate[] Of(PackEstimator.Estimate estimate, Identifiability told, bool flat)
    {
        // Through a part of the window only, the curve's own slope is not told from the capacity; where one group ends the log
        // early the others have that group's curve to go by, and less doubt than in a log that ends nowhere. On a flat one the others may have
        // met one knee only, and have the curve between the knees from the one group; in a log that met one knee all have that doubt.
        double Part(int k) => flat ? (told.Told ? 0 : OneKnee) + (0.10 * Math.Max(0, Math.Min(0.9, told.Window) - told.Windows[k])) : (0.18 * Math.Max(0, 0.85 - told.Window)) + (0.10 * Math.Max(0, Math.Min(0.85, told.Window) - told.Windows[k]));
        PackModel model = estimate.Model;
        PackFit fit = estimate.Fit;
        int n = model.Groups;
        double[] logs = Column(PackParameters.LogCapacity), charges = Column(PackParameters.Charge);
        double[] cells = Column(PackParameters.Cells), joints = Column(PackParameters.Joint);
        double[] leaks = model.Leaks ? Column(PackParameters.Leak) : new double[n];
        double[] ohms = [.. Enumerable.Range(0, n).Select(k => OneSecond(estimate, k, cells[k], joints[k]))];
        double middleLog = Robust.Median(logs), middleCharge = Robust.Median(charges), middleOhm = Robust.Median(ohms), middleCells = Robust.Median(cells);
        double middleLeak = Robust.Median(leaks), leakUnitA = PackParameters.LeakUnitA(model.RatedAh);
        // Ampere-hours that leaked away are not told sharply from ampere-hours that the group never held: a third of them is doubt.
        double hours = model.Slices.Pieces.Length == 0 ? 0 : model.Slices.Pieces[^1].TimeS / 3600;
        double Leaked(int k) => Math.Min(MostLeaked, 0.33 * Math.Abs(leaks[k] - middleLeak) * PackParameters.LeakUnitA(model.RatedAh) * hours / (model.RatedAh * Math.Exp(logs[k])));
        double commonLog = CommonSd(estimate, logs, PackParameters.LogCapacity);
        bool known = PackStart.Known(model);
        double slowRows = model.Slices.Pieces.Length == 0 ? 1 : estimate.StepS;
        return [.. Enumerable.Range(0, n).Select(k =>
        {
            double own = Proud * OwnSd(estimate, k, PackParameters.LogCapacity, relative: true);
            double absolute = Proud * OwnSd(estimate, k, PackParameters.LogCapacity, relative: false);
            double offset = Proud * OwnSd(estimate, k, PackParameters.Charge, relative: true);
            return new GroupEstimate(
                model.RatedAh * Math.Exp(logs[k]), Math.Min(told.Told ? MostTold + Leaked(k) + (0.12 * Math.Abs(logs[k] - middleLog)) : MostCapacity, Root(Math.Max(absolute, commonLog), Root(Root(model.Curve.CapacityDoubt + Part(k), estimate.CountSd), estimate.ValleySd) + Leaked(k) + (0.12 * Math.Abs(logs[k] - middleLog)))),
                Math.Exp(logs[k] - middleLog), Math.Min(MostCapacity, Root(own, LeastShare + Leaked(k) + (0.12 * Math.Abs(logs[k] - middleLog)))),
                charges[k], charges[k] - middleCharge, Math.Min(MostOffset, Root(offset, LeastOffset)),
                ohms[k], known ? slowRows > 3 ? 0.13 : 0.06 : 0.3, ohms[k] / middleOhm,
                cells[k] / middleCells, Math.Min(0.5, Root(Proud * OwnSd(estimate, k, PackParameters.Cells, relative: true), 0.03)),
                joints[k] / (cells[k] + joints[k] > 0 ? Robust.Median([.. cells.Zip(joints, (c, j) => c + j)]) : 1),
                (leaks[k] - middleLeak) * leakUnitA,
                model.Leaks ? leakUnitA * Proud * OwnSd(estimate, k, PackParameters.Leak, relative: true) : double.NaN, TapV(model, fit, k));
        })];

        double[] Column(int parameter) => [.. Enumerable.Range(0, n).Select(k => fit.X[model.GroupAt(k) + parameter])];
    }

    private static double TapV(PackModel model, PackFit fit, int group)
    {
        double tapV = 0;
        for (int t = 0; t < model.Taps.Count; t++)
        {
            double v = 0.01 * fit.X[model.TapAt + t];
            tapV += model.Taps[t].A == group ? v : model.Taps[t].B == group ? -v : 0;
        }
        return tapV;
    }

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));

    /// <summary>Where current never stepped, what the voltages' level says of resistance has to serve.</summary>
    private static double OneSecond(PackEstimator.Estimate estimate, int group, double cells, double joint)
    {
        if (PackStart.Known(estimate.Model))
            return estimate.Resistance.OneSecondOhm(group);
        double share = 1;
        for (int j = 0; j < SlowCurrents.TauS.Length; j++)
            share += estimate.Fit.X[estimate.Model.SlowAt + j] * (1 - Math.Exp(-1 / SlowCurrents.TauS[j]));
        return estimate.Model.UnitOhm * ((cells * share) + joint);
    }

    private static double OwnSd(PackEstimator.Estimate estimate, int group, int parameter, bool relative)
    {
        if (estimate.Fit.Covariances is not { } covariances)
            return 1;
        Matrix<double> own = covariances.Own[group];
        double variance = own[parameter, parameter];
        if (relative)
        {
            // What is common to all groups moves them together; only the group's own part counts against the median.
            Vector<double> carried = covariances.Carried[group].Row(parameter) - MeanCarried(covariances, parameter);
            Vector<double> all = covariances.Carried[group].Row(parameter);
            variance += (carried * covariances.Common * carried) - (all * covariances.Common * all);
        }
        return Math.Sqrt(Math.Max(0, variance));
    }

    private static Vector<double> MeanCarried((Matrix<double> Common, Matrix<double>[] Own, Matrix<double>[] Carried) covariances, int parameter)
    {
        Vector<double> mean = Vector<double>.Build.Dense(covariances.Common.RowCount);
        foreach (Matrix<double> carried in covariances.Carried)
            mean += carried.Row(parameter);
        return mean / covariances.Carried.Length;
    }

    private static double CommonSd(PackEstimator.Estimate estimate, double[] values, int parameter) =>
        Proud * Robust.Median([.. Enumerable.Range(0, values.Length).Select(k => OwnSd(estimate, k, parameter, relative: false))]);
}
