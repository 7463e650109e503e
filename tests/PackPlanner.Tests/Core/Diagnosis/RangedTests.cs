using MathNet.Numerics.Distributions;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class RangedTests
{
    // One in twenty of a normal distribution lies beyond either end.
    [Theory]
    [InlineData(10.0, 0.5)]
    [InlineData(92.0, 0.03)]
    public void A_range_holds_nine_tenths_of_a_normal_error(double value, double sd)
    {
        Ranged plain = Ranged.Normal(value, sd), relative = Ranged.Relative(value, sd);

        Assert.Equal((value, value), (plain.Value, relative.Value));
        Assert.Equal(0.05, Normal.CDF(value, sd, plain.Low), tolerance: 1e-9);
        Assert.Equal(0.95, Normal.CDF(value, sd, plain.High), tolerance: 1e-9);
        Assert.Equal(sd, plain.Sigma, tolerance: 1e-12);
        Assert.Equal(0.05, LogNormal.CDF(Math.Log(value), sd, relative.Low), tolerance: 1e-9);
        Assert.Equal(0.95, LogNormal.CDF(Math.Log(value), sd, relative.High), tolerance: 1e-9);
    }
}
