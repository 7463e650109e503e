using PackPlanner.Formats.Json;
using static System.FormattableString;

namespace PackPlanner.Formats.Words;

/// <summary>A comparison of two logs, for people.</summary>
public static class CompareWords
{
    /// <summary>Lines for people.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>Energy, causes, and each group.</returns>
    public static IReadOnlyList<string> Lines(CompareAnswer answer)
    {
        List<string> lines =
        [
            answer.UsableWh is { Then: { } then, Now: { } now } ? Invariant($"usable energy {then:0} Wh then, {now:0} Wh now: {LessOrMore(1 - (now / then))}.") : "usable energy cannot be told from both logs.",
            .. answer.RangeKm is { Then: { } kmThen, Now: { } kmNow } ? [Invariant($"range at the stated use, the cold left out: {kmThen:0.0} km then, {kmNow:0.0} km now.")] : Array.Empty<string>(),
            .. answer.Rides is { } rides ? [Ridden(rides)] : Array.Empty<string>(),
            Lost(answer),
            .. answer.Causes.Select(c => Invariant($"  {c.Name,-8} {Part(c, answer.Rides),-24}  {c.Grounds}")),
            "group    Ah then     now  change        mohm then     now  change",
        ];
        lines.AddRange(answer.Groups.Select(g => Invariant($"{g.Group,5}  {Changed(g.CapacityAh, "0.0")}     {Changed(g.ResistanceMilliohm, "0.00")}")));
        return lines;
    }

    /// <summary>One row a group.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(CompareAnswer answer) => new(
        ["group", "capacityThenAh", "capacityNowAh", "capacityChangeAh", "resistanceThenMilliohm", "resistanceNowMilliohm", "resistanceChangeMilliohm"],
        [.. answer.Groups.Select(g => new object?[]
        {
            g.Group, g.CapacityAh?.Then, g.CapacityAh?.Now, g.CapacityAh?.Change,
            g.ResistanceMilliohm?.Then, g.ResistanceMilliohm?.Now, g.ResistanceMilliohm?.Change,
        })]);

    // What was ridden need not be the whole range: a ride may end before the pack is empty.
    private static string Ridden(ComparedRidesJson rides) => Invariant(
        $"ridden then {rides.KmThen:0.#} km on {rides.DeliveredWhThen:0} Wh, {rides.WhPerKmThen:0.0} Wh/km; now {rides.KmNow:0.#} km on {rides.DeliveredWhNow:0} Wh, {rides.WhPerKmNow:0.0} Wh/km.");

    private static string Lost(CompareAnswer answer)
    {
        if (answer.Causes.All(c => c.WhShare is null))
            return "what of the range is lost cannot be told:";
        string lost = LessOrMore(answer.Causes.Sum(c => c.WhShare ?? 0));
        return answer.Rides is { RangeKmThen: { } then, RangeKmNow: { } now }
            ? Invariant($"range at the use of each ride, full to empty: {then:0.0} km then, {now:0.0} km now: {lost}; of it, one after the other:")
            : Invariant($"range, as far as can be told: {lost}; of it, one after the other:");
    }

    private static string Part(LossCauseJson cause, ComparedRidesJson? rides) => cause.WhShare is not { } share ? "-"
        : LessOrMore(share) + (rides?.RangeKmThen is { } km ? Invariant($", {LessOrMore(share * km, "km")}") : "");

    private static string LessOrMore(double share) => LessOrMore(100 * share, "%");

    // What rounds to nothing is neither.
    private static string LessOrMore(double less, string unit) =>
        Invariant($"{Math.Abs(less):0.0} {unit}{(Math.Abs(less) < 0.05 ? "" : less > 0 ? " less" : " more")}");

    private static string Changed(ChangedJson? c, string format)
    {
        if (c is null)
            return "       -       -       -";
        string Text(double x) => x.ToString(format, System.Globalization.CultureInfo.InvariantCulture).PadLeft(8);
        string known = c.ChangeLow <= 0 && c.ChangeHigh >= 0 ? " (within its range)" : "";
        return Text(c.Then) + Text(c.Now) + Text(c.Change) + known;
    }
}
