using System.Globalization;
using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>Whether charger and controller suit a pack: cautions 31 and 32.</summary>
public static class ChargerCautions
{
    // Where nobody gave a limit the usual one of a warm room stands in; the cold has a caution of its own.
    private const double RoomDegC = 25;

    /// <summary>Caution 31.</summary>
    /// <param name="where">Where it is seen.</param>
    /// <param name="fullV">Volts of the pack at full charge.</param>
    /// <param name="controllerMaxV">Highest volts of the controller; null: unknown.</param>
    /// <returns>The caution, or null.</returns>
    public static Caution? Controller(string where, double? fullV, double? controllerMaxV) => fullV > controllerMaxV * (1 + 1e-9)
        ? new Caution("caution-31", SignalWord.Warning, where, string.Create(CultureInfo.InvariantCulture, $"{fullV:0.0} V at full charge, the controller allows {controllerMaxV:0.0} V"))
        : null;

    /// <summary>Caution 32, for the volts of a charger.</summary>
    /// <param name="fullV">Volts of the pack at full charge.</param>
    /// <param name="chargerV">End volts of the charger; null: unknown.</param>
    /// <returns>The caution, or null.</returns>
    public static Caution? Volts(double? fullV, double? chargerV) => chargerV > ChargerSettings.HighestOverFull * fullV
        ? new Caution("caution-32", SignalWord.Warning, "charger volts", string.Create(CultureInfo.InvariantCulture, $"the charger ends at {chargerV:0.0} V, the pack is full at {fullV:0.0} V"))
        : null;

    /// <summary>Caution 32, for the current of a charger.</summary>
    /// <param name="chargerA">Amperes of the charger; null: unknown.</param>
    /// <param name="groupA">What a group may be charged with, amperes; null: unknown.</param>
    /// <param name="because">Whose limit that is.</param>
    /// <returns>The caution, or null.</returns>
    public static Caution? Current(double? chargerA, double? groupA, string because) => chargerA > groupA * (1 + 1e-9)
        ? new Caution("caution-32", SignalWord.Warning, "charger current", string.Create(CultureInfo.InvariantCulture, $"{chargerA:0.#} A, a group takes {groupA:0.#} A ({because})"))
        : null;

    /// <summary>Those of a string.</summary>
    /// <param name="request">The string.</param>
    /// <param name="protection">Its charger, and what a cell takes.</param>
    /// <returns>The cautions raised.</returns>
    public static IEnumerable<Caution> Of(EnergyRequest request, StringProtection protection)
    {
        double fullV = request.Groups.Count * request.ChargedToV;
        SeriesGroup smallest = request.Groups.MinBy(group => group.CapacityAh)!;
        Caution? current = protection.CellChargeA is { } cellA && request.Groups.All(group => group.Parallel is not null)
            ? Current(protection.ChargerA, request.Groups.Min(group => group.Parallel) * cellA, "its cells' charging limit")
            : Current(protection.ChargerA, ChargeRates.PerHour(request.Chemistry, RoomDegC) * smallest.CapacityAh, "usual for its Ah; the data sheet comes first");
        return new[] { Controller("pack at full charge", fullV, request.ControllerMaxV), Volts(fullV, protection.ChargerV), current }.OfType<Caution>();
    }
}
