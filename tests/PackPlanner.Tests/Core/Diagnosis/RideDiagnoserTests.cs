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
}
