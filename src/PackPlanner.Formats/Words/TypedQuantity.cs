using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

namespace PackPlanner.Formats.Words;

/// <summary>Figures with units as people type them: 40A, 1.5 kW, 8degC, 10%, 38Wh/km, 0.2mohm, 2,850 is refused.</summary>
/// <remarks>
/// Number and unit are split here, because a general parser takes "1,5" for 15 and "NaN" for a number. Units are
/// converted by UnitsNet. A bare number is taken only where the caller allows it.
/// </remarks>
public static class TypedQuantity
{
    private static readonly NumberFormatInfo Point = new() { NumberDecimalSeparator = ".", NumberGroupSeparator = "\u0001" };

    // The micro sign, the Greek mu, both omegas and the spellings that builders type.
    private static readonly Dictionary<string, Enum> Units = new(StringComparer.Ordinal)
    {
        ["A"] = ElectricCurrentUnit.Ampere,
        ["a"] = ElectricCurrentUnit.Ampere,
        ["mA"] = ElectricCurrentUnit.Milliampere,
        ["ma"] = ElectricCurrentUnit.Milliampere,
        ["kA"] = ElectricCurrentUnit.Kiloampere,
        ["amp"] = ElectricCurrentUnit.Ampere,
        ["amps"] = ElectricCurrentUnit.Ampere,
        ["V"] = ElectricPotentialUnit.Volt,
        ["v"] = ElectricPotentialUnit.Volt,
        ["mV"] = ElectricPotentialUnit.Millivolt,
        ["mv"] = ElectricPotentialUnit.Millivolt,
        ["W"] = PowerUnit.Watt,
        ["w"] = PowerUnit.Watt,
        ["kW"] = PowerUnit.Kilowatt,
        ["kw"] = PowerUnit.Kilowatt,
        ["hp"] = PowerUnit.MechanicalHorsepower,
        ["Ah"] = ElectricChargeUnit.AmpereHour,
        ["ah"] = ElectricChargeUnit.AmpereHour,
        ["mAh"] = ElectricChargeUnit.MilliampereHour,
        ["mah"] = ElectricChargeUnit.MilliampereHour,
        ["AH"] = ElectricChargeUnit.AmpereHour,
        ["MAH"] = ElectricChargeUnit.MilliampereHour,
        ["Wh"] = EnergyUnit.WattHour,
        ["wh"] = EnergyUnit.WattHour,
        ["kWh"] = EnergyUnit.KilowattHour,
        ["kwh"] = EnergyUnit.KilowattHour,
        ["ohm"] = ElectricResistanceUnit.Ohm,
        ["Ohm"] = ElectricResistanceUnit.Ohm,
        ["\u03A9"] = ElectricResistanceUnit.Ohm,
        ["\u2126"] = ElectricResistanceUnit.Ohm,
        ["mohm"] = ElectricResistanceUnit.Milliohm,
        ["mOhm"] = ElectricResistanceUnit.Milliohm,
        ["m\u03A9"] = ElectricResistanceUnit.Milliohm,
        ["m\u2126"] = ElectricResistanceUnit.Milliohm,
        ["milliohm"] = ElectricResistanceUnit.Milliohm,
        ["uohm"] = ElectricResistanceUnit.Microohm,
        ["\u00B5\u03A9"] = ElectricResistanceUnit.Microohm,
        ["kohm"] = ElectricResistanceUnit.Kiloohm,
        ["Mohm"] = ElectricResistanceUnit.Megaohm,
        ["mF"] = ElectricCapacitanceUnit.Millifarad,
        ["uF"] = ElectricCapacitanceUnit.Microfarad,
        ["\u00B5F"] = ElectricCapacitanceUnit.Microfarad,
        ["degC"] = TemperatureUnit.DegreeCelsius,
        ["°C"] = TemperatureUnit.DegreeCelsius,
        ["C"] = TemperatureUnit.DegreeCelsius,
        ["degF"] = TemperatureUnit.DegreeFahrenheit,
        ["°F"] = TemperatureUnit.DegreeFahrenheit,
        ["F"] = TemperatureUnit.DegreeFahrenheit,
        ["K"] = TemperatureUnit.Kelvin,
        ["%"] = RatioUnit.Percent,
        ["percent"] = RatioUnit.Percent,
        ["mm"] = LengthUnit.Millimeter,
        ["cm"] = LengthUnit.Centimeter,
        ["m"] = LengthUnit.Meter,
        ["in"] = LengthUnit.Inch,
        ["km"] = LengthUnit.Kilometer,
        ["mi"] = LengthUnit.Mile,
        ["mile"] = LengthUnit.Mile,
        ["miles"] = LengthUnit.Mile,
        ["kg"] = MassUnit.Kilogram,
        ["g"] = MassUnit.Gram,
        ["lb"] = MassUnit.Pound,
        ["lbs"] = MassUnit.Pound,
        ["oz"] = MassUnit.Ounce,
        ["s"] = DurationUnit.Second,
        ["sec"] = DurationUnit.Second,
        ["min"] = DurationUnit.Minute,
        ["h"] = DurationUnit.Hour,
        ["ms"] = DurationUnit.Millisecond,
        ["day"] = DurationUnit.Day,
        ["days"] = DurationUnit.Day,
        ["km/h"] = SpeedUnit.KilometerPerHour,
        ["mph"] = SpeedUnit.MilePerHour,
    };

    /// <summary>Reads a figure with a unit.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="wanted">What kind of quantity is wanted, in words for the message, for example "a current".</param>
    /// <param name="example">An example that would be taken, for example 40A.</param>
    /// <param name="quantity">The figure.</param>
    /// <param name="why">Why it was refused.</param>
    /// <returns>True when it was read.</returns>
    /// <typeparam name="TQuantity">The physical quantity.</typeparam>
    public static bool TryRead<TQuantity>(
        string typed, string wanted, string example, out TQuantity quantity, out string why)
        where TQuantity : struct, IQuantity
    {
        quantity = default;
        if (!Split(typed, out double number, out string unit))
        {
            why = $"\"{typed}\" is not {wanted}; a number and a unit were expected, such as {example}";
            return false;
        }

        if (unit.Length == 0)
        {
            why = $"\"{typed}\" has no unit; {wanted} such as {example} was expected";
            return false;
        }

        // Beyond that the conversion of powers, which counts in decimals, would overflow; no figure of a pack is near.
        if (Math.Abs(number) > 1e15)
        {
            why = $"\"{typed}\" is too large a figure; expected something like {example}";
            return false;
        }

        if (!Units.TryGetValue(unit, out Enum? known) || Quantity.From(number, known) is not TQuantity right)
        {
            why = $"\"{typed}\" is not {wanted}; expected something like {example}";
            return false;
        }

        quantity = right;
        why = "";
        return true;
    }

    /// <summary>Splits a typed figure into number and unit; decimal point only, no thousands marks.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="number">The finite number.</param>
    /// <param name="unit">What follows it, without spaces; empty when nothing does.</param>
    /// <returns>False when it does not begin with one finite number.</returns>
    public static bool Split(string typed, out double number, out string unit)
    {
        string text = typed.Trim();
        int end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '.' or '+' or '-' || IsExponent(text, end)))
            end++;
        unit = text[end..].Trim();
        return double.TryParse(text.AsSpan(0, end), NumberStyles.Float, Point, out number)
            && LargestFigure.Allows(number)
            && !unit.StartsWith(',');
    }

    private static bool IsExponent(string text, int at) =>
        text[at] is 'e' or 'E' && at > 0 && at + 1 < text.Length
        && (char.IsAsciiDigit(text[at + 1]) || (text[at + 1] is '-' or '+' && at + 2 < text.Length && char.IsAsciiDigit(text[at + 2])));
}
