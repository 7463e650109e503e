using System.Globalization;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats.Json;
using static System.FormattableString;

namespace PackPlanner.Formats.Words;

/// <summary>A diagnosis for people, and as the record that scripts read.</summary>
public static class DiagnoseWords
{
    /// <summary>Name of a finding, as in JSON.</summary>
    /// <param name="kind">The finding.</param>
    /// <returns>Its name.</returns>
    public static string Name(FindingKind kind) => kind switch
    {
        FindingKind.LowCapacity => "low-capacity",
        FindingKind.Imbalance => "imbalance",
        FindingKind.HighResistance => "high-resistance",
        FindingKind.Connection => "connection",
        FindingKind.SelfDischarge => "self-discharge",
        FindingKind.Sensor => "sensor",
        _ => "cannot-tell",
    };

    /// <summary>The record that scripts read.</summary>
    /// <param name="diagnosis">The diagnosis that the figures come from.</param>
    /// <param name="log">Its log.</param>
    /// <param name="all">Every log with its diagnosis, for events and cautions.</param>
    /// <param name="whPerKm">What the vehicle uses for each kilometre; null when not known.</param>
    /// <returns>The answer, without understood notes and account of rows.</returns>
    public static DiagnoseAnswer Answer(RideDiagnosis diagnosis, string log, IReadOnlyList<(string Log, RideDiagnosis Diagnosis)> all, double? whPerKm = null) => new()
    {
        Groups = [.. diagnosis.Groups.Select(Group)],
        Recovery = diagnosis.Recovery is { } r ? new RecoveryJson(
            r.UsableAhNow, r.UsableAhAfterBalance, r.UsableAhAfterReplacement, r.ReplacedGroup, r.NextBottleneck, r.LimitingNow,
            diagnosis.Loaded is { } l ? new LoadedRecoveryJson(l.CurrentA, l.UsableAhNow, l.UsableWhNow, l.UsableAhAfterBalance, l.UsableAhAfterReplacement, l.UsableWhNow / whPerKm) : null) : null,
        Remedies = [.. diagnosis.Remedies.Select(m => new RemedyJson(m.Do, m.UsableAh, m.UsableWh, m.GainPercent, m.NextBottleneck, m.UsableWh / whPerKm))],
        Events = [.. all.SelectMany(one => one.Diagnosis.Events.Select(e => new RideEventJson(e.AtTimeS, e.What, e.Group, JsonFigures.Known(e.VoltageV), JsonFigures.Known(e.CurrentA), e.Says, one.Log)))],
        Cold = diagnosis.Cold is { } cold ? new ColdJson(cold.LossPercent, cold.MeanDegC) : null,
        CapacityTold = diagnosis.CapacityTold,
        CannotTellBecause = diagnosis.WhyNot,
        Log = log,
        Cautions = CautionJson.From(all.SelectMany(one => one.Diagnosis.Cautions)),
    };

    /// <summary>Lines for people.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>What limits the pack, each finding with its grounds, what repairs give back, what happened.</returns>
    public static IReadOnlyList<string> Lines(DiagnoseAnswer answer)
    {
        List<string> lines = [Headline(answer)];
        lines.Add("group      Ah    range        offset %    mohm   findings");
        foreach (DiagnosedGroupJson g in answer.Groups)
            lines.Add(Row(g));
        foreach (DiagnosedGroupJson g in answer.Groups)
        {
            foreach (FindingDetailJson f in g.FindingDetails.Where(f => f.Finding != "cannot-tell"))
            {
                lines.Add($"group {g.Group}: {f.Finding}, sureness {f.Sure}");
                lines.AddRange(f.Evidence.Select(e => "    " + e));
                lines.Add("    settle it: " + f.SettleBy);
            }
        }
        if (!answer.CapacityTold)
            lines.Add($"capacities cannot be told: {answer.CannotTellBecause}. {answer.Groups.SelectMany(g => g.FindingDetails).First(f => f.Finding == "cannot-tell").SettleBy}");
        if (!answer.CapacityTold && answer.Recovery is not null)
            lines.Add("the figures below suppose the likeliest capacities, which this log does not tell:");
        if (answer.Recovery is { } r)
            lines.Add(Invariant($"usable between resting full and empty: {r.UsableAhNow:0.0} Ah now, {r.UsableAhAfterBalance:0.0} balanced, {r.UsableAhAfterReplacement:0.0} with group {r.ReplacedGroup} replaced (then group {r.NextBottleneck} limits)"));
        if (answer.Recovery?.Loaded is { } loaded)
            lines.Add(Invariant($"at {loaded.CurrentA:0.0} A down to the loaded cut-off: {loaded.UsableAhNow:0.0} Ah, {loaded.UsableWhNow:0} Wh{Range(loaded.RangeKmNow)} now"));
        lines.AddRange(answer.Remedies.Select(m => Invariant($"  {m.Do} {m.UsableAh:0.0} Ah, {m.UsableWh:0} Wh{Range(m.RangeKm)} ({m.GainPercent:+0.0;-0.0;0.0} % of the Ah); then group {m.NextBottleneck} ends the ride")));
        lines.AddRange(answer.Events.Take(40).Select(e => Invariant($"  at {e.AtTimeS:0} s {e.What}{(e.Group is { } g ? $", group {g}" : "")}: {e.Says}")));
        if (answer.Cold is { LossPercent: > 2 } cold)
            lines.Add(Invariant($"cold: mean {cold.MeanDegC:0} degC; about {cold.LossPercent:0} % of the charge comes back at 25 degC"));
        lines.Add(Next(answer));
        return lines;
    }

    /// <summary>One row a group.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(DiagnoseAnswer answer) => new(
        ["group", "capacityAh", "capacityLowAh", "capacityHighAh", "stateOfChargeOffset", "resistanceMilliohm", "findings"],
        [.. answer.Groups.Select(g => new object?[]
        {
            g.Group, g.CapacityAh?.Value, g.CapacityAh?.Low, g.CapacityAh?.High, g.StateOfChargeOffset?.Value, g.ResistanceMilliohm?.Value,
            string.Join(' ', g.Findings),
        })]);

    private static string Range(double? km) => km is { } known ? Invariant($", {known:0.0} km") : "";

    private static string Headline(DiagnoseAnswer answer)
    {
        int[] hurt = [.. answer.Groups.Where(g => g.Findings.Any(f => f != "cannot-tell")).Select(g => g.Group)];
        string found = hurt.Length == 0 ? "Nothing stands out in any group" : $"{hurt.Length} of {answer.Groups.Count} groups stand out: {string.Join(", ", hurt)}";
        return answer.CapacityTold ? found + "." : found + "; capacities cannot be told from this log.";
    }

    private static string Next(DiagnoseAnswer answer) => answer switch
    {
        _ when answer.Groups.Any(g => g.Findings.Any(f => f != "cannot-tell")) => "Next: do the measurement named beside the gravest finding, then diagnose a second log.",
        { CapacityTold: false } => "Next: log what is named above, then diagnose again; until then nothing is known for or against the capacities.",
        _ => "Next: keep this log; compare a later one with it when the range falls.",
    };

    private static string Row(DiagnosedGroupJson g)
    {
        bool wide = g.CapacityAh is { } c && (c.High - c.Low) / 2 > 0.12 * c.Value;
        string ah = g.CapacityAh is not { } x ? "     -" : wide ? Invariant($"> {x.Low,4:0}") : Invariant($"{x.Value,6:0.0}");
        string range = g.CapacityAh is { } y && !wide ? Invariant($"{y.Low:0.0}-{y.High:0.0}") : "";
        string offset = g.StateOfChargeOffset is { } o ? Invariant($"{100 * o.Value,7:+0.0;-0.0;0.0}") : "      -";
        string ohm = g.ResistanceMilliohm is { } r ? r.Value.ToString("0.00", CultureInfo.InvariantCulture).PadLeft(8) : "       -";
        return Invariant($"{g.Group,5}  {ah}  {range,-12} {offset}  {ohm}   {string.Join(", ", g.Findings)}");
    }

    private static DiagnosedGroupJson Group(GroupDiagnosis g) => new(
        g.Group, Ranged(g.CapacityAh), Ranged(g.StateOfChargeOffset), Ranged(g.ResistanceMilliohm), Ranged(g.CapacityShare),
        JsonFigures.Known(g.StateOfCharge), JsonFigures.Known(g.LeakMilliamp), g.TapMillivolt,
        [.. g.Findings.Select(f => Name(f.Kind))],
        [.. g.Findings.Select(f => new FindingDetailJson(Name(f.Kind), f.Evidence, f.Sure.ToString().ToLowerInvariant(), f.SettleBy))]);

    private static RangedJson? Ranged(Core.Diagnosis.Ranged? range) =>
        range is { } r && double.IsFinite(r.Value) && double.IsFinite(r.Low) && double.IsFinite(r.High) ? new RangedJson(r.Value, r.Low, r.High) : null;
}
