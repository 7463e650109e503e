using PackPlanner.Core.Balancing;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.LogScreen;

/// <summary>How far the groups of a log are out of step: what to bleed or to add, and the hours of it.</summary>
internal static class LogBalance
{
    // The small balancer that most monitors have; the verb balance takes the user's own figure. Common practice, no source.
    private const double BleedA = 0.06;
    private const double NinetyPercent = 1.6448536269514722;
    private static readonly string[] NeverCharge = ["caution-01", "caution-02", "caution-03", "caution-04", "caution-05", "caution-14"];

    internal static BalancingPlan Plan(RideDiagnosis diagnosis)
    {
        double fullest = diagnosis.Groups.Max(group => group.StateOfChargeOffset?.Value) ?? 0;
        return Balancer.Plan(new BalancingRequest([.. diagnosis.Groups.Select(group => Charge(diagnosis, group, fullest))], BleedA, 1, null, AtTop: true));
    }

    internal static IReadOnlyList<Column> Columns(BalancingPlan plan, Look look)
    {
        IReadOnlyList<GroupBalance> groups = plan.Groups;
        return
        [
            new("group", row => groups[row].Number.ToString(System.Globalization.CultureInfo.InvariantCulture), row => groups[row].Number, Rank: 0),
            new("bleed Ah", row => look.Figure(groups[row].RemoveAh, 2), row => groups[row].RemoveAh, Rank: 0),
            new("or add Ah", row => look.Figure(groups[row].AddAh, 2), row => groups[row].AddAh, Rank: 0),
            new("± Ah", row => look.Figure(groups[row].SpreadAh, 2), row => groups[row].SpreadAh, Rank: 2),
            new("h at 60 mA", row => look.Figure(groups[row].BleedHours, 1), row => groups[row].BleedHours, Rank: 1),
            new("note", row => groups[row].Reason?.Replace('-', ' ') ?? "", Rank: 1) { Stretches = true },
        ];
    }

    // Offsets say only how the groups stand against one another: the fullest is taken as full.
    private static GroupCharge Charge(RideDiagnosis diagnosis, GroupDiagnosis group, double fullest) => new(
        group.Group, group.CapacityAh?.Value,
        group.StateOfChargeOffset is { } offset ? 1 + offset.Value - fullest : null,
        group.StateOfChargeOffset is { } known ? (known.High - known.Low) / 2 / NinetyPercent : null,
        NotToBeCharged: diagnosis.Cautions.Any(caution => NeverCharge.Contains(caution.Code) && Names(caution.Where, group.Group)));

    private static bool Names(string where, int group) =>
        System.Text.RegularExpressions.Regex.IsMatch(where, $@"\b(group|cell) {group.ToString(System.Globalization.CultureInfo.InvariantCulture)}\b");
}
