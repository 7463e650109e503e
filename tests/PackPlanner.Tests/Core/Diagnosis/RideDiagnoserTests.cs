using PackPlanner.Core.Diagnosis;
using PackPlanner.Tests.Core.Diagnosis.Simulator;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>A few simulated packs of each sort; the table over many is a command of the benchmarks.</summary>
public class RideDiagnoserTests
{
    private static (DiagnosisScore Score, RideDiagnosis Diagnosis) Run(int seed, string kind)
    {
        SimulatedLog log = SimulatedScenario.Make(seed, kind);
        RideDiagnosis diagnosis = RideDiagnoser.Diagnose(DiagnosisScore.Ride(log.Columns), DiagnosisScore.Given(log), TestContext.Current.CancellationToken);
        return (DiagnosisScore.Of(kind, log.Truth, diagnosis, log.Columns.UsualStepS, log.Pack.Family == CurveFamily.Lfp), diagnosis);
    }

    [Theory]
    [InlineData(3, "nca-ride")]
    [InlineData(5, "lfp-ride")]
    public void Faults_of_simulated_packs_are_found_and_sound_groups_left_alone(int seed, string kind)
    {
        (DiagnosisScore score, _) = Run(seed, kind);

        Assert.Empty(score.Mistakes);
        Assert.True(score.Passes, score.ToString());
    }

    [Theory]
    [InlineData(12, "lfp-plateau")]
    [InlineData(13, "lfp-top")]
    public void A_log_that_does_not_hold_capacities_says_so_of_every_group(int seed, string kind)
    {
        (_, RideDiagnosis diagnosis) = Run(seed, kind);

        Assert.False(diagnosis.CapacityTold);
        Assert.All(diagnosis.Groups, g => Assert.Contains(g.Findings, f => f.Kind == FindingKind.CannotTell && f.SettleBy.Length > 0));
        Assert.All(diagnosis.Groups, g => Assert.DoesNotContain(g.Findings, f => f.Kind == FindingKind.LowCapacity));
        Assert.All(diagnosis.Groups, g => Assert.NotNull(g.ResistanceMilliohm));
    }

    [Fact]
    public void The_same_log_gives_the_same_figures_to_the_last_bit()
    {
        (_, RideDiagnosis first) = Run(12, "lfp-plateau");
        (_, RideDiagnosis second) = Run(12, "lfp-plateau");

        Assert.Equal(first.Groups.Select(g => g.CapacityAh), second.Groups.Select(g => g.CapacityAh));
        Assert.Equal(first.Groups.Select(g => g.StateOfChargeOffset), second.Groups.Select(g => g.StateOfChargeOffset));
    }

    [Fact]
    public void A_log_without_current_is_refused()
    {
        RideLog log = new() { TimeS = [0, 1, 2], CurrentA = null, GroupV = [[4, 4, 4]], Source = "test" };
        PackGiven given = DiagnosisScore.Given(SimulatedScenario.Make(0));

        Assert.Throws<ArgumentException>(() => RideDiagnoser.Diagnose(log, given, TestContext.Current.CancellationToken));
    }

    // A pack eight percent too large, its charges stretched to match and its curve bent after it, is a valley of its own or on the slope to one.
    [Fact]
    public void A_fit_in_a_far_valley_finds_back()
    {
        SimulatedLog log = SimulatedScenario.Make(3, "nca-ride");
        PackGiven given = DiagnosisScore.Given(log);
        PackEstimator.Estimate good = PackEstimator.Of(log.Columns, ChargeCount.Of(log.Columns, given), given, TestContext.Current.CancellationToken);
        double[] x = (double[])good.Fit.X.Clone();
        double lowest = Enumerable.Range(0, good.Model.Slices.Pieces.Length).Min(i => good.Fit.ChargeAt(i, 0));
        foreach (int at in Enumerable.Range(0, good.Model.Groups).Select(k => good.Model.GroupAt(k)).Append(good.Model.MeanAt))
        {
            x[at] += 0.08;
            x[at + 1] = lowest + ((x[at + 1] - lowest) * Math.Exp(-0.08));
        }
        PackFit far = new(good.Model, x);
        far.CopyFloors(good.Fit);
        far.Run(1, adaptFloors: false);

        (PackFit found, double valleySd) = StretchedStarts.Best(good.Model, far);

        Assert.True(found.Judgement < far.Judgement - 10, $"{found.Judgement} after {far.Judgement}");
        Assert.Equal(good.Fit.X[good.Model.MeanAt], found.X[good.Model.MeanAt], 0.02);
        Assert.InRange(valleySd, 0, 0.03);
    }
}
