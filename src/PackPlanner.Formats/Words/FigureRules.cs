namespace PackPlanner.Formats.Words;

/// <summary>Where the figures of the answers come from, in words: for --why and for the key = of the screens.</summary>
/// <remarks>Keyed by the name that the figure has in JSON, because that is what a user sees in every answer.</remarks>
public static class FigureRules
{
    private static readonly Dictionary<string, FigureRule> All = Rules().ToDictionary(rule => rule.Key, StringComparer.OrdinalIgnoreCase);

    /// <summary>Every figure that has a rule.</summary>
    public static IEnumerable<string> Keys => All.Keys.Order(StringComparer.Ordinal);

    /// <summary>The rule of one figure.</summary>
    /// <param name="key">Its name in JSON, such as usableWh.</param>
    /// <returns>The rule; null when there is none.</returns>
    public static FigureRule? Of(string key) => All.GetValueOrDefault(key);

    private static IEnumerable<FigureRule> Rules() =>
    [
        // cells
        new("verdict", "the cell's figures", "reject beyond a limit; hold when a limit lies within twice the spread, when the capacity is missing or when the test was aborted; else use", "screening", "CommonPractice"),
        new("medianCapacityAh", "all cells with a usable capacity, before any verdict", "the middle value of the sorted capacities", "screening", "by definition"),
        new("medianResistanceMilliohm", "all cells with a resistance, before any verdict", "the middle value of the sorted resistances", "screening", "by definition"),
        new("repeatability", "repeats of the same cell, or --repeatability", "pooled relative standard deviation of the repeats; 1.5 % assumed where nothing says", "screening", "CommonPractice"),
        new("capacitySpreadAh", "capacity and repeatability", "repeatability x capacity / square root of the number of tests; one standard deviation", "screening", "by definition"),
        new("selfDischargeMillivoltPerDay", "two dated resting voltages", "fall of volts over days between", "self-discharge", "by definition"),
        new("selfDischargePercentPerMonth", "millivolts a day and the curve's slope at that charge", "volts a day over volts for the whole charge, x 30 days; not given where the curve is flat", "self-discharge", "by definition"),
        // capacity
        new("chargeAh", "the current over the whole step", "trapezoid rule, a constant-voltage tail included", "capacity", "by definition"),
        new("energyWh", "volts times current over the whole step", "trapezoid rule", "capacity", "by definition"),
        new("chargeToCutOffAh", "the current up to the first sample at or below the cut-off", "trapezoid rule", "capacity", "by definition"),
        new("resistanceMilliohm", "cells: as read; groups: the cells' resistances; pulses: volts before and after a current step", "a group is 1 / (sum of 1 / r); a pulse is the step of volts over the step of current after the stated seconds", "resistance", "Kirchhoff"),
        // match
        new("capacityAh", "the cells in it", "sum of the cells' capacities as typed", "grouping", "Kirchhoff"),
        new("minGroupAh", "all groups", "smallest group; the string delivers what it holds", "grouping", "by definition"),
        new("spreadAh", "all groups", "largest group less the smallest", "grouping", "by definition"),
        new("minGroupBoundAh", "the cells' capacities, S and P", "least of several bounds; no grouping can have a larger smallest group", "grouping", "by hand proof in the method page"),
        new("noiseSpreadAh", "repeatability, mean capacity, S and P", "expected range of S sums of P readings that differ by noise alone: 2 e(S) x repeatability x mean x square root of P", "grouping", "order statistics of the normal distribution"),
        new("timesEqual", "resistances of the group", "P (1/r) / sum of (1/r): first current of a cell over an equal share", "sharing", "Kirchhoff"),
        // energy
        new("nominalWh", "S, nominal volts, rated Ah", "S x nominal V x rated Ah of a group", "energy", "by definition"),
        new("usableWh", "groups, load, cut-offs, temperature, reserve", "volts times current from full to the first loaded cut-off, integrated over the open-circuit curve", "energy", "Kirchhoff"),
        new("usableAh", "groups, load, cut-offs", "charge from full to the first loaded cut-off", "energy", "Kirchhoff"),
        new("usableAhAtRest", "charge and capacity of each group", "charged until the first group is full, then down to the first group that is empty at rest", "energy", "JiangZhang2015"),
        new("spreadWh", "spreads of the readings", "half the width of the 90 % range: the least of the groups' uncertain charges, the volts on the way and the heat", "energy", "by definition"),
        new("rangeKm", "usable energy and Wh per km", "usable Wh / (Wh/km)", "energy", "by definition"),
        new("shortCircuitA", "full volts, DC resistance, links", "V / R: the low figure; does the fuse clear?", "conductors", "Kirchhoff"),
        new("prospectiveShortCircuitA", "full volts, 1 kHz resistance, links", "V / R at the first instant; twice the DC figure where the 1 kHz resistance is unknown", "conductors", "CommonPractice"),
        // share, join, balance
        new("currentA", "open-circuit volts, resistances, links, load", "Kirchhoff's laws for the ladder of links", "sharing", "Kirchhoff"),
        new("terminalV", "the same", "volts between the two take-off points", "sharing", "Kirchhoff"),
        new("circulatingA", "open-circuit volts, resistances, links", "without a load: the sum of the currents that flow out of the fuller cells", "sharing", "Kirchhoff"),
        new("inrushA", "volts of the cell and of those already joined, resistances, link", "difference of volts / (R of the cell + R of the others in parallel + link)", "joining", "Kirchhoff"),
        new("bringToV", "volts of those already joined", "the volts that the cells which agree with one another have in parallel", "joining", "Kirchhoff"),
        new("hours", "charge to move and the current of bleed or charger", "Ah / A", "balancing", "by definition"),
        // diagnose
        new("stateOfChargeOffset", "volts of the groups against the median group", "difference of charge at the first sample that explains them", "diagnosis", "method page"),
        new("usableAhNow", "charge and capacity of each group", "smallest charge left plus smallest charge still to fill", "diagnosis", "JiangZhang2015"),
        new("usableAhAfterBalance", "capacity of each group", "smallest capacity", "diagnosis", "JiangZhang2015"),
        new("usableAhAfterReplacement", "capacity of each group", "smallest capacity after the smallest is replaced by the median", "diagnosis", "by definition"),
        // fit
        new("count", "cavity, keep-outs, cell, clearances", "cells whose grown bodies lie in the cavity and clear of each other", "fitting", "method page"),
        new("bound", "area and perimeter, or exact search", "no layout of this kind holds more", "fitting", "method page"),
        new("centreOfMassMm", "positions and masses", "mean of the positions, weighted by mass", "fitting", "by definition"),
        // size
        new("energyUsableWh", "S, P, cell, need", "nominal Wh x usable x ageing x temperature x (1 - reserve) x (1 - ohmic loss)", "sizing", "by definition"),
        new("fuseMinA", "continuous current at the low end of voltage", "x 1.25, then the next standard rating; a starting point, never final", "sizing", "CommonPractice"),
        new("peakCurrentA", "peak power, low end of voltage, controller's limit", "power / volts at the low end, at most the controller's amperes", "sizing", "by definition"),
    ];
}
