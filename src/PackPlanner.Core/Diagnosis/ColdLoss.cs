using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>How much of a pack's usable charge its temperature took, against 25 °C.</summary>
/// <param name="MeanDegC">Mean temperature of the log.</param>
/// <param name="LossPercent">Share of usable charge expected to come back in the warmth; 0 when the pack was warm.</param>
/// <param name="Cold">True when the pack was cold enough for its resistance to mislead.</param>
public sealed record ColdLoss(double MeanDegC, double LossPercent, bool Cold)
{
    /// <summary>The expected loss at a mean temperature, by the rule that usable energy goes by too.</summary>
    /// <param name="meanDegC">Degrees Celsius.</param>
    /// <param name="chemistry">The chemistry.</param>
    public static ColdLoss At(double meanDegC, Chemistry chemistry) =>
        new(meanDegC, 100 * (1 - ColdCapacity.Fraction(chemistry, meanDegC)), meanDegC < 10);
}
