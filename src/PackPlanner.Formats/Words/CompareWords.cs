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
            answer.UsableWh is { Then: { } then, Now: { } now } ? Invariant($"usable energy {then:0} Wh then, {now:0} Wh now ({100 * ((now / then) - 1):+0;-0;0} %).") : "usable energy cannot be told from both logs.",
            .. answer.RangeKm is { Then: { } kmThen, Now: { } kmNow } ? [Invariant($"range at the stated use, the cold left out: {kmThen:0.0} km then, {kmNow:0.0} km now.")] : Array.Empty<string>(),
            Lost(answer),
            .. answer.Causes.Select(c => Invariant($"  {c.Name,-8} {(c.WhShare is { } share ? Invariant($"{100 * share,5:+0.0;-0.0;0.0} %") : "      -")}  {c.Grounds}")),
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

    private static string Lost(CompareAnswer answer)
    {
        double? lost = answer.Causes.Any(c => c.WhShare is not null) ? answer.Causes.Sum(c => c.WhShare ?? 0) : null;
        return lost is { } share ? Invariant($"of the range then, {100 * Math.Abs(share):0.0} % {(share < 0 ? "was gained" : "is lost")}, as far as can be told; lost to") : "of the range then, what is lost cannot be told; lost to";
    }

    private static string Changed(ChangedJson? c, string format)
    {
        if (c is null)
            return "       -       -       -";
        string Text(double x) => x.ToString(format, System.Globalization.CultureInfo.InvariantCulture).PadLeft(8);
        string known = c.ChangeLow <= 0 && c.ChangeHigh >= 0 ? " (within its range)" : "";
        return Text(c.Then) + Text(c.Now) + Text(c.Change) + known;
    }
}
