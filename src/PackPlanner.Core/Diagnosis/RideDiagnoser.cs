using System.Runtime.CompilerServices;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using static System.FormattableString;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Diagnoses a pack from its log.</summary>
public static class RideDiagnoser
{
    // Amperes for each rated ampere-hour: below it no volts answer to a current, and a resistance would be nothing but what is usual (our choice).
    private const double LeastLoadPerAh = 0.01;

    /// <summary>Fits the log and says what it shows.</summary>
    /// <param name="log">The log; its current column must be there and signed.</param>
    /// <param name="given">What the owner knows.</param>
    /// <param name="stop">A user's cancel.</param>
    /// <exception cref="ArgumentException">The log has no current, fewer than three rows, or no group.</exception>
    public static RideDiagnosis Diagnose(RideLog log, PackGiven given, CancellationToken stop = default)
    {
        if (log.CurrentA is not { } current || log.Rows < 3 || log.Groups == 0)
            throw new ArgumentException("A diagnosis needs rows with time, current and group voltages.", nameof(log));
        (DiagnosisColumns asRead, UnreadGroups unread) = AsRead(log, current, given);
        log = unread.Filled;
        (IReadOnlyList<LooseWires.Wire> loose, IReadOnlyList<LooseWires.Wire> suspected) = LooseWires.Look(asRead);
        DiagnosisColumns columns = LooseWires.Mended(asRead, loose);
        bool flat = given.Chemistry.HasFlatCurve;
        (LogStretch stretch, IReadOnlyList<int> unlogged) = Stretch(columns, given);
        PackEstimator.Estimate estimate = Fitted(columns, stretch, given, stop);
        Identifiability told = Identifiability.Of(estimate, flat);
        GroupEstimate[] groups = LooseWires.Widened(GroupEstimates.Of(estimate, told, flat), loose);
        HashSet<int> suspect = [.. estimate.Taps.SelectMany(t => (int[])[t.A, t.B]).Where(k => k >= 0), .. loose.SelectMany(w => (int[])[w.Below, w.Below + 1]), .. unread.Groups];
        ResistanceTrend trend = ResistanceTrend.Of(groups);
        (double Resistance, double Offset) spread = (trend.Spread, Verdicts.Spread(groups, g => g.Offset));
        double[] standingV = flat ? new double[groups.Length] : StandingOff.Of(estimate.Model);
        List<FindingDetail>[] findings = [.. groups.Select((g, k) => unread.With(k, loose.Where(wire => wire.Touches(k)).ToArray() is { Length: > 0 } wires
            ? Verdicts.OfLoose(wires, k, told, g)
            : Verdicts.Of(g, estimate, told, suspect.Contains(k), spread, standingV[k], trend.Share[k])))];
        bool underLoad = estimate.LargestA > LeastLoadPerAh * given.RatedGroupAh;
        GroupEstimate[] limiting = unread.NeverLimiting(groups);
        // Counted again: held all through the fit, the count of a season takes as much as several of its channels.
        ChargeCount count = ChargeCount.Of(columns, given);
        (IReadOnlyList<RideEvent> events, IReadOnlyList<Caution> cautions) = RideEvents.Of(log, given, count, suspect);
        (LoadedRecovery loaded, IReadOnlyList<Remedy> remedies) = Remedies.Of(estimate, limiting, findings);
        double meanDegC = columns.TemperatureDegC is { } t ? t.Where(double.IsFinite).DefaultIfEmpty(double.NaN).Average() : double.NaN;
        return new RideDiagnosis
        {
            Groups = [.. groups.Select((g, k) => unread.Has(k) ? new GroupDiagnosis(k + 1, null, null, null, null, null, null, 0, findings[k]) : Told(k, g, estimate, findings[k], underLoad))],
            CapacityTold = told.Told,
            WhyNot = told.Reason,
            Recovery = Recovery.Of([.. limiting.Select(g => g.CapacityAh)], [.. limiting.Select(g => Math.Clamp(g.Charge, 0, 1))]),
            Loaded = loaded,
            Remedies = remedies,
            Events = [.. events.Concat(Mirrored(estimate)).Concat(LooseWires.Events(loose)).Concat(unread.Events()).OrderBy(e => e.AtTimeS)],
            DeliveredWh = Delivered(log, count),
            Cold = double.IsNaN(meanDegC) ? null : ColdLoss.At(meanDegC, given.Chemistry),
            Cautions = [.. cautions, .. TapCautions(estimate), .. LooseWires.Cautions(loose), .. unread.Cautions(), .. OutsideMeasured(told)],
            Notes = [.. RatedAgainstLog.Notes(columns, given, unlogged.Count > 0), .. unread.Notes(), .. Notes(log, given, estimate, limiting, count, stretch, meanDegC), .. Uneven(spread.Offset), .. trend.Notes, .. Unlogged(unlogged), .. UnloggedCharge.Unseen(count, given, unlogged), .. LooseWires.Notes(suspected)],
        };
    }

    private static (LogStretch Stretch, IReadOnlyList<int> Unlogged) Stretch(DiagnosisColumns columns, PackGiven given)
    {
        ChargeCount count = ChargeCount.Of(columns, given);
        IReadOnlyList<int> unlogged = UnloggedCharge.Of(columns, count, given);
        return (LogStretch.Of(columns.TimeS, count, given.RatedGroupAh, unlogged), unlogged);
    }

    // Run once, it would not be optimised, and then what it hands on is held until it returns.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static PackEstimator.Estimate Fitted(DiagnosisColumns columns, LogStretch stretch, PackGiven given, CancellationToken stop)
    {
        DiagnosisColumns fitted = stretch.Whole ? columns : columns.Cut(stretch);
        return PackEstimator.Of(fitted, ChargeCount.Of(fitted, given), given, stop);
    }

    // Groups that are not read are filled in before anything is looked at.
    private static (DiagnosisColumns Columns, UnreadGroups Unread) AsRead(RideLog log, double[] current, PackGiven given)
    {
        DiagnosisColumns columns = new(log.TimeS, current, log.GroupV, MeanTemperature(log), log.RowsAreAverages);
        UnreadGroups unread = UnreadGroups.Of(log, columns.GrainV, given);
        return ReferenceEquals(unread.Filled, log) ? (columns, unread)
            : (new DiagnosisColumns(log.TimeS, current, unread.Filled.GroupV, columns.TemperatureDegC, log.RowsAreAverages), unread);
    }

    /// <summary>The log that tells most: capacities told before not told, then the narrowest capacity ranges, then the first.</summary>
    /// <typeparam name="TLog">Whatever stands for a log.</typeparam>
    /// <param name="all">Logs with their diagnoses, one at least.</param>
    public static (TLog Log, RideDiagnosis Diagnosis) MostTelling<TLog>(IReadOnlyList<(TLog Log, RideDiagnosis Diagnosis)> all) =>
        all.OrderBy(one => one.Diagnosis.CapacityTold ? 0 : 1)
            .ThenBy(one => Robust.Median([.. one.Diagnosis.Groups.Select(g => g.CapacityAh is { } c ? (c.High - c.Low) / c.Value : 9)]))
            .First();

    private static GroupDiagnosis Told(int k, GroupEstimate g, PackEstimator.Estimate estimate, List<FindingDetail> findings, bool loaded) => new(
        k + 1, Ranged.Relative(g.CapacityAh, g.CapacitySd), Ranged.Normal(g.Offset, g.OffsetSd),
        g.ResistanceOhm > 0 && loaded ? Ranged.Relative(1000 * g.ResistanceOhm, g.ResistanceSd) : null, Ranged.Relative(g.Share, g.ShareSd),
        g.Charge, estimate.Model.Leaks ? 1000 * g.LeakA : null, 1000 * g.TapV, findings);

    /// <summary>Energy while ridden: a charge is current into the pack for longer than any braking.</summary>
    private static double Delivered(RideLog log, ChargeCount count)
    {
        double wh = 0, held = 0, heldS = 0;
        for (int i = 1; i < log.Rows; i++)
        {
            if (count.StepS[i] > Math.Max(60, 5 * log.UsualStepS))
                continue;
            double v = 0;
            for (int k = 0; k < log.Groups; k++)
                v += double.IsNaN(log.GroupV[k][i]) ? log.GroupV[k][i - 1] : log.GroupV[k][i];
            double part = double.IsNaN(v) ? 0 : v * count.CurrentA[i] * count.StepS[i] / 3600;
            if (count.CurrentA[i] < 0)
            {
                held += part;
                heldS += count.StepS[i];
                continue;
            }
            wh += part + (heldS < RideEvents.LongestBrakingS ? held : 0);
            (held, heldS) = (0, 0);
        }
        return wh;
    }

    private static double[]? MeanTemperature(RideLog log)
    {
        if (log.TemperatureDegC.Length == 0)
            return null;
        double[] mean = new double[log.Rows];
        double last = double.NaN;
        for (int i = 0; i < mean.Length; i++)
        {
            double sum = 0;
            int n = 0;
            foreach (double[] probe in log.TemperatureDegC)
            {
                if (double.IsNaN(probe[i]))
                    continue;
                sum += probe[i];
                n++;
            }
            mean[i] = last = n == 0 ? last : sum / n;
        }
        int first = Array.FindIndex(mean, double.IsFinite);
        if (first < 0)
            return null;
        Array.Fill(mean, mean[first], 0, first);
        return mean;
    }

    private static IEnumerable<Caution> OutsideMeasured(Identifiability told) => told.Told ? [] :
        [new Caution("caution-30", SignalWord.Notice, "capacities", told.Reason!)];

    private static IEnumerable<RideEvent> Mirrored(PackEstimator.Estimate estimate) => estimate.Taps.Select(t => new RideEvent(
        0, "mirrored", t.A + 1, null, null, t.B < 0 ? "the end tap reads wrong by a constant amount"
            : Invariant($"groups {t.A + 1} and {t.B + 1} read wrong by opposite amounts throughout the log")));

    private static IEnumerable<Caution> TapCautions(PackEstimator.Estimate estimate)
    {
        for (int t = 0; t < estimate.Taps.Count; t++)
        {
            double millivolt = Math.Abs(10 * estimate.Fit.X[estimate.Model.TapAt + t]);
            (int a, int b, _) = estimate.Taps[t];
            yield return new Caution("caution-16", millivolt >= 50 ? SignalWord.Warning : SignalWord.Notice,
                b < 0 ? Invariant($"group {a + 1}") : Invariant($"groups {a + 1} and {b + 1}"), Invariant($"readings wrong by {millivolt:f0} mV, mirrored"));
        }
    }

    /// <summary>Sound packs spread by half a point.</summary>
    private static IEnumerable<string> Uneven(double spread) => spread < 0.012 ? [] :
        [Invariant($"the pack is uneven: its groups' charges spread by {100 * spread:f1} points, so that no single group is to blame within {300 * spread:f0} points; balance it and log again")];

    private static IEnumerable<string> Unlogged(IReadOnlyList<int> rows) => rows.Count == 0 ? [] :
        [Invariant($"across {rows.Count} gap{(rows.Count == 1 ? "" : "s")} the resting voltage moved as only a charge or a ride does: charge moved while nothing was logged, so nothing was counted across {(rows.Count == 1 ? "it" : "them")}")];

    /// <summary>The log never went up again by more than braking does.</summary>
    private static bool OneDischarge(PackEstimator.Estimate estimate)
    {
        (double most, double back) = (double.NegativeInfinity, 0);
        foreach (ChargeSlices.Piece piece in estimate.Model.Slices.Pieces)
        {
            most = Math.Max(most, piece.DrawnAh);
            back = Math.Max(back, most - piece.DrawnAh);
        }
        return most > 0.2 * estimate.Model.RatedAh && back < 0.05 * estimate.Model.RatedAh;
    }

    private static List<string> Notes(RideLog log, PackGiven given, PackEstimator.Estimate estimate, GroupEstimate[] groups, ChargeCount count, LogStretch stretch, double meanDegC)
    {
        // Added nought: what rounds to minus nought is shown without a sign.
        List<string> notes =
        [
            Invariant($"{log.Groups} groups, {log.Rows} rows over {log.TimeS[^1] / 3600:f2} h, a row each {log.UsualStepS:f1} s{(log.RowsAreAverages ? ", rows are averages" : "")}"),
            Invariant($"the current sensor reads {Math.Round(count.ZeroA, 2) + 0.0:f2} A at rest; that was taken off"),
            Invariant($"{given.Chemistry.Name}, {given.RatedGroupAh:f1} Ah rated, full {given.FullV:f2} V and empty {given.EmptyV:f2} V at rest"),
        ];
        if (OneDischarge(estimate))
        {
            int first = Enumerable.Range(0, groups.Length).MinBy(k => groups[k].Charge * groups[k].CapacityAh);
            GroupEstimate g = groups[first];
            notes.Add(Invariant($"group {first + 1} empties first: {100 * g.Offset:+0.0;-0.0;0.0} points of charge at the start and {100 * (g.Share - 1):+0;-0;0} % of capacity against the median; from one discharge alone less full and less capacity are told apart by the curve only, so log a full charge too"));
        }
        if (!stretch.Whole)
            notes.Add(Invariant($"of this long log the rows from {log.TimeS[stretch.First] / 3600:f1} h to {log.TimeS[stretch.Last] / 3600:f1} h were fitted, where charge moved through the widest window; state of charge is that at their first row"));
        double gapH = count.Gaps.Sum(g => g.Seconds) / 3600;
        if (count.Gaps.Count > 0)
            notes.Add(Invariant($"{count.Gaps.Count} gaps, {gapH:f1} h in all; parked gaps were taken to move no charge"));
        if (!estimate.Model.Leaks)
            notes.Add("the log is too short for self-discharge to show: charge, rest 24 h or more, and read again");
        if (!double.IsNaN(meanDegC) && meanDegC < 10)
            notes.Add(Invariant($"the pack was cold (mean {meanDegC:f0} °C): every group's resistance is higher for it, and that accuses none"));
        return notes;
    }
}
