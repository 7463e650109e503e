using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>From which window on a log tells capacities, on both sides of each limit.</summary>
public class IdentifiabilityTests
{
    /// <summary>An hour drawn at 9 A, 9 Ah in all, of groups that hold and stand as given.</summary>
    private static PackEstimator.Estimate Ride(double[] capacityAh, double[] charge, string chemistry = "NMC", double amps = 9)
    {
        DiagnosisColumns log = SmallPack.Log([.. Enumerable.Repeat(0.0, 30), .. Enumerable.Repeat(amps, 360), .. Enumerable.Repeat(0.0, 30)], capacityAh.Length);
        PackModel model = SmallPack.Model(SmallPack.Slices(log), capacityAh.Length, chemistry: chemistry);
        return SmallPack.Estimate(model, SmallPack.Plain(model, capacityAh, charge));
    }

    // Seventy percent of charge, five less for the doubt: 8.98 Ah drawn (half a step is lost at each end) of 13.8 Ah are 65.1 %.
    [Theory]
    [InlineData(13.7, true)]
    [InlineData(14.1, false)]
    public void A_sloping_curve_needs_two_thirds_of_the_charge_of_the_group_that_ends_the_ride(double ah, bool told)
    {
        Identifiability of = Identifiability.Of(Ride([ah, ah + 2, ah + 2], [0.9, 0.95, 0.95]), flat: false);

        Assert.Equal(told, of.Told);
        Assert.Equal(9 / ah, of.Window, 0.01);
        Assert.Equal([9 / ah, 9 / (ah + 2), 9 / (ah + 2)], of.Windows, (a, b) => Math.Abs(a - b) < 0.01);
        Assert.Equal(told, of.Reason is null);
        if (!told)
            Assert.StartsWith("the log covers 64 % of the charge of the group that ends it (group 1 was followed from about 90 % to 26 % of charge); capacity needs 70 %", of.Reason, StringComparison.Ordinal);
    }

    // On a charge it is the group that is full first.
    [Fact]
    public void A_charge_is_ended_by_the_group_that_is_full_first()
    {
        Identifiability of = Identifiability.Of(Ride([11, 10, 12], [0.08, 0.06, 0.02], amps: -9), flat: false);

        Assert.True(of.Told);
        Assert.Equal(0.9, of.Window, 0.01);
        Assert.StartsWith("the log covers 60 %", Identifiability.Of(Ride([15, 16, 17], [0.06, 0.08, 0.02], amps: -9), flat: false).Reason, StringComparison.Ordinal);
        Assert.Contains("group 1 was followed from about 66 % to 6 %", Identifiability.Of(Ride([15, 16, 17], [0.06, 0.08, 0.02], amps: -9), flat: false).Reason, StringComparison.Ordinal);
    }

    // Both knees: above 96.8 % and below 12 %.
    [Theory]
    [InlineData(0.97, 0.11, null)]
    [InlineData(0.966, 0.11, "the log does not reach the knee near full")]
    [InlineData(0.97, 0.13, "the log does not reach the knee near empty")]
    [InlineData(0.966, 0.13, "the log stays on the flat part of the curve")]
    public void A_flat_curve_needs_both_knees(double high, double low, string? reason)
    {
        double ah = 9 / (high - low);

        Identifiability of = Identifiability.Of(Ride([ah, ah + 0.2, ah + 0.2], [high, high, high], "LFP"), flat: true);

        Assert.Equal(reason is null, of.Told);
        Assert.StartsWith(reason ?? "", of.Reason ?? "", StringComparison.Ordinal);
        Assert.Equal(high - low, of.Window, 0.01);
    }

    // The group that ends the ride may itself have begun lower, as long as the middle group met the upper knee.
    [Fact]
    public void The_upper_knee_may_be_met_by_the_middle_group()
    {
        Assert.True(Identifiability.Of(Ride([9.2, 10, 10], [0.95, 0.99, 0.99], "LFP"), flat: true).Told);
        Assert.False(Identifiability.Of(Ride([9.2, 10, 10], [0.95, 0.95, 0.99], "LFP"), flat: true).Told);
    }
}
