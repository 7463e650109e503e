using PackPlanner.Core.Balancing;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>The answer of <c>balance</c> as JSON, as lines and as a table.</summary>
public static class BalanceWords
{
    /// <summary>Fills the answer.</summary>
    /// <param name="plan">What came out.</param>
    /// <param name="other">The same groups levelled at the other end.</param>
    /// <param name="atTop">Levelled full, or empty.</param>
    /// <param name="largestInrushA">Largest current on joining all groups side by side; null when unknown.</param>
    /// <param name="driftAhPerMonth">How far the groups drift apart in a month; null when unknown.</param>
    /// <returns>The answer without cautions.</returns>
    public static BalanceAnswer Answer(BalancingPlan plan, BalancingPlan other, bool atTop, double? largestInrushA, double? driftAhPerMonth) => new(
        [.. plan.Groups.Select(group => new BalanceGroupJson(group.Number, group.RemoveAh, group.AddAh, group.SpreadAh, plan.ByBleeding switch
        {
            true => group.BleedHours,
            false => group.ChargeHours,
            null => null,
        }, group.Reason, Range(plan.ByBleeding switch { true => group.BleedRange, false => group.ChargeRange, null => null })))],
        plan.Hours,
        plan.ByBleeding switch { true => "bleed", false => "charge", null => null },
        plan.BleedHours,
        plan.ChargeHours,
        Level(atTop),
        other is { Hours: { } hours, ByBleeding: { } bleeds } ? new OtherLevelJson(Level(!atTop), hours, bleeds ? "bleed" : "charge") : null,
        plan.Hours is { } here && other.Hours is { } there ? Math.Abs(here - there) < 1e-9 * Math.Max(1, here) ? "same" : Level(atTop == here < there) : null,
        driftAhPerMonth,
        Range(plan.Range),
        plan.Parallel is { } parallel ? new ParallelTopBalanceJson(parallel.ChargeAh, parallel.LeastHours, parallel.StopBelowA, largestInrushA) : null);

    /// <summary>Lines for people.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The lines.</returns>
    public static IReadOnlyList<string> Lines(BalanceAnswer answer)
    {
        List<string> lines = [];
        string range = answer.HoursRange is { } hours90 ? $" ({Figures.Digits(hours90.Low, 3)} to {Figures.Digits(hours90.High, 3)} h nine times in ten)" : "";
        string quicker = answer.BleedHours is not null && answer.ChargeHours is not null ? ", the quicker of the two" : "";
        lines.Add(answer.Method switch
        {
            "bleed" => $"Bleeding takes {Figures.Digits(answer.Hours, 3)} h{range}{quicker}.",
            "charge" => $"Charging group by group takes {Figures.Digits(answer.Hours, 3)} h{range}{quicker}, each held to the limit of one group.",
            _ => answer.Groups.All(group => group.RemoveAh is null) ? "It cannot be told how far the groups are out of step." : "Give --bleed or --charger for the hours.",
        });
        int untold = answer.Groups.Count(group => group.RemoveAh is null);
        if (answer.Method is not null && untold > 0)
            lines.Add($"{untold} of {answer.Groups.Count} groups could not be told or are left out: the hours are those of the others.");
        if (answer.OtherLevel is { } other)
            lines.Add($"That is at the {answer.Level}; at the {other.Level} it would take {Figures.Digits(other.Hours, 3)} h ({other.Method}){(answer.QuickerLevel == "same" ? ", the same" : $": the {answer.QuickerLevel} is quicker")}. Charging ends at the top, riding at the bottom: level the end that ends yours too soon.");
        lines.Add("  group   bleed Ah     or add Ah   +/- Ah    hours");
        lines.AddRange(answer.Groups.Select(group =>
            $"  {group.Group,5} {Figures.Digits(group.RemoveAh, 3),10} {Figures.Digits(group.AddAh, 3),13} {Figures.Digits(group.SpreadAh, 2),8} {Figures.Digits(group.Hours, 3),8}{(group.Reason is null ? "" : "  " + group.Reason)}"));
        if (answer.DriftAhPerMonth is { } driftAh)
            lines.Add($"By what they lose at rest the groups drift {Figures.Digits(driftAh, 2)} Ah apart each month.");
        if (answer.ParallelTopBalance is { } parallel)
        {
            string time = parallel.LeastHours is { } hours ? $", at least {Figures.Digits(hours, 3)} h, ended below {Figures.Digits(parallel.StopBelowA, 2)} A at the limit's volts at the cells" : "";
            lines.Add($"Or all side by side: {Figures.Digits(parallel.ChargeAh, 3)} Ah{time}; largest current on joining them: {Figures.Digits(parallel.LargestInrushA, 3)} A.");
        }

        return lines;
    }

    private static RangeJson? Range(HoursRange? range) => range is null ? null : new RangeJson(range.Low, range.High);

    private static string Level(bool atTop) => atTop ? "top" : "bottom";

    /// <summary>One row for each group.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(BalanceAnswer answer) => new(
        ["group", "removeAh", "addAh", "spreadAh", "hours", "reason", "hoursLow", "hoursHigh"],
        [
            .. answer.Groups.Select(group => (IReadOnlyList<object?>)
                [group.Group, group.RemoveAh, group.AddAh, group.SpreadAh, group.Hours, group.Reason, group.HoursRange?.Low, group.HoursRange?.High]),
        ]);
}
