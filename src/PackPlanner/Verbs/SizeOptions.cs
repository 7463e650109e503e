using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>The fields of a sizing need as options: the same names and limits as in the file, only typed with units.</summary>
internal static class SizeOptions
{
    private static readonly IReadOnlyList<Field> Fields =
    [
        Text("--cell", "cell.name", "name of the cell model"),
        Volts("--nominal-v", "cell.nominalV", "nominal volts of a cell (default the chemistry's), such as 3.6V"),
        Volts("--full-v", "cell.fullV", "volts of a cell to which it is charged (default the chemistry's), such as 4.2V"),
        Volts("--empty-v", "cell.cutoffV", "working cut-off of a cell (default the chemistry's), such as 3.0V"),
        Of<ElectricCharge>("--rated-ah", "cell.capacityAh", "capacity of one cell when new, such as 5Ah", "a charge", "5Ah", q => q.AmpereHours),
        Of<Mass>("--cell-mass", "cell.massG", "mass of one cell, such as 70g", "a mass", "70g", q => q.Grams),
        Milliohm("--cell-resistance", "cell.resistanceMilliohm", "DC resistance of one cell, warm, such as 18mohm"),
        Milliohm("--cell-ac-resistance", "cell.acResistanceMilliohm", "resistance of one cell at 1 kHz, such as 12mohm"),
        Amps("--discharge-rating", "cell.continuousDischargeA", "highest continuous current of one cell, such as 10A"),
        Amps("--peak-rating", "cell.peakDischargeA", "highest current of one cell for seconds, such as 20A"),
        Amps("--charge-rating", "cell.maxChargeA", "highest charging current of one cell, such as 2.5A"),
        Degrees("--min-charge-temperature", "cell.minChargeC", "lowest temperature at which the cell may be charged, such as 0degC"),
        Plain("--price", "cell.price", "price of one cell, a bare number"),
        Plain("--series", "pack.series", "groups in series (default: as the volts allow)"),
        Plain("--parallel", "pack.parallel", "cells in parallel (default: as many as the need asks for)"),
        Share("--overhead", "pack.overheadFraction", "box, links and monitor as a share of the cells' mass, such as 30%"),
        new("--use", "need.whPerKm", "use for each kilometre, such as 38Wh/km; or --mass --speed --crr --cda", (call, _, typed) => UseOptions.Typed(call, typed) is { } whPerKm ? JsonValue.Create(whPerKm) : null),
        Of<Mass>("--mass", "need.massKg", "vehicle, rider and load, such as 180kg", "a mass", "180kg", q => q.Kilograms),
        Plain("--cda", "need.cdA", "drag area in square metres, such as 0.6"),
        Plain("--crr", "need.crr", "rolling resistance coefficient, such as 0.015"),
        Of<Ratio>("--grade", "need.gradePct", "steady slope, such as 6%", "a slope", "6%", q => q.Percent),
        Share("--efficiency", "need.efficiency", "battery to wheel, such as 80% (default 100%)"),
        Watts("--aux", "need.accessoryW", "lamps and the like, such as 20W"),
        Plain("--air-density", "need.airDensityKgM3", "kilograms in a cubic metre of air (default 1.225)"),
        Of<Speed>("--speed", "need.speedKmh", "steady speed, such as 45km/h", "a speed", "45km/h", q => q.KilometersPerHour),
        Of<Length>("--range", "need.rangeKm", "wanted range, such as 60km", "a distance", "60km", q => q.Kilometers),
        Watts("--peak", "need.peakPowerW", "peak power at the battery, such as 6kW"),
        Watts("--continuous", "need.continuousPowerW", "continuous power at the battery, such as 1.2kW (default use times speed)"),
        Share("--reserve", "need.reserve", "part of the energy kept back, such as 10%"),
        Share("--usable", "need.usableFraction", "part of the rated energy that the working limits leave, such as 95%"),
        Share("--ageing", "need.ageing", "part left at the end of the planned life, such as 85%"),
        Share("--cold", "need.temperatureFactor", "part left in the cold, such as 90%"),
        Share("--derate", "need.currentDerate", "part of a cell's rated current that is to be used, such as 80%"),
        Degrees("--charge-temperature", "need.chargeTemperatureC", "lowest temperature at which it will be charged, such as 5degC"),
        Volts("--controller-max-v", "electrics.controllerMaxV", "most volts that the controller bears, such as 60V"),
        Volts("--pack-empty-v", "electrics.controllerMinV", "loaded volts of the pack at which the controller gives up, such as 39V"),
        Amps("--controller-max-a", "electrics.controllerMaxA", "current limit of the controller, such as 60A"),
        Volts("--charger-v", "electrics.chargerV", "end volts of the charger, such as 54.6V"),
        Amps("--charger", "electrics.chargerA", "charging current, such as 5A"),
        Of<Duration>("--taper", "electrics.taperHours", "tapering at the end of a charge (default 0.5h)", "a time", "0.5h", q => q.Hours),
        Milliohm("--leads", "electrics.linkResistanceMilliohm", "all links and leads of the pack together, such as 8mohm"),
        Amps("--fuse", "electrics.fuseA", "rating of the fuse, such as 120A"),
        Volts("--fuse-v", "electrics.fuseV", "DC volts of the fuse, such as 80V"),
        Amps("--fuse-breaking", "electrics.fuseBreakingA", "breaking capacity of the fuse, such as 5kA"),
        Amps("--regen", "electrics.regenA", "highest current that the controller feeds back, such as 20A"),
        Plain("--motor-kv", "motor.kvRpmPerV", "turns a minute of the motor for each volt, such as 52"),
        Share("--motor-loaded", "motor.loadedFraction", "part of its free speed that the motor reaches under load, such as 88%"),
        Plain("--gear", "motor.gearRatio", "motor turns for one wheel turn, such as 4"),
        Of<Length>("--wheel", "motor.wheelCircumferenceMm", "way of one wheel turn, such as 1720mm", "a length", "1720mm", q => q.Millimeters),
        Of<Mass>("--max-mass", "limits.packMassKg", "heaviest pack, such as 40kg", "a mass", "40kg", q => q.Kilograms),
        Of<Speed>("--top-speed", "limits.topSpeedKmh", "top speed to be reached, such as 60km/h", "a speed", "60km/h", q => q.KilometersPerHour),
    ];

    internal static IReadOnlyList<Option> All { get; } = [.. Fields.Select(field => field.Option)];

    /// <summary>What was typed, in the shape of the file.</summary>
    /// <param name="call">The call; the first option that is wrong stands in its Wrong.</param>
    /// <returns>An object with the typed fields only; null when none was typed.</returns>
    internal static JsonElement? Typed(VerbCall call)
    {
        JsonObject whole = [];
        foreach (Field field in Fields)
        {
            if (call.Value(field.Option) is not { } typed || field.Read(call, field.Option.Name, typed) is not { } value)
                continue;
            Put(whole, field.Path, value);
        }

        if (call.Given(CommonOptions.Chemistry) && call.Chemistry() is { } chemistry)
            Put(whole, "cell.chemistry", JsonValue.Create(chemistry.Name));
        if (whole.Count == 0)
            return null;
        using JsonDocument document = JsonDocument.Parse(whole.ToJsonString());
        return document.RootElement.Clone();
    }

    /// <summary>The option that stands for a field of the file, where one was typed.</summary>
    /// <param name="call">The call.</param>
    /// <param name="where">Where a refusal points: it ends with the field's path.</param>
    /// <returns>The option's name; null when the field came from the file.</returns>
    internal static string? OptionAt(VerbCall call, string where) =>
        Fields.FirstOrDefault(field => where.EndsWith("field " + field.Path, StringComparison.Ordinal) && call.Given(field.Option))?.Option.Name;

    private static void Put(JsonObject whole, string path, JsonNode value)
    {
        string[] parts = path.Split('.');
        if (whole[parts[0]] is not JsonObject part)
            whole[parts[0]] = part = [];
        part[parts[1]] = value;
    }

    private static Field Volts(string name, string path, string says) => Of<ElectricPotential>(name, path, says, "a voltage", "54.6V", q => q.Volts);

    private static Field Amps(string name, string path, string says) => Of<ElectricCurrent>(name, path, says, "a current", "10A", q => q.Amperes);

    private static Field Watts(string name, string path, string says) => Of<Power>(name, path, says, "a power", "1500W", q => (double)q.Watts);

    private static Field Milliohm(string name, string path, string says) => Of<ElectricResistance>(name, path, says, "a resistance", "18mohm", q => q.Milliohms);

    private static Field Share(string name, string path, string says) => Of<Ratio>(name, path, says, "a share", "90%", q => q.DecimalFractions);

    private static Field Degrees(string name, string path, string says) => Of<Temperature>(name, path, says, "a temperature", "5degC", q => q.DegreesCelsius);

    private static Field Of<TQuantity>(string name, string path, string says, string wanted, string example, Func<TQuantity, double> value)
        where TQuantity : struct, IQuantity =>
        new(name, path, says, (call, option, typed) => call.Quantity<TQuantity>(option, typed, wanted, example) is { } quantity ? JsonValue.Create(value(quantity)) : null);

    private static Field Plain(string name, string path, string says) => new(name, path, says, (call, option, typed) =>
    {
        if (double.TryParse(typed, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number))
            return JsonValue.Create(number);
        call.Refuse(option, $"\"{typed}\" is not a number", $"{option} takes: {says}.");
        return null;
    });

    private static Field Text(string name, string path, string says) => new(name, path, says, (_, _, typed) => JsonValue.Create(typed));

    private sealed record Field(string Name, string Path, string Says, Func<VerbCall, string, string, JsonNode?> Read)
    {
        internal Option<string?> Option { get; } = new(Name) { Description = Says };
    }
}
