using PackPlanner.Core.Diagnosis;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.LogScreen;

/// <summary>What changed in each group between two logs of the job.</summary>
internal static class LogChanges
{
    /// <summary>The question and answer of this view; what to do next, and the cautions, are those of the log.</summary>
    internal static StepPicture Picture(StepPicture log, PackComparison changes, Look look)
    {
        string energy = $"{Energy(changes, look)}.";
        string range = changes is { Rides: { } rides, RangeKmThen: { } then, RangeKmNow: { } now }
            ? $"Ridden {look.Distance(rides.KmThen, 1)} then, {look.Distance(rides.KmNow, 1)} now; range {look.Distance(then, 1)} then, {look.Distance(now, 1)} now: "
                + string.Join(", ", changes.Causes.Where(cause => cause.WhShare is not null).Select(cause => $"{cause.Name} {InKm(cause.WhShare!.Value * then, look)}")) + "."
            : "Whether the vehicle needs more cannot be told without the kilometres of both rides (e).";
        return log with { Question = "What changed since the log before?", Answer = $"{energy} {range}", Short = energy };
    }

    private static string Energy(PackComparison changes, Look look) =>
        $"{look.Figure(changes.ThenWh / 1000, 2)} kWh then, {look.Figure(changes.NowWh / 1000, 2)} kWh now{(1 - (changes.NowWh / changes.ThenWh) is { } lost ? $": {LessOrMore(lost, look)}" : "")}";

    private static string InKm(double less, Look look) =>
        look.Distance(Math.Abs(less), 1) + (Math.Abs(less) < 0.05 ? "" : less > 0 ? " less" : " more");

    /// <summary>What the change in usable energy is put down to: pack, cold, vehicle, each with its share and its grounds.</summary>
    internal static IReadOnlyList<(string Word, string Says)> Causes(PackComparison changes, Look look) =>
    [
        ("usable", Energy(changes, look)),
        .. changes.Rides is { } rides ? Ridden(rides, changes, look) : [],
        .. changes.Causes.Select(cause => (cause.Name, $"{Part(cause, changes, look)}: {cause.Grounds}{(cause is { Name: "vehicle", WhShare: null } ? " (e here)" : "")}")),
    ];

    // What was ridden need not be the whole range: a ride may end before the pack is empty.
    private static (string Word, string Says)[] Ridden(ComparedRides rides, PackComparison changes, Look look) =>
    [
        ("ridden", $"then {Ride(rides.KmThen, rides.DeliveredWhThen, look)}; now {Ride(rides.KmNow, rides.DeliveredWhNow, look)}"),
        .. changes is { RangeKmThen: { } then, RangeKmNow: { } now }
            ? new[] { ("range", $"{look.Distance(then, 1)} then, {look.Distance(now, 1)} now, full to empty at that use: {LessOrMore(1 - (now / then), look)}; of it, one after the other:") } : [],
    ];

    private static string Ride(double km, double wh, Look look) => $"{look.Distance(km, 1)} on {look.Figure(wh / 1000, 2)} kWh, {look.Use(wh / km, 1)}";

    private static string Part(LossCause cause, PackComparison changes, Look look) => cause.WhShare is not { } share ? "not told"
        : LessOrMore(share, look) + (changes.RangeKmThen is { } km && Math.Abs(share) >= 0.0005 ? $" ({look.Distance(Math.Abs(share * km), 1)})" : "");

    // What rounds to nothing is neither.
    private static string LessOrMore(double less, Look look) =>
        look.Percent(Math.Abs(less), 1) + (Math.Abs(less) < 0.0005 ? "" : less > 0 ? " less" : " more");

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
