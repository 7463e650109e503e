namespace PackPlanner.Core.Jobs;

/// <summary>Everything a job may be told. One line here gives a key its place in files, verbs and screens.</summary>
public static class GivenCatalogue
{
    /// <summary>All, in the order in which they are shown.</summary>
    public static IReadOnlyList<GivenEntry> All { get; } =
    [
        new("chemistry", "chemistry", GivenKind.Chemistry, "nothing judged by volts"),
        new("ratedAh", "rated Ah of one cell", GivenKind.AmpereHours, "no % of rated"),
        new("series", "groups in series", GivenKind.Count, "no groups"),
        new("parallel", "cells in parallel", GivenKind.Count, "no groups"),
        new("fullV", "full V per cell", GivenKind.Volts, "taken from the chemistry"),
        new("emptyV", "empty V per cell", GivenKind.Volts, "taken from the chemistry"),
        new("steadyA", "steady load A", GivenKind.Amperes, "no heat, no km at speed"),
        new("peakA", "peak load A", GivenKind.Amperes, "peak: not checked"),
        new("controllerLowV", "controller lowest V", GivenKind.Volts, "ride's end: not checked"),
        new("controllerHighV", "controller highest V", GivenKind.Volts, "full charge: not checked"),
        new("chargerV", "charger V", GivenKind.Volts, "charging: not checked"),
        new("chargerA", "charger A", GivenKind.Amperes, "charging: not checked"),
        new("whPerKm", "Wh per km", GivenKind.WattHoursPerKm, "kWh only, no km"),
        new("fuse", "fuse", GivenKind.YesNo, "caution 23 stands"),
        new("disconnect", "disconnect", GivenKind.YesNo, "caution 23 stands"),
        new("preCharge", "pre-charge", GivenKind.YesNo, "caution 23 stands"),
        new("bms", "BMS with a cut-off for each group", GivenKind.YesNo, "caution 23 stands"),
        new("cellFuse", "a fuse for each cell", GivenKind.YesNo, "caution 22 stands"),
        new("nominalV", "nominal V per cell", GivenKind.Volts, "taken from the chemistry"),
        new("linkMilliohm", "one series link, milliohm", GivenKind.Milliohm, "link heat: not checked"),
        new("temperatureDegC", "temperature of use", GivenKind.DegC, "no loss by cold"),
        new("chargeTemperatureDegC", "lowest temperature while charging", GivenKind.DegC, "cold charge: not checked"),
        new("reserve", "reserve kept at the end", GivenKind.Fraction, "none is taken off"),
        new("repeatability", "how well your tester repeats", GivenKind.Fraction, "1.5 % is assumed"),
        new("minShareOfRated", "lowest Ah accepted, of rated", GivenKind.Fraction, "80 % is used"),
        new("maxMilliohm", "highest milliohm accepted", GivenKind.Milliohm, "judged against the lot"),
        new("cellDischargeA", "highest steady A of one cell", GivenKind.Amperes, "cell load: not checked"),
        new("cellChargeA", "highest charging A of one cell", GivenKind.Amperes, "half its Ah as amperes"),
        new("insulationOhm", "insulation, pack to frame, ohm", GivenKind.Ohm, "insulation: not checked"),
        new("clamping", "clamping or swelling room for flat cells", GivenKind.YesNo, "caution 25 if flat cells"),
        new("vents", "a vent path away from the rider", GivenKind.YesNo, "vents: not checked"),
        new("cellMassLimitKg", "cells may weigh, kg", GivenKind.Kilograms, "weight: not checked"),
        new("jointMilliohm", "one joint of a cell, milliohm", GivenKind.Milliohm, "counted with the cell"),
        new("leadsMilliohm", "leads, fuse, contactor, milliohm", GivenKind.Milliohm, "left out"),
        new("cableM", "pack to controller, one way, m", GivenKind.Metres, "no cable to start from"),
        new("capacitanceMillifarad", "controller's capacitors, mF", GivenKind.Millifarads, "no pre-charge figure"),
        new("peakS", "a peak lasts, s", GivenKind.Seconds, "peak warming: not told"),
        new("cellMassKg", "one cell weighs, kg", GivenKind.Kilograms, "cell warming: not told"),
        new("balanceA", "what the balancer bleeds, A", GivenKind.Amperes, "0.06 A is assumed"),
        new("kmBefore", "km of the ride of the log before", GivenKind.Kilometres, "vehicle or pack: not told"),
        new("kmNow", "km of the ride of the last log", GivenKind.Kilometres, "vehicle or pack: not told"),
        new("cellDiameterMm", "one round cell, diameter, mm", GivenKind.Millimetres, "no plain block"),
        new("cellLengthMm", "one cell, length, mm", GivenKind.Millimetres, "no plain block"),
        new("cellThicknessMm", "one flat cell, thickness, mm", GivenKind.Millimetres, "taken as round"),
        new("cellHeightMm", "one flat cell, height, mm", GivenKind.Millimetres, "taken as round"),
        new("cellGapMm", "gap between cells in a plain block, mm", GivenKind.Millimetres, "drawn without a gap"),
        new("blockColumns", "groups side by side in a plain block", GivenKind.Count, "near a square"),
        new("cellModel", "cell model", GivenKind.Words, "written on no sheet"),
        new("notes", "notes", GivenKind.Words, ""),
    ];

    private static readonly Dictionary<string, GivenEntry> ByKey = All.ToDictionary(entry => entry.Key, StringComparer.OrdinalIgnoreCase);

    /// <summary>Finds an entry.</summary>
    /// <param name="key">In any case.</param>
    /// <returns>The entry, or null when the key is not known.</returns>
    public static GivenEntry? Find(string key) => ByKey.GetValueOrDefault(key);
}
