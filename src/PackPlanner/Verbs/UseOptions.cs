using System.CommandLine;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>The options that say how much energy a kilometre takes.</summary>
internal static class UseOptions
{
    private static readonly Option<string?> Use = new("--use") { Description = "use for each kilometre, such as 38Wh/km" };
    private static readonly Option<string?> MassOption = new("--mass") { Description = "vehicle, rider and load, such as 180kg; with --speed, --crr and --cda the use is computed" };
    private static readonly Option<string?> SpeedOption = new("--speed") { Description = "steady speed, such as 45km/h" };
    private static readonly Option<double?> Crr = new("--crr") { Description = "rolling resistance coefficient, such as 0.015" };
    private static readonly Option<double?> Cda = new("--cda") { Description = "drag area in square metres, such as 0.6" };
    private static readonly Option<string?> Efficiency = new("--efficiency") { Description = "battery to wheel, such as 80% (default 80%)" };
    private static readonly Option<string?> Aux = new("--aux") { Description = "lamps and the like, such as 20W" };
    private static readonly Option<string?> Grade = new("--grade") { Description = "steady slope, such as 6%" };

    internal static IReadOnlyList<Option> All { get; } = [Use, MassOption, SpeedOption, Crr, Cda, Efficiency, Aux, Grade];

    /// <summary>Energy for each kilometre, typed or computed from the road; null when neither is told.</summary>
    internal static double? WhPerKm(VerbCall call)
    {
        if (call.Value(Use) is { } typed)
            return Typed(call, typed);
        double? massKg = call.Quantity<Mass>(MassOption, "a mass", "180kg")?.Kilograms;
        double? speedKmh = call.Quantity<Speed>(SpeedOption, "a speed", "45km/h")?.KilometersPerHour;
        double efficiency = call.Quantity<Ratio>(Efficiency, "a share", "80%")?.DecimalFractions ?? 0.8;
        double auxW = (double)(call.Quantity<Power>(Aux, "a power", "20W")?.Watts ?? 0);
        double grade = call.Quantity<Ratio>(Grade, "a slope", "6%")?.DecimalFractions ?? 0;
        if (massKg is not > 0 || speedKmh is not > 0 || call.Value(Crr) is not > 0 || call.Value(Cda) is not > 0)
        {
            if (call.Given(MassOption) || call.Given(SpeedOption) || call.Given(Crr) || call.Given(Cda))
                call.Refuse("--mass, --speed, --crr, --cda", "all four, above zero, are needed to compute the use for each kilometre", "Give all four, or --use 38Wh/km.");
            return null;
        }

        if (efficiency is <= 0 or > 1)
            call.Refuse("--efficiency", $"{efficiency:P0} is no efficiency", "Give it between 1% and 100%.");
        return new RoadLoad(massKg.Value, call.Value(Cda)!.Value, call.Value(Crr)!.Value, grade).WhPerKm(speedKmh.Value, efficiency, auxW);
    }

    /// <summary>Energy for each kilometre as typed: Wh/km, Wh/mi or kWh/100km; null when wrong.</summary>
    internal static double? Typed(VerbCall call, string typed)
    {
        const double kilometresPerMile = 1.609344;
        if (TypedQuantity.Split(typed, out double number, out string unit) && number > 0)
        {
            switch (unit.Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant())
            {
                case "WH/KM": return number;
                case "WH/MI" or "WH/MILE": return number / kilometresPerMile;
                case "KWH/100KM": return number * 10;
            }
        }

        call.Refuse("--use", $"\"{typed}\" is no use for each kilometre", "Write --use 38Wh/km.");
        return null;
    }
}
