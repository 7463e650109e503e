namespace PackPlanner.Formats.Words;

/// <summary>How figures of whole packs and of their conductors are made.</summary>
internal static class PackFigureRules
{
    internal static IReadOnlyList<FigureRule> All { get; } =
    [
        // energy
        new("nominalWh", "S, nominal volts, rated Ah", "S x nominal V x rated Ah of a group", "energy", "by definition", "energy demo"),
        new("usableWh", "groups, load, cut-offs, temperature, reserve", "volts times current from full to the first loaded cut-off, integrated over the open-circuit curve", "energy", "Kirchhoff", "energy demo"),
        new("usableAh", "groups, load, cut-offs", "charge from full to the first loaded cut-off", "energy", "Kirchhoff", "energy"),
        new("usableAhAtRest", "charge and capacity of each group", "charged until the first group is full, then down to the first group that is empty at rest", "energy", "JiangZhang2015", "energy"),
        new("spreadWh", "spreads of the readings", "half the width of the 90 % range: the least of the groups' uncertain charges, the volts on the way and the heat", "energy", "by definition", "energy demo"),
        new("rangeKm", "usable energy and Wh per km", "usable Wh / (Wh/km)", "energy", "by definition", "energy demo"),
        new("shortCircuitA", "full volts, DC resistance, links", "V / R: the low figure; does the fuse clear?", "conductors", "Kirchhoff", "energy size"),
        new("prospectiveShortCircuitA", "full volts, 1 kHz resistance, links", "V / R at the first instant; twice the DC figure where the 1 kHz resistance is unknown", "conductors", "CommonPractice", "energy size"),
        new("heatW", "current, DC resistances of cells and links", "I squared x R", "conductors", "Joule's law", "energy"),
        // conductor
        new("resistanceMilliohm", "metal, length, cross-section, pieces", "resistivity at 20 °C x length / metal area of all pieces; a cable by the standard's table of its nominal size", "conductors", "Nbs100, Iec60228, MetalTables", "conductor"),
        new("warmMilliohm", "ohms at 20 °C and the temperature", "x (1 + 0.393 % for each kelvin of copper, 0.6 % of nickel); for steel none was found", "conductors", "Nbs100, MetalTables", "conductor"),
        new("areaMm2", "size of one piece and their number", "pi d squared / 4, with d = 0.127 mm x 92^((36 - n) / 39) of a gauge; or width x thickness", "conductors", "AstmB258", "conductor"),
        new("dropV", "the load and the ohms at that temperature", "I x R", "conductors", "Kirchhoff", "conductor"),
        new("heatW", "the load and the ohms at that temperature", "I squared x R", "conductors", "Joule's law", "conductor"),
        new("currentPerMm2A", "the load and the metal area", "A / mm2", "conductors", "by definition", "conductor"),
        new("warmsKelvinPerSecond", "amperes for each mm2 of copper", "J squared x resistivity / (385 J/(kg K) x density), if no heat left it", "conductors", "FromMemory", "conductor"),
        new("copperMm2", "length and ohms", "area of copper that has as many ohms at 20 °C", "conductors", "Nbs100", "conductor"),
        // diagnose, compare
        new("capacityAh", "volts of all groups, current and time of the log, the chemistry's curves", "one fit of all groups at once, charge counted against a shared open-circuit curve; low and high hold the truth nine times in ten, wide where the log does not reach far", "diagnosis", "method page", "diagnose"),
        new("resistanceMilliohm", "volts and current in windows of five minutes", "answer of the volts to the current one second after a step, at half charge; no curve is needed", "diagnosis", "method page", "diagnose"),
        new("stateOfChargeOffset", "volts of the groups against the median group", "difference of charge at the first sample that explains them", "diagnosis", "method page", "diagnose"),
        new("usableAhNow", "charge and capacity of each group", "smallest charge left plus smallest charge still to fill", "diagnosis", "JiangZhang2015", "diagnose demo"),
        new("usableAhAfterBalance", "capacity of each group", "smallest capacity", "diagnosis", "JiangZhang2015", "diagnose"),
        new("usableAhAfterReplacement", "capacity of each group", "smallest capacity after the smallest is replaced by the median", "diagnosis", "by definition", "diagnose"),
        new("usableAh", "capacity, charge and resistance of each group, the currents of the log", "charge from full to the first loaded cut-off after that remedy", "diagnosis", "Kirchhoff", "diagnose"),
        new("usableWh", "capacity, charge and resistance of each group, the currents of the log", "charge from full to the first loaded cut-off after that remedy times the pack's loaded volts on the way", "diagnosis", "Kirchhoff", "diagnose"),
        new("rangeKm", "usable energy after that remedy and Wh per km", "usable Wh / (Wh/km)", "diagnosis", "by definition", "diagnose"),
        new("gainPercent", "usable energy now and after that remedy", "(after / now - 1) x 100", "diagnosis", "by definition", "diagnose"),
        new("capacityAh", "each log diagnosed by itself", "then and now are the two fits; change is later less earlier, its range both ranges in quadrature", "diagnosis", "method page", "compare"),
        new("resistanceMilliohm", "each log diagnosed by itself, its mean temperature", "the earlier one is brought to the later one's temperature, 1.8 % for each kelvin; change is later less earlier, its range both ranges in quadrature", "diagnosis", "CommonPractice", "compare"),
        new("whShare", "usable energy of both packs, temperatures, use of both rides", "range is energy x what the cold leaves / use: the pack takes 1 - energy now / then, the cold and then the use what they take of the rest", "diagnosis", "by definition", "compare"),
        // fit
        new("count", "cavity, keep-outs, cell, clearances", "cells whose grown bodies lie in the cavity and clear of each other", "fitting", "method page", "fit"),
        new("bound", "area and perimeter, or exact search", "no layout of this kind holds more", "fitting", "method page", "fit demo"),
        new("centreOfMassMm", "positions and masses", "mean of the positions, weighted by mass", "fitting", "by definition", "fit"),
        // size
        new("energyUsableWh", "S, P, cell, need", "nominal Wh x usable x ageing x temperature x (1 - reserve) x (1 - ohmic loss)", "sizing", "by definition", "size demo"),
        new("capacityAh", "P and the cell's rated Ah", "P x rated Ah", "sizing", "by definition", "size"),
        new("rangeKm", "usable energy and the vehicle's use", "usable Wh / (Wh/km)", "sizing", "by definition", "size"),
        new("fuseMinA", "continuous current at the low end of voltage", "x 1.25, then the next standard rating; a starting point, never final", "sizing", "CommonPractice", "size"),
        new("peakCurrentA", "peak power, low end of voltage, controller's limit", "power / volts at the low end, at most the controller's amperes", "sizing", "by definition", "size"),
    ];
}
