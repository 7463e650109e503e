using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class ColdLossTests
{
    // Source: [LfpColdSheet]: LFP gives 80 % at 0 °C and 50 % at -20 °C. Source: [Nenadic2020]: others half a percent for each kelvin.
    // Usable energy goes by the same two: a log and a plan of one pack must not tell two figures.
    [Theory]
    [InlineData("LFP", 0, 20, true)]
    [InlineData("LFP", -20, 50, true)]
    [InlineData("NMC", 15, 5, false)]
    [InlineData("NMC", 9.9, 7.55, true)]
    [InlineData("LFP", 30, 0, false)]
    public void What_the_cold_takes_is_what_usable_energy_takes_off(string chemistry, double degC, double lossPercent, bool cold)
    {
        ColdLoss loss = ColdLoss.At(degC, Chemistries.Find(chemistry)!);

        Assert.Equal(lossPercent, loss.LossPercent, 1e-9);
        Assert.Equal(cold, loss.Cold);
        Assert.Equal(1 - loss.LossPercent / 100, ColdCapacity.Fraction(Chemistries.Find(chemistry)!, degC), 1e-12);
    }
}
