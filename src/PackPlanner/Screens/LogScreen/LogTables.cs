using System.Globalization;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.LogScreen;

/// <summary>The tables of the Log step: findings, groups, events, remedies.</summary>
internal static class LogTables
{
    internal static IReadOnlyList<Column> Findings(IReadOnlyList<LogFinding> findings, Look look) =>
    [
        new("where", row => $"group {findings[row].Group}", row => findings[row].Group, Rank: 0) { IsRight = false },
        new("finding", row => findings[row].Name, Rank: 0),
        new("size", row => findings[row].Size(look), Rank: 1),
        new("sure", row => findings[row].Detail.Sure.ToString().ToLowerInvariant(), Rank: 2),
        new("settle it by", row => findings[row].Detail.SettleBy, Least: 14, Rank: 3) { Stretches = true },
    ];

    internal static IReadOnlyList<Column> Groups(RideDiagnosis diagnosis, Look look)
    {
        IReadOnlyList<GroupDiagnosis> groups = diagnosis.Groups;
        return
        [
            new("group", row => groups[row].Group.ToString(CultureInfo.InvariantCulture), row => groups[row].Group, Rank: 0),
            new("Ah now", row => LogFinding.Capacity(groups[row], look), row => groups[row].CapacityAh?.Value, Rank: 0),
            new("of median", row => look.Percent(groups[row].CapacityShare?.Value, 1), row => groups[row].CapacityShare?.Value * 100, Rank: 3),
            new("charge, % from median", row => LogFinding.Range(groups[row].StateOfChargeOffset, 100, look, 1), row => groups[row].StateOfChargeOffset?.Value * 100, Rank: 2),
            new("mΩ", row => look.Figure(groups[row].ResistanceMilliohm?.Value, 2), row => groups[row].ResistanceMilliohm?.Value, Rank: 1),
            new("note", row => string.Join(", ", groups[row].Findings.Where(f => f.Kind != FindingKind.CannotTell).Select(f => LogFinding.Words(f.Kind))), Rank: 1) { Stretches = true },
        ];
    }

    internal static IReadOnlyList<Column> Events(RideDiagnosis diagnosis, Look look)
    {
        IReadOnlyList<RideEvent> events = diagnosis.Events;
        return
        [
            new("at", row => Clock(events[row].AtTimeS), row => events[row].AtTimeS, Rank: 0),
            new("what", row => events[row].What.Replace('-', ' '), Rank: 0),
            new("group", row => events[row].Group?.ToString(CultureInfo.InvariantCulture) ?? "-", row => events[row].Group, Rank: 1),
            new("V", row => look.Figure(events[row].VoltageV, 3), row => events[row].VoltageV, Rank: 2),
            new("A", row => look.Figure(events[row].CurrentA, 1), row => events[row].CurrentA, Rank: 2),
            new("in words", row => events[row].Says, Least: 14, Rank: 3) { Stretches = true },
        ];
    }

    internal static IReadOnlyList<Column> Remedies(RideDiagnosis diagnosis, Look look)
    {
        IReadOnlyList<Remedy> remedies = diagnosis.Remedies;
        return
        [
            new("do", row => remedies[row].Do, Least: 24, Rank: 0) { Stretches = true },
            new("Ah then", row => look.Figure(remedies[row].UsableAh, 1), row => remedies[row].UsableAh, Rank: 1),
            new(diagnosis.Loaded is { } ride ? $"Wh at {look.Figure(ride.CurrentA, 0)} A" : "Wh then", row => look.Figure(remedies[row].UsableWh, 0), row => remedies[row].UsableWh, Rank: 1),
            new("gain % of Ah", row => look.Figure(remedies[row].GainPercent, 1), row => remedies[row].GainPercent, Rank: 1),
            new("then ends", row => $"group {remedies[row].NextBottleneck}", Rank: 2),
        ];
    }

    private static string Clock(double seconds) => string.Create(CultureInfo.InvariantCulture, $"{(int)(seconds / 3600)}:{(int)(seconds / 60) % 60:00}:{(int)seconds % 60:00}");

    /// <summary>The groups as a table for a file.</summary>
    internal static MainTable OfGroups(RideDiagnosis known) => new(
        ["group", "capacityAh", "capacityLowAh", "capacityHighAh", "stateOfChargeOffset", "resistanceMilliohm", "findings"],
        [.. known.Groups.Select(group => new object?[]
        {
            group.Group, group.CapacityAh?.Value, group.CapacityAh?.Low, group.CapacityAh?.High, group.StateOfChargeOffset?.Value,
            group.ResistanceMilliohm?.Value, string.Join(" ", group.Findings.Select(finding => LogFinding.Words(finding.Kind))),
        })]);
}
