using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>A wire that reads wrong by a constant is found where the readings show it, and only there.</summary>
public class TapErrorsTests
{
    private static (PackModel Model, PackFit Fit) Pack(Func<int, double> errorV, double[]? charge = null)
    {
        const int groups = 6;
        DiagnosisColumns log = SmallPack.Log([.. Enumerable.Repeat(0.0, 20), .. Enumerable.Range(0, 330).Select(i => i / 7 % 3 == 0 ? 1.0 : 9.0), .. Enumerable.Repeat(0.0, 20)], groups);
        ChargeSlices slices = ChargeSlices.Of(log, ChargeCount.Of(log.TimeS, log.CurrentA, false, 10), 10, 240, 9);
        PackModel model = SmallPack.Model(slices, groups);
        double[] x = SmallPack.Plain(model, [9.3, 9.2, 9.3, 9.4, 9.3, 9.25], charge ?? [0.96, 0.955, 0.96, 0.958, 0.962, 0.96]);
        SmallPack.Say(model, x, errorV);
        PackFit fit = new(model, x);
        fit.Run(12, adaptFloors: true);
        return (model, fit);
    }

    [Theory]
    [InlineData(0.03)]
    [InlineData(-0.04)]
    public void A_tap_between_two_groups_is_found_with_its_error(double v)
    {
        (PackModel model, PackFit fit) = Pack(k => k == 2 ? v : k == 3 ? -v : 0);

        (PackModel with, PackFit freed, IReadOnlyList<(int A, int B, double Gain)> taps) = TapErrors.Try(model, fit);

        (int a, int b, double gain) = Assert.Single(taps);
        Assert.Equal((2, 3), (a, b));
        Assert.True(gain > 12);
        Assert.Equal(v, 0.01 * freed.X[with.TapAt], 0.004);
        Assert.Equal([(2, 3)], with.Taps);
        Assert.True(freed.Cost < fit.Cost - 12);
        // Their charges are those of the others again.
        Assert.Equal(0.96, freed.X[with.GroupAt(2) + 1], 0.012);
        Assert.Equal(0.958, freed.X[with.GroupAt(3) + 1], 0.012);
    }

    [Fact]
    public void A_sound_pack_and_one_that_stands_off_have_no_wrong_tap()
    {
        (PackModel sound, PackFit fit) = Pack(_ => 0);
        (PackModel off, PackFit fitOff) = Pack(_ => 0, [0.96, 0.955, 0.90, 0.958, 0.962, 0.96]);

        (_, PackFit stays, IReadOnlyList<(int A, int B, double Gain)> none) = TapErrors.Try(sound, fit);
        Assert.Empty(none);
        Assert.Same(fit, stays);
        Assert.Empty(TapErrors.Try(off, fitOff).Taps);
    }

    [Fact]
    public void The_tap_at_an_end_has_no_mirror()
    {
        (PackModel model, PackFit fit) = Pack(k => k == 5 ? 0.045 : 0);

        (PackModel with, PackFit freed, IReadOnlyList<(int A, int B, double Gain)> taps) = TapErrors.Try(model, fit);

        Assert.Equal((5, -1), (Assert.Single(taps).A, taps[0].B));
        Assert.Equal(0.045, 0.01 * freed.X[with.TapAt], 0.006);
    }
}
