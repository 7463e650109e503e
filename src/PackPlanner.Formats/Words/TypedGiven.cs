using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using UnitsNet;

namespace PackPlanner.Formats.Words;

/// <summary>Reads a given as people type it. The key or the line names the unit, so a bare number is enough, except for a share.</summary>
public static class TypedGiven
{
    /// <summary>Reads one value.</summary>
    /// <param name="entry">What is being told.</param>
    /// <param name="typed">What was typed; empty or - means unknown.</param>
    /// <param name="percentBeside">True where % stands beside the field, so that a bare share is per cent.</param>
    /// <param name="value">The value in the entry's unit; null for unknown, or when it was refused.</param>
    /// <returns>Why it was refused; null when it was read.</returns>
    public static string? Read(GivenEntry entry, string typed, bool percentBeside, out JobValue? value)
    {
        value = null;
        string text = typed.Trim();
        if (text is "" or "-")
            return null;
        switch (entry.Kind)
        {
            case GivenKind.Words:
                value = new JobValue.Word(text);
                return null;
            case GivenKind.Chemistry:
                value = Chemistries.Find(text) is { } chemistry ? new JobValue.Word(chemistry.Name) : null;
                return value is null ? $"\"{text}\" is none of {string.Join(", ", Chemistries.All.Select(known => known.Name))}" : null;
            case GivenKind.YesNo:
                value = Tick(text) is { } ticked ? new JobValue.YesNo(ticked) : null;
                return value is null ? $"\"{text}\" is neither yes nor no" : null;
            default:
                if (Number(entry, text, percentBeside, out double number) is { } why)
                    return why;
                value = new JobValue.Number(number);
                return null;
        }
    }

    /// <summary>The unit in which a kind is kept and shown.</summary>
    /// <param name="kind">The kind.</param>
    /// <returns>Its symbol; empty where there is none.</returns>
    public static string UnitOf(GivenKind kind) => kind switch
    {
        GivenKind.AmpereHours => "Ah",
        GivenKind.Volts => "V",
        GivenKind.Amperes => "A",
        GivenKind.WattHoursPerKm => "Wh/km",
        GivenKind.Milliohm => "mohm",
        GivenKind.Ohm => "ohm",
        GivenKind.DegC => "degC",
        GivenKind.Fraction => "%",
        GivenKind.Kilograms => "kg",
        GivenKind.Kilometres => "km",
        GivenKind.Metres => "m",
        GivenKind.Millimetres => "mm",
        GivenKind.Millifarads => "mF",
        GivenKind.Seconds => "s",
        _ => "",
    };

    private static bool? Tick(string text) => text.ToUpperInvariant() switch
    {
        "YES" or "Y" or "TRUE" or "ON" or "1" => true,
        "NO" or "N" or "FALSE" or "OFF" or "0" => false,
        _ => null,
    };

    private static string? Number(GivenEntry entry, string text, bool percentBeside, out double number)
    {
        if (!TypedQuantity.Split(text, out number, out string unit))
            return $"\"{text}\" is not a number; write it with a decimal point and no thousands mark";
        string why = "";
        if (unit.Length > 0 && !unit.Equals(UnitOf(entry.Kind), StringComparison.OrdinalIgnoreCase))
        {
            if (InUnit(entry.Kind, text, out why) is not { } converted)
                return why.Length > 0 ? why : $"\"{text}\" has the unit {unit}; {UnitOrNone(entry.Kind)} was expected";
            // The conversion leaves a residue in the last digits (5000 mAh gives 5.000000000000001 Ah); nobody types twelve.
            number = double.Parse(converted.ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        }
        else if (entry.Kind == GivenKind.Fraction)
        {
            if (unit.Length == 0 && !percentBeside)
                return $"\"{text}\" could be a share or per cent; write {text}%";
            number /= 100;
        }

        // With nought every spread is nought, and no cell would ever be held for being near a limit.
        if (entry.Key == "repeatability" && number == 0)
            return "no tester repeats exactly; write such as 1.5%, or - if you do not know";

        return OutOfRange(entry.Kind, number);
    }

    /// <summary>Whether a figure can be what a kind means, wherever it comes from.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="number">The figure in the kind's unit.</param>
    /// <returns>Why it cannot; null when it can.</returns>
    public static string? OutOfRange(GivenKind kind, double number) => kind switch
    {
        GivenKind.Count when number < 1 || number > 10_000 || number % 1 != 0 => "a whole number from 1 to 10000 was expected",
        GivenKind.Fraction when number is < 0 or > 1 => "a share from 0 to 100 % was expected",
        GivenKind.DegC when number is < -60 or > 100 => "a temperature from -60 to 100 degC was expected",
        GivenKind.DegC or GivenKind.Count or GivenKind.Fraction => null,
        _ when number < 0 => "it cannot be below zero",
        _ => null,
    };

    private static double? InUnit(GivenKind kind, string text, out string why)
    {
        why = "";
        return kind switch
        {
            GivenKind.AmpereHours => As<ElectricCharge>(text, "a charge", "5Ah", out why)?.AmpereHours,
            GivenKind.Volts => As<ElectricPotential>(text, "a voltage", "4.2V", out why)?.Volts,
            GivenKind.Amperes => As<ElectricCurrent>(text, "a current", "22A", out why)?.Amperes,
            GivenKind.Milliohm => As<ElectricResistance>(text, "a resistance", "0.2mohm", out why)?.Milliohms,
            GivenKind.Ohm => As<ElectricResistance>(text, "a resistance", "500kohm", out why)?.Ohms,
            GivenKind.WattHoursPerKm => EachMile(text),
            GivenKind.DegC => As<Temperature>(text, "a temperature", "8degC", out why)?.DegreesCelsius,
            GivenKind.Kilograms => As<Mass>(text, "a mass", "11kg", out why)?.Kilograms,
            GivenKind.Kilometres => As<Length>(text, "a length", "41km", out why)?.Kilometers,
            GivenKind.Metres => As<Length>(text, "a length", "2m", out why)?.Meters,
            GivenKind.Millimetres => As<Length>(text, "a length", "21.2mm", out why)?.Millimeters,
            GivenKind.Millifarads => As<ElectricCapacitance>(text, "a capacitance", "1.5mF", out why)?.Millifarads,
            GivenKind.Seconds => As<Duration>(text, "a time", "20s", out why)?.Seconds,
            _ => null,
        };
    }

    private static double? EachMile(string text) =>
        TypedQuantity.Split(text, out double number, out string unit) && unit.ToUpperInvariant() is ("WH/MILE" or "WH/MI") ? number / 1.609344 : null;

    private static TQuantity? As<TQuantity>(string text, string wanted, string example, out string why)
        where TQuantity : struct, IQuantity =>
        TypedQuantity.TryRead(text, wanted, example, out TQuantity quantity, out why) ? quantity : null;

    private static string UnitOrNone(GivenKind kind) => UnitOf(kind) is { Length: > 0 } unit ? unit : "none";
}
