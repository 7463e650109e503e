using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.Core.Cells;

public class OpenCircuitCurveTests
{
    [Fact]
    public void Every_chemistry_curve_rises_between_its_own_limits()
    {
        foreach (Chemistry chemistry in Chemistries.All)
        {
            Assert.Equal(chemistry.FullV, chemistry.Curve.FullV, 1e-9);
            Assert.Equal(chemistry.CutoffV, chemistry.Curve.EmptyV, 1e-9);
            for (double fraction = 0; fraction < 1; fraction += 0.01)
                Assert.True(chemistry.Curve.VoltsAt(fraction + 0.01) > chemistry.Curve.VoltsAt(fraction), $"{chemistry} at {fraction}");
        }
    }

    [Fact]
    public void Volts_and_charge_turn_back_into_one_another()
    {
        foreach (Chemistry chemistry in Chemistries.All)
            for (double fraction = 0.005; fraction < 1; fraction += 0.0137)
                Assert.Equal(fraction, chemistry.Curve.FractionAt(chemistry.Curve.VoltsAt(fraction)), 1e-6);
    }

    [Fact]
    public void Nominal_volts_lie_near_the_mean_of_the_curve()
    {
        foreach (Chemistry chemistry in Chemistries.All)
            Assert.InRange(chemistry.Curve.MeanVolts(0, 1) / chemistry.NominalV, 0.96, 1.08);
    }
}
