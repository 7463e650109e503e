using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>An invented pack of 10 Ah groups whose every figure a test sets, so that one step of a diagnosis can be looked at by itself.</summary>
internal static class SmallPack
{
    internal const double RatedAh = 10, UnitOhm = 0.008;

    /// <summary>Rests of ten minutes around an hour of riding at 9 A and 1 A by turns and half an hour of charging at 4 A; a row each ten seconds.</summary>
    internal static double[] RideA() => [.. Enumerable.Repeat(0.0, 60), .. Enumerable.Range(0, 360).Select(i => i / 7 % 3 == 0 ? 1.0 : 9.0), .. Enumerable.Repeat(0.0, 60), .. Enumerable.Repeat(-4.0, 180), .. Enumerable.Repeat(0.0, 30)];

    internal static DiagnosisColumns Log(double[] amps, int groups, Func<int, int, double>? volts = null, double stepS = 10, Func<int, double>? degC = null, bool averages = false) => new(
        [.. amps.Select((_, i) => i * stepS)], amps,
        [.. Enumerable.Range(0, groups).Select(k => amps.Select((a, i) => volts?.Invoke(k, i) ?? (3.7 - (a * UnitOhm))).ToArray())],
        degC is null ? null : [.. amps.Select((_, i) => degC(i))], averages);

    internal static ChargeSlices Slices(DiagnosisColumns log, double topV = 9) =>
        ChargeSlices.Of(log, ChargeCount.Of(log.TimeS, log.CurrentA, log.RowsAreAverages, RatedAh), RatedAh, 40, topV);

    /// <summary>Resistances as if told by windows: cells and joint of each group in units, known well or not at all.</summary>
    internal static ResistanceFit Resistance(double[] cells, double[] joints, bool known = true, double noiseV = 0.001)
    {
        DiagnosisColumns none = Log([0, 0], cells.Length);
        ResistanceFit fit = ResistanceFit.Of(ResistanceWindows.Of(none, ChargeCount.Of(none.TimeS, none.CurrentA, false, RatedAh), RatedAh), (_, _) => 1, cells.Length);
        for (int k = 0; k < cells.Length; k++)
        {
            (fit.CellOhm[k], fit.JointOhm[k], fit.NoiseV[k]) = (cells[k] * UnitOhm, joints[k] * UnitOhm, noiseV);
            fit.Information[k] = known ? [4e9, 1e9, 2e9] : [1, 0, 1];
        }

        (fit.Slow[0], fit.Slow[1], fit.Slow[2], fit.Slow[3]) = (0.1, 0.2, 0.15, 0.25);
        return fit;
    }

    internal static PackModel Model(ChargeSlices slices, int groups, bool leaks = false, (int A, int B)[]? taps = null, string chemistry = "NMC", ResistanceFit? resistance = null, bool ownCurves = true, double loadError = 0.015) => new(
        slices, CurvePrior.For(Chemistries.Find(chemistry)!, chemistry == "LFP" ? 3.4 : 4.2, chemistry == "LFP" ? 2.8 : 3.0), ResistanceShape.Prior(25),
        resistance ?? Resistance([.. Enumerable.Repeat(0.9, groups)], [.. Enumerable.Repeat(0.1, groups)]), RatedAh, UnitOhm, 0.0015, 0.001, 0.004, leaks, taps ?? [], ownCurves, loadError, 0.4);

    /// <summary>Parameters with something of everything: each bends, leaks and stands off a little of its own.</summary>
    internal static double[] SomeOfAll(PackModel model)
    {
        double[] x = [.. Enumerable.Range(0, model.Size).Select(i => 0.3 * Math.Sin(1.7 * i))];
        for (int j = 0; j < 5; j++)
            x[model.SlowAt + j] = 0.1 + (0.05 * j);
        (x[model.MeanAt], x[model.MeanAt + 1]) = (-0.08, 0.9);
        for (int k = 0; k < model.Groups; k++)
        {
            int at = model.GroupAt(k);
            (x[at], x[at + 1], x[at + 2], x[at + 3]) = (-0.1 + (0.03 * k), 0.9 - (0.02 * k), 0.85 + (0.05 * k), 0.1 - (0.02 * k));
        }

        return x;
    }

    /// <summary>Parameters of an ordinary pack: capacities and charges given, all else as it is expected.</summary>
    internal static double[] Plain(PackModel model, double[] capacityAh, double[] charge)
    {
        double[] x = new double[model.Size];
        PackStart.ExpectedSlow(model).Select(slow => slow.Mean).ToArray().CopyTo(x, model.SlowAt);
        for (int k = 0; k < model.Groups; k++)
        {
            int at = model.GroupAt(k);
            (x[at], x[at + 1]) = (Math.Log(capacityAh[k] / model.RatedAh), charge[k]);
            PackStart.ResistanceBelief(model, k, out x[at + 2], out x[at + 3], out _, out _, out _);
        }

        (x[model.MeanAt], x[model.MeanAt + 1]) = (Robust.Median([.. capacityAh.Select(c => Math.Log(c / model.RatedAh))]), Robust.Median(charge));
        return x;
    }

    /// <summary>Puts the volts of the model itself into its pieces.</summary>
    internal static void Say(PackModel model, double[] x, Func<int, double>? errorV = null)
    {
        PackVolts volts = new(model);
        volts.TakeCurve(x);
        foreach (ChargeSlices.Piece piece in model.Slices.Pieces)
        {
            for (int k = 0; k < model.Groups; k++)
                piece.Volts[k] = volts.At(x, piece, k, out _) + (errorV?.Invoke(k) ?? 0);
        }
    }

    /// <summary>An estimate that nothing was fitted for: the parameters are the given ones.</summary>
    internal static PackEstimator.Estimate Estimate(PackModel model, double[] x, DiagnosisColumns? log = null, double stepS = 1, double emptyV = 3.0)
    {
        DiagnosisColumns of = log ?? Log([0, 0], model.Groups);
        ChargeCount count = ChargeCount.Of(of.TimeS, of.CurrentA, false, RatedAh);
        return new(model, new PackFit(model, x), model.Resistance, [], stepS, emptyV)
        {
            MeanDischargeA = count.MeanDischargeA(model.RatedAh),
            LargestA = count.CurrentA.Max(Math.Abs),
        };
    }
}
