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

    private static double BleedA(JobGivens givens) => givens.NumberOf("balanceA") is { } known && known > 0 ? known : UsualA;
}
