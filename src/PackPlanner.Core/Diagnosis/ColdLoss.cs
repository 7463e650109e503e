namespace PackPlanner.Core.Diagnosis;

/// <summary>How much of a pack's usable charge its temperature took, against 25 °C.</summary>
/// <param name="MeanDegC">Mean temperature of the log.</param>
/// <param name="LossPercent">Share of usable charge expected to come back in the warmth; 0 when the pack was warm.</param>
/// <param name="Cold">True when the pack was cold enough for its resistance to mislead.</param>
public sealed record ColdLoss(double MeanDegC, double LossPercent, bool Cold)
{
    // Source: [Nenadic2020] ± 1.5 % of capacity for ± 3 K about room temperature: half a percent for each kelvin.
    private const double PercentPerKelvin = 0.5;

    /// <summary>The expected loss at a mean temperature.</summary>
    /// <param name="meanDegC">Degrees Celsius.</param>
    public static ColdLoss At(double meanDegC) =>
        new(meanDegC, Math.Clamp(PercentPerKelvin * (25 - meanDegC), 0, 40), meanDegC < 10);
}
