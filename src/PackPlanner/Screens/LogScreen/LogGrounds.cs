using System.Globalization;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.LogScreen;

/// <summary>Where the figures of the Log step come from: what was read, the rule, the source, the spread.</summary>
internal sealed class LogGrounds(RideDiagnosis known, string log, Look look)
{
    private const string Fit = "one fit of all groups to the volts of this log; docs/methods/diagnosis.md";

    internal WhereFrom Finding(LogFinding finding) => new($"{finding.Name} of group {finding.Group}, {finding.Size(look)},",
    [
        .. finding.Detail.Evidence.Select(ground => ("ground", ground)), ("read", log), ("rule", Fit), .. Spread(finding),
        ("sure", finding.Detail.Sure.ToString().ToLowerInvariant()), ("settle", finding.Detail.SettleBy),
    ]);

    internal WhereFrom Group(GroupDiagnosis group) => new($"{LogFinding.Capacity(group, look)} Ah of group {group.Group}",
    [
        ("read", log), ("rule", Fit),
        .. Range("Ah", group.CapacityAh, 1, 1), .. Range("% of the median group, known better than either", group.CapacityShare, 100, 1),
        .. Range("points of charge from the median at the first row", group.StateOfChargeOffset, 100, 1), .. Range("mΩ one second after a step", group.ResistanceMilliohm, 1, 2),
        .. known.CapacityTold ? [] : new[] { ("but", $"capacities cannot be told: {known.WhyNot}") },
    ]);

    internal WhereFrom Remedy(Remedy remedy) => new($"{look.Figure(remedy.UsableWh, 0)} Wh after a remedy",
    [
        ("do", remedy.Do),
        .. known.Loaded is { } now ? new[] { ("now", TwoCounts.OfLog(now, look)) } : [],
        ("then", $"{look.Figure(remedy.UsableAh, 1)} Ah, {look.Figure(remedy.UsableWh, 0)} Wh at the same current; group {remedy.NextBottleneck} ends the ride"),
        ("rule", "each group runs from where the charger stops down to the charge at which its volts under this log's mean current meet the cut-off; the least ends the ride"),
        ("6 Energy", TwoCounts.Why),
        ("source", "resting windows: JiangZhang2015, eqs 6.10 to 6.14; docs/methods/diagnosis.md"),
        ("range", "that of the capacities it rests on: t shows the groups with theirs"),
    ]);

    internal WhereFrom Event(RideEvent one) => new(
        $"{one.What.Replace('-', ' ')} at {look.Figure(one.AtTimeS, 0)} s", [("read", log), ("saw", one.Says), ("rule", "volts and amperes as logged, the sensor's zero taken off")]);

    internal WhereFrom All() => new("what the log says", [("read", log), .. known.Notes.Select(note => ("taken", note)), ("rule", "docs/methods/diagnosis.md")]);

    private (string, string)[] Spread(LogFinding finding) => finding.Detail.Kind switch
    {
        FindingKind.LowCapacity => Range("Ah", finding.Of.CapacityAh, 1, 1),
        FindingKind.Imbalance => Range("points of charge", finding.Of.StateOfChargeOffset, 100, 1),
        FindingKind.HighResistance or FindingKind.Connection => Range("mΩ, the whole group", finding.Of.ResistanceMilliohm, 1, 2),
        _ => [],
    };

    private (string, string)[] Range(string what, Ranged? range, double factor, int decimals) => range is not { } r ? [] :
        [("range", string.Create(CultureInfo.InvariantCulture, $"{look.Figure(factor * r.Value, decimals)}, nine times in ten {look.Figure(factor * r.Low, decimals)} to {look.Figure(factor * r.High, decimals)} {what}"))];
}
