using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.Core.Cells;

public class CurveTellsTests
{
    // Three millivolts of reading, laid over the curve: that much more or less volts is one deviation more or less charge.
    [Theory]
    [InlineData("NMC", 3.9)]
    [InlineData("NMC", 4.1)]
    [InlineData("LFP", 3.0)]
    [InlineData("LTO", 2.3)]
    public void The_spread_of_a_charge_is_what_three_millivolts_make_on_the_curve(string name, double restV)
    {
        Chemistry chemistry = Chemistries.Find(name)!;

        (double fraction, double spread) = CurveTells.FractionAt(chemistry, restV)!.Value;

        double one = (chemistry.Curve.FractionAt(restV + 0.0003) - chemistry.Curve.FractionAt(restV - 0.0003)) / 0.0006 * 0.003;
        Assert.Equal(restV, chemistry.Curve.VoltsAt(fraction), tolerance: 1e-9);
        Assert.Equal(one, spread, one * 0.1);
    }
}
