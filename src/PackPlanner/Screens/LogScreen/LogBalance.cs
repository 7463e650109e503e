using PackPlanner.Core.Balancing;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.LogScreen;

/// <summary>How far the groups of a log are out of step: what to bleed or to add, and the hours of it.</summary>
internal static class LogBalance
{
    // The small balancer that most monitors have, until the user says his own. Common practice, no source.
    private const double UsualA = 0.06;

    internal static BalancingPlan Plan(RideDiagnosis diagnosis, JobGivens givens) => JobBalance.Plan(diagnosis, BleedA(givens));

    internal static IReadOnlyList<Column> Columns(BalancingPlan plan, JobGivens givens, Look look)
    {
        string milliamperes = look.Figure(BleedA(givens) * 1000, 0);
        IReadOnlyList<GroupBalance> groups = plan.Groups;
        return
        [
            new("group", row => groups[row].Number.ToString(System.Globalization.CultureInfo.InvariantCulture), row => groups[row].Number, Rank: 0),
            new("bleed Ah", row => look.Figure(groups[row].RemoveAh, 2), row => groups[row].RemoveAh, Rank: 0),
            new("or add Ah", row => look.Figure(groups[row].AddAh, 2), row => groups[row].AddAh, Rank: 0),
            new("± Ah", row => look.Figure(groups[row].SpreadAh, 2), row => groups[row].SpreadAh, Rank: 2),
            new($"h at {milliamperes} mA", row => look.Figure(groups[row].BleedHours, 1), row => groups[row].BleedHours, Rank: 1),
            new("h from to", row => groups[row].BleedRange is { } range ? $"{look.Figure(range.Low, 1)} {look.Figure(range.High, 1)}" : "", row => groups[row].BleedRange?.High, Rank: 3),
            new("note", row => groups[row].Reason?.Replace('-', ' ') ?? "", Rank: 1) { Stretches = true },
        ];
    }

    /// <summary>How far a group lies from full, and what that means beside the others.</summary>
    /// <param name="diagnosis">What the log says of the groups.</param>
    /// <param name="givens">The current of a balancer, where it is said.</param>
    /// <param name="row">The group's row.</param>
    /// <param name="look">Figures and units.</param>
    internal static WhereFrom WhereFrom(RideDiagnosis diagnosis, JobGivens givens, int row, Look look)
    {
        GroupBalance group = Plan(diagnosis, givens).Groups[row];
        string told = group.Reason is { } reason ? $"not told: {reason.Replace('-', ' ')}"
            : $"{look.Figure(group.RemoveAh, 2)} Ah down to the group that lacks most, or {look.Figure(group.AddAh, 2)} Ah up to the one that lacks least; ± {look.Figure(group.SpreadAh, 2)} Ah, half a 90 % range";
        double fullest = diagnosis.Groups.Max(other => other.StateOfChargeOffset?.Value) ?? 0;
        string stands = diagnosis.Groups[row] is { StateOfChargeOffset: { } offset, CapacityAh: { } capacity }
            ? $"{look.Figure(100 * (fullest - offset.Value), 2)} % of charge below the fullest group, of {look.Figure(capacity.Value, 1)} Ah: lacks {look.Figure((fullest - offset.Value) * capacity.Value, 2)} Ah to full"
            : "its charge or its Ah cannot be told from this log";
        return new WhereFrom($"what balances group {group.Number}",
        [
            ("read", stands),
            ("so", told),
            ("time", group.BleedHours is { } hours ? $"{look.Figure(hours, 1)} h at {look.Figure(BleedA(givens) * 1000, 0)} mA ({(givens.NumberOf("balanceA") is > 0 ? "as you said" : "a usual balancer; e says yours")})" : "not told"),
            ("rule", "levelled at the top; the fullest group is taken as full; hours are Ah over amperes"),
            ("rule", "docs/methods/balancing.md"),
        ]);
    }

    private static double BleedA(JobGivens givens) => givens.NumberOf("balanceA") is { } known && known > 0 ? known : UsualA;
}
