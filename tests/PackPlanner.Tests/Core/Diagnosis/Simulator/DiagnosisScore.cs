using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis.Simulator;

/// <summary>Compares a diagnosis with the truth, in the measures and limits of docs/methods/diagnosis.md.</summary>
internal sealed record DiagnosisScore
{
    internal required string Kind { get; init; }

    internal required bool CapacityScored { get; init; }

    internal required bool TellRight { get; init; }

    internal int Planted { get; init; }

    internal int Found { get; init; }

    internal int Reported { get; init; }

    internal int ReportedRight { get; init; }

    internal int Sound { get; init; }

    internal int SoundAccused { get; init; }

    internal double CapacityError { get; init; }

    internal double ShareRms { get; init; }

    internal double ShareWorst { get; init; }

    internal double OffsetRms { get; init; }

    internal double OffsetWorst { get; init; }

    internal bool OffsetScored { get; init; }

    internal double ResistanceRms { get; init; }

    internal double ResistanceWorst { get; init; }

    internal double ResistanceError { get; init; }

    internal bool ResistanceScored { get; init; }

    internal double RecoveryWorst { get; init; }

    internal double Holding { get; init; }

    internal double HalfWidth { get; init; }

    internal double OffsetHolding { get; init; }

    internal double ResistanceHolding { get; init; }

    internal double StepS { get; init; }

    internal List<string> Mistakes { get; } = [];

    /// <summary>Every limit on a single log is met.</summary>
    internal bool Passes => Found == Planted && Reported == ReportedRight && TellRight
        && (!CapacityScored || (CapacityError < 0.08 && ShareWorst < 0.06 && ShareRms < 0.03 && RecoveryWorst < 0.08 && HalfWidth < 0.12))
        && Holding >= 0.75 && (!OffsetScored || (OffsetWorst < 0.035 && OffsetRms < 0.015))
        && (!ResistanceScored || (ResistanceWorst < 0.15 && ResistanceRms < 0.06 && ResistanceError < (StepS > 3 ? 0.5 : 0.15)));

    internal static string Name(FindingKind kind) => kind switch
    {
        FindingKind.LowCapacity => "low-capacity",
        FindingKind.Imbalance => "imbalance",
        FindingKind.HighResistance => "high-resistance",
        FindingKind.Connection => "connection",
        FindingKind.SelfDischarge => "self-discharge",
        FindingKind.Sensor => "sensor",
        _ => "cannot-tell",
    };

    internal static PackGiven Given(SimulatedLog log) => new(
        Chemistries.Find(log.Pack.Family switch { CurveFamily.Lfp => "LFP", CurveFamily.Nca => "NCA", _ => "NMC" })!,
        log.Pack.Groups.Length, log.Pack.Parallel, log.Pack.RatedAh, log.Pack.FullV, log.Pack.EmptyV);

    internal static RideLog Ride(DiagnosisColumns columns) => new()
    {
        TimeS = columns.TimeS,
        CurrentA = columns.CurrentA,
        GroupV = columns.GroupV,
        TemperatureDegC = columns.TemperatureDegC is null ? [] : [columns.TemperatureDegC],
        RowsAreAverages = columns.RowsAreAverages,
        UsualStepS = columns.UsualStepS,
        Source = "simulated",
    };

    internal static DiagnosisScore Of(string kind, SimulatedTruth truth, RideDiagnosis diagnosis, double stepS, bool flat)
    {
        int n = truth.CapacityAh.Length;
        double[] c = [.. diagnosis.Groups.Select(g => g.CapacityAh!.Value.Value)];
        double[] r = [.. diagnosis.Groups.Select(g => g.ResistanceMilliohm?.Value ?? double.NaN)];
        double mc = Middle(c), tc = Middle(truth.CapacityAh), mr = Middle(r), tr = 1000 * Middle(truth.ResistanceOhm);
        double[] share = [.. Enumerable.Range(0, n).Select(k => Math.Abs((c[k] / mc / (truth.CapacityAh[k] / tc)) - 1))];
        double[] offset = [.. Enumerable.Range(0, n).Select(k => Math.Abs(diagnosis.Groups[k].StateOfChargeOffset!.Value.Value - truth.Offset[k]))];
        double[] resistance = [.. Enumerable.Range(0, n).Select(k => Math.Abs((r[k] / mr / (1000 * truth.ResistanceOhm[k] / tr)) - 1))];
        FindingTally tally = FindingTally.Of(truth, diagnosis);
        DiagnosisScore score = new()
        {
            Kind = kind,
            CapacityScored = truth.Capacity == "yes",
            TellRight = tally.TellRight,
            Planted = tally.Planted,
            Found = tally.Found,
            Reported = tally.Reported,
            ReportedRight = tally.Right,
            Sound = tally.Sound,
            SoundAccused = tally.Accused,
            CapacityError = Math.Abs((mc / tc) - 1),
            ShareRms = Rms(share),
            ShareWorst = share.Max(),
            OffsetRms = Rms(offset),
            OffsetWorst = offset.Max(),
            OffsetScored = !(flat && kind.EndsWith("top", StringComparison.Ordinal)),
            ResistanceRms = Rms(resistance),
            ResistanceWorst = resistance.Max(),
            ResistanceError = Math.Abs((mr / tr) - 1),
            ResistanceScored = !kind.EndsWith("charge", StringComparison.Ordinal),
            RecoveryWorst = WorstRecovery(diagnosis.Recovery!, truth),
            Holding = Enumerable.Range(0, n).Average(k => Holds(diagnosis.Groups[k].CapacityAh!.Value, truth.CapacityAh[k])),
            HalfWidth = Middle([.. diagnosis.Groups.Select(g => (g.CapacityAh!.Value.High - g.CapacityAh.Value.Low) / 2 / g.CapacityAh.Value.Value)]),
            OffsetHolding = Enumerable.Range(0, n).Average(k => Holds(diagnosis.Groups[k].StateOfChargeOffset!.Value, truth.Offset[k])),
            ResistanceHolding = Enumerable.Range(0, n).Average(k => diagnosis.Groups[k].ResistanceMilliohm is { } x ? Holds(x, 1000 * truth.ResistanceOhm[k]) : 1),
            StepS = stepS,
        };
        score.Mistakes.AddRange(tally.Mistakes);
        return score;
    }

    private static double WorstRecovery(Recovery recovery, SimulatedTruth truth) => new[]
    {
        Math.Abs((recovery.UsableAhNow / truth.NowAh) - 1), Math.Abs((recovery.UsableAhAfterBalance / truth.BalancedAh) - 1),
        Math.Abs((recovery.UsableAhAfterReplacement / truth.ReplacedAh) - 1),
    }.Max();

    /// <summary>One log in one line.</summary>
    internal string Line() => FormattableString.Invariant(
        $"{Kind}: capacity {100 * CapacityError:f1} %, relative {100 * ShareRms:f2} % (worst {100 * ShareWorst:f1}), offset {100 * OffsetRms:f2} points (worst {100 * OffsetWorst:f1}), resistance {100 * ResistanceRms:f1} %, recovery {100 * RecoveryWorst:f1} %, ranges hold {100 * Holding:f0} % with half-width {100 * HalfWidth:f1} %; {string.Join("; ", Mistakes)}");

    /// <summary>The table of many logs, a line for each measure.</summary>
    internal static IEnumerable<string> Table(IReadOnlyList<DiagnosisScore> scores)
    {
        DiagnosisScore[] capacity = [.. scores.Where(s => s.CapacityScored)], offset = [.. scores.Where(s => s.OffsetScored)], resistance = [.. scores.Where(s => s.ResistanceScored)];
        yield return FormattableString.Invariant($"logs {scores.Count}, capacity told in truth {capacity.Length}");
        yield return FormattableString.Invariant($"recall {scores.Sum(s => s.Found) / (double)Math.Max(1, scores.Sum(s => s.Planted)):f3} of {scores.Sum(s => s.Planted)}; precision {scores.Sum(s => s.ReportedRight) / (double)Math.Max(1, scores.Sum(s => s.Reported)):f3} of {scores.Sum(s => s.Reported)}");
        yield return FormattableString.Invariant($"sound groups unaccused {1 - (scores.Sum(s => s.SoundAccused) / (double)Math.Max(1, scores.Sum(s => s.Sound))):f4} of {scores.Sum(s => s.Sound)}");
        yield return FormattableString.Invariant($"cannot-tell right {scores.Count(s => s.TellRight)} of {scores.Count}");
        yield return FormattableString.Invariant($"capacity pack error mean {100 * Mean(capacity.Select(s => s.CapacityError)):f2} % worst {100 * capacity.Select(s => s.CapacityError).DefaultIfEmpty().Max():f1} %; relative rms {100 * Rms([.. capacity.Select(s => s.ShareRms)]):f2} % worst {100 * capacity.Select(s => s.ShareWorst).DefaultIfEmpty().Max():f1} %");
        yield return FormattableString.Invariant($"offset rms {100 * Rms([.. offset.Select(s => s.OffsetRms)]):f2} points worst {100 * offset.Max(s => s.OffsetWorst):f1}; resistance relative rms {100 * Rms([.. resistance.Select(s => s.ResistanceRms)]):f2} %, absolute mean {100 * Mean(resistance.Select(s => s.ResistanceError)):f1} %");
        yield return FormattableString.Invariant($"recovery worst-of-three rms {100 * Rms([.. capacity.Select(s => s.RecoveryWorst)]):f2} %; ranges hold: capacity {100 * Mean(scores.Select(s => s.Holding)):f0} % (told {100 * Mean(capacity.Select(s => s.Holding)):f0} %), offset {100 * Mean(offset.Select(s => s.OffsetHolding)):f0} %, resistance {100 * Mean(resistance.Select(s => s.ResistanceHolding)):f0} %; half-width median {100 * Middle([.. capacity.Select(s => s.HalfWidth)]):f1} %");
        yield return FormattableString.Invariant($"single logs passing {scores.Count(s => s.Passes)} of {scores.Count}");
    }

    private static double Holds(Ranged range, double truth) => truth >= range.Low && truth <= range.High ? 1 : 0;

    private static double Mean(IEnumerable<double> values) => values.DefaultIfEmpty().Average();

    private static double Rms(double[] values) => values.Length == 0 ? 0 : Math.Sqrt(values.Average(v => v * v));

    private static double Middle(double[] values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? double.NaN : (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
