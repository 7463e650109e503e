using PackPlanner.Core.Diagnosis;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.LogScreen;

/// <summary>What changed in each group between two logs of the job.</summary>
internal static class LogChanges
{
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
