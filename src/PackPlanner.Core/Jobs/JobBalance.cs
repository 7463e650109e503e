using PackPlanner.Core.Balancing;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Core.Jobs;

/// <summary>What to bleed or to add so that the groups of a log stand level.</summary>
public static class JobBalance
{
    /// <summary>Levelling at the top.</summary>
    /// <param name="diagnosis">What the log says of the groups.</param>
    /// <param name="bleedA">Current of each group's balancer, amperes.</param>
    /// <returns>The plan. A log tells only how the groups stand against one another: the fullest is taken as full.</returns>
    public static BalancingPlan Plan(RideDiagnosis diagnosis, double bleedA)
    {
        double fullest = diagnosis.Groups.Max(group => group.StateOfChargeOffset?.Value) ?? 0;
        return Balancer.Plan(new BalancingRequest([.. diagnosis.Groups.Select(group => Charge(diagnosis, group, fullest))], bleedA, 1, null, AtTop: true));
    }

    private static GroupCharge Charge(RideDiagnosis diagnosis, GroupDiagnosis group, double fullest) => new(
        group.Group, group.CapacityAh?.Value,
        group.StateOfChargeOffset is { } offset ? 1 + offset.Value - fullest : null,
        group.StateOfChargeOffset?.Sigma,
        NotToBeCharged: diagnosis.Cautions.Any(caution => SafetyHolds.Include(caution.Code) && SafetyHolds.Names(caution.Where, group.Group)))
    {
        CapacitySigmaAh = group.CapacityAh?.Sigma,
    };
}
