namespace PackPlanner.Core.UsableEnergy;

/// <summary>What a charger is set to. The cells' own data sheet comes first.</summary>
/// <param name="PackV">End volts of the pack.</param>
/// <param name="CurrentA">Charging current, amperes.</param>
/// <param name="TaperA">The charge ends below this, amperes.</param>
/// <param name="Hours">From empty, about.</param>
/// <param name="HighestA">Most that the temperature of the charge allows, amperes; null where the temperature is unknown or only the data sheet can say.</param>
public sealed record ChargerSettings(double PackV, double CurrentA, double TaperA, double Hours, double? HighestA)
{
    /// <summary>End volts of a charger over those of the full pack from which on they are too high. Common practice, no source.</summary>
    public const double HighestOverFull = 1.005;

    // The tail at constant volts. Common practice, no source.
    private const double TailHours = 0.5;

    /// <summary>Works them out; the smallest group sets them.</summary>
    /// <param name="request">The string.</param>
    /// <param name="protection">The charger and the temperature of the charge; without that the ride's own is taken.</param>
    /// <returns>The settings; null without a charger.</returns>
    public static ChargerSettings? Of(EnergyRequest request, StringProtection protection)
    {
        if (protection.ChargerA is not { } chargerA)
            return null;
        double leastAh = request.Groups.Min(group => group.CapacityAh);
        double? degC = protection.ChargeDegC ?? request.TemperatureDegC;
        return new ChargerSettings(
            request.Groups.Count * request.ChargedToV, chargerA, ChargeRates.TaperPerHour(request.Chemistry) * leastAh, (leastAh / chargerA) + TailHours,
            degC is { } known ? ChargeRates.PerHour(request.Chemistry, known) * leastAh : null);
    }
}
