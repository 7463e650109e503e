using MathNet.Numerics.Distributions;
using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.Core.Cells;

public sealed class NormalRangeTests
{
    // Against a general-purpose library: MathNet.Numerics, the inverse of its normal distribution.
    [Fact]
    public void Nine_normal_errors_in_ten_lie_within()
    {
        Assert.Equal(NormalRange.NinetyPercent, Normal.InvCDF(0, 1, 0.95), 12);
        Assert.Equal(0.9, Normal.CDF(0, 1, NormalRange.NinetyPercent) - Normal.CDF(0, 1, -NormalRange.NinetyPercent), 12);
    }
}
