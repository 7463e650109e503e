using PackPlanner.Core.Diagnosis;
using PackPlanner.Tests.Core.Diagnosis.Simulator;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>A start from the ends of the curve, for a fit that went to another valley.</summary>
public class AnchoredStartTests
{
    private static (PackEstimator.Estimate Good, double TruthAh) Ride()
    {
        SimulatedLog log = SimulatedScenario.Make(3, "nca-ride");
        PackGiven given = DiagnosisScore.Given(log);
        return (PackEstimator.Of(log.Columns, ChargeCount.Of(log.Columns, given), given, TestContext.Current.CancellationToken), log.Pack.MeanCapacityAh);
    }

    [Fact]
    public void Charge_read_off_the_curve_gives_capacity_within_a_tenth()
    {
        (PackEstimator.Estimate good, double truthAh) = Ride();

        (double logCapacity, double charge) = AnchoredStart.Read(good.Model)!.Value;

        Assert.Equal(1, good.Model.RatedAh * Math.Exp(logCapacity) / truthAh, 0.1);
        Assert.Equal(good.MedianCharge, charge, 0.06);
    }

    // A pack a fifth too large that begins a seventh of its charge lower: the curve bends after it, and the steps of a fit do not lead back. Valleys some percent apart are left to StretchedStarts.
    [Fact]
    public void A_fit_a_fifth_too_large_finds_back()
    {
        (PackEstimator.Estimate good, _) = Ride();
        double[] x = (double[])good.Fit.X.Clone();
        foreach (int at in Enumerable.Range(0, good.Model.Groups).Select(good.Model.GroupAt).Append(good.Model.MeanAt))
        {
            x[at] += 0.2;
            x[at + 1] -= 0.14;
        }
        PackFit far = new(good.Model, x);
        far.CopyFloors(good.Fit);
        far.Run(5, adaptFloors: false);

        PackFit? found = AnchoredStart.Better(good.Model, far);

        Assert.NotNull(found);
        Assert.Equal(good.Fit.X[good.Model.MeanAt], found.X[good.Model.MeanAt], 0.06);
        Assert.Null(AnchoredStart.Better(good.Model, good.Fit));
    }
}
