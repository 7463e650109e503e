using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.Outside;

public class OpenCircuitTests
{
    // Source: [AboutEnergy2022] C/20 discharge at 25 °C, volts at even steps of charge left by linear interpolation
    // on the counted charge. Our curve moves the ends to 3.65 and 2.5 V, so the charge axis differs by under 1 %.
    [Theory]
    [InlineData(0.9, 3.3138)]
    [InlineData(0.7, 3.3067)]
    [InlineData(0.5, 3.2714)]
    [InlineData(0.3, 3.2578)]
    [InlineData(0.2, 3.2278)]
    public void Lfp_follows_the_measured_slow_discharge(double fraction, double volts) =>
        Assert.Equal(volts, Chemistries.Find("LFP")!.Curve.VoltsAt(fraction), 0.008);

    // Source: [AboutEnergy2022], as above for NMC111.
    [Theory]
    [InlineData(0.9, 4.0597)]
    [InlineData(0.7, 3.8311)]
    [InlineData(0.5, 3.6710)]
    [InlineData(0.3, 3.5933)]
    [InlineData(0.1, 3.4730)]
    public void Nmc_follows_the_measured_slow_discharge(double fraction, double volts) =>
        Assert.Equal(volts, Chemistries.Find("NMC")!.Curve.VoltsAt(fraction), 0.008);

    // Source: [Raj2020] mean of the slow charge and discharge of an NCA cell.
    [Theory]
    [InlineData(0.9, 4.0657)]
    [InlineData(0.7, 3.8695)]
    [InlineData(0.5, 3.6739)]
    [InlineData(0.3, 3.5558)]
    [InlineData(0.1, 3.3482)]
    public void Nca_follows_the_mean_of_charge_and_discharge(double fraction, double volts) =>
        Assert.Equal(volts, Chemistries.Find("nca")!.Curve.VoltsAt(fraction), 0.008);
}
