using PackPlanner.Core.Diagnosis;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.LogScreen;

/// <summary>What changed in each group between two logs of the job.</summary>
internal static class LogChanges
{
    /// <summary>What the change in usable energy is put down to: pack, cold, vehicle, each with its share and its grounds.</summary>
    internal static IReadOnlyList<(string Word, string Says)> Causes(PackComparison changes, Look look) =>
    [
        ("usable", $"{look.Figure(changes.ThenWh / 1000, 2)} kWh then, {look.Figure(changes.NowWh / 1000, 2)} kWh now"),
        .. changes.Causes.Select(cause => (cause.Name, $"{(cause.WhShare is { } share ? look.Percent(share, 1) + " less: " : "not told: ")}{cause.Grounds}{(cause is { Name: "vehicle", WhShare: null } ? " (e here)" : "")}")),
    ];

    internal static IReadOnlyList<Column> Columns(IReadOnlyList<GroupChange> groups, Look look) =>
    [
        new("group", row => groups[row].Group.ToString(System.Globalization.CultureInfo.InvariantCulture), row => groups[row].Group, Rank: 0),
        new("Ah then", row => look.Figure(groups[row].CapacityAh?.Then.Value, 1), row => groups[row].CapacityAh?.Then.Value, Rank: 1),
        new("Ah now", row => look.Figure(groups[row].CapacityAh?.Now.Value, 1), row => groups[row].CapacityAh?.Now.Value, Rank: 1),
        new("change Ah", row => LogFinding.Range(groups[row].CapacityAh?.Change, 1, look, 1), row => groups[row].CapacityAh?.Change.Value, Rank: 0),
        new("mΩ then", row => look.Figure(groups[row].ResistanceMilliohm?.Then.Value, 2), row => groups[row].ResistanceMilliohm?.Then.Value, Rank: 3),
        new("mΩ now", row => look.Figure(groups[row].ResistanceMilliohm?.Now.Value, 2), row => groups[row].ResistanceMilliohm?.Now.Value, Rank: 3),
        new("change mΩ", row => LogFinding.Range(groups[row].ResistanceMilliohm?.Change, 1, look, 2), row => groups[row].ResistanceMilliohm?.Change.Value, Rank: 2),
    ];
}
