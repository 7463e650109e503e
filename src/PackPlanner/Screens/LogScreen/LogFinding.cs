using PackPlanner.Core.Diagnosis;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.LogScreen;

/// <summary>One finding of one group, as a row.</summary>
/// <param name="Group">The group's number.</param>
/// <param name="Detail">What was found.</param>
/// <param name="Of">The whole of what the log says of the group.</param>
/// <param name="MedianMilliohm">The median group's resistance, which a joint or a worn group is above.</param>
internal sealed record LogFinding(int Group, FindingDetail Detail, GroupDiagnosis Of, double? MedianMilliohm)
{
    /// <summary>The surest first, then the largest loss of capacity.</summary>
    internal static IReadOnlyList<LogFinding> All(RideDiagnosis diagnosis)
    {
        double? median = diagnosis.MedianMilliohm;
        return
        [
            .. diagnosis.Groups.SelectMany(group => group.Findings.Select(detail => new LogFinding(group.Group, detail, group, median)))
                .Where(finding => finding.Detail.Kind != FindingKind.CannotTell)
                .OrderBy(finding => finding.Detail.Sure)
                .ThenBy(finding => finding.Of.CapacityShare?.Value ?? 1)
                .ThenBy(finding => finding.Group),
        ];
    }

    internal string Name => Words(Detail.Kind);

    internal static string Words(FindingKind kind) => kind switch
    {
        FindingKind.LowCapacity => "low capacity",
        FindingKind.Imbalance => "out of balance",
        FindingKind.HighResistance => "high resistance",
        FindingKind.Connection => "joint",
        FindingKind.SelfDischarge => "leaks charge",
        FindingKind.Sensor => "sense wire",
        _ => "cannot be told",
    };

    /// <summary>What settles it, short enough for one row; the grounds say it whole.</summary>
    internal string Next => Detail.Kind switch
    {
        FindingKind.LowCapacity => $"Test group {Group} by itself on a tester, from full to the cut-off",
        FindingKind.Imbalance => "Balance at the top of a slow charge, then log again",
        FindingKind.HighResistance => $"Measure each cell of group {Group} four-wire",
        FindingKind.Connection => $"Measure millivolts over each joint of group {Group}",
        FindingKind.SelfDischarge => $"Charge full, rest a day, read group {Group} twice",
        FindingKind.Sensor => $"Measure group {Group} and its neighbours at the cells",
        _ => Detail.SettleBy,
    };

    /// <summary>How large it is, with its 90 % range.</summary>
    internal string Size(Look look) => Detail.Kind switch
    {
        FindingKind.LowCapacity => Range(Of.CapacityAh, 1, look, 1) + " Ah",
        FindingKind.Imbalance => Range(Of.StateOfChargeOffset, 100, look, 1) + " %",
        FindingKind.HighResistance or FindingKind.Connection => Above(look),
        FindingKind.SelfDischarge => look.Figure(Of.LeakMilliamp, 1) + " mA",
        FindingKind.Sensor when Of.CapacityAh is null => "not read",
        FindingKind.Sensor => look.Figure(Of.TapMillivolt, 0) + " mV",
        _ => "-",
    };

    // What a joint adds is what its finding is about; the range is the whole group's.
    private string Above(Look look) => Of.ResistanceMilliohm is { } ohm && MedianMilliohm is { } median
        ? $"+{look.Figure(ohm.Value - median, 2)} ± {look.Figure((ohm.High - ohm.Low) / 2, 2)} mΩ"
        : "-";

    internal static string Range(Ranged? range, double factor, Look look, int decimals) => range is { } known
        ? $"{look.Figure(known.Value * factor, decimals)} ± {look.Figure((known.High - known.Low) / 2 * factor, decimals)}"
        : "-";

    /// <summary>A capacity with its range; where the range is wide only its lower end is said.</summary>
    internal static string Capacity(GroupDiagnosis group, Look look)
    {
        if (group.CapacityAh is not { } ah)
            return "-";
        return (ah.High - ah.Low) / 2 > 0.12 * ah.Value ? $"> {look.Figure(ah.Low, 0)}" : Range(ah, 1, look, 1);
    }
}
