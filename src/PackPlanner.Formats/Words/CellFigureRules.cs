namespace PackPlanner.Formats.Words;

/// <summary>How figures of cells and of groups of them are made.</summary>
internal static class CellFigureRules
{
    internal static IReadOnlyList<FigureRule> All { get; } =
    [
        // cells
        new("verdict", "the cell's figures", "reject beyond a limit; hold when a limit lies within twice the spread, when the capacity is missing or when the test was aborted; else use", "screening", "CommonPractice", "cells"),
        new("capacityAh", "the cell's whole tests, as read or counted from its logs", "mean of its whole tests; an aborted one does not count", "screening", "by definition", "cells"),
        new("medianCapacityAh", "all cells with a usable capacity, before any verdict", "the middle value of the sorted capacities", "screening", "by definition", "cells demo"),
        new("medianResistanceMilliohm", "all cells with a resistance, before any verdict", "the middle value of the sorted resistances", "screening", "by definition", "cells demo"),
        new("repeatability", "repeats of the same cell, or --repeatability", "pooled relative standard deviation of the repeats; 1.5 % assumed where nothing says", "screening", "CommonPractice", "cells"),
        new("capacitySpreadAh", "capacity and repeatability", "repeatability x capacity / square root of the number of tests; one standard deviation", "screening", "by definition", "cells"),
        new("resistanceMilliohm", "the readings of the cell, or current steps in its log", "as read; resistanceKind and resistanceAfterS tell by which method", "resistance", "by definition", "cells"),
        new("selfDischargeMillivoltPerDay", "two dated resting voltages", "fall of volts over days between", "self-discharge", "by definition", "cells"),
        new("selfDischargePercentPerMonth", "millivolts a day and the curve's slope at that charge", "volts a day over volts for the whole charge, x 30 days; not given where the curve is flat", "self-discharge", "by definition", "cells"),
        new("hours", "the likely number of cells still to test, slots and hours of one test", "rounds of all slots x hours of one test", "screening", "by definition", "cells"),
        // capacity
        new("chargeAh", "the current over the whole step", "trapezoid rule, a constant-voltage tail included", "capacity", "by definition", "capacity"),
        new("energyWh", "volts times current over the whole step", "trapezoid rule", "capacity", "by definition", "capacity"),
        new("chargeToCutOffAh", "the current up to the first sample at or below the cut-off", "trapezoid rule", "capacity", "by definition", "capacity"),
        new("resistanceMilliohm", "volts before and after a step of current", "step of volts over step of current, after the stated seconds", "resistance", "by definition", "capacity"),
        // match
        new("capacityAh", "the cells in it", "sum of the cells' capacities as typed", "grouping", "Kirchhoff", "match"),
        new("resistanceMilliohm", "the cells' resistances", "1 / (sum of 1 / r)", "resistance", "Kirchhoff", "match"),
        new("minGroupAh", "all groups", "smallest group; the string delivers what it holds", "grouping", "by definition", "match demo"),
        new("spreadAh", "all groups", "largest group less the smallest", "grouping", "by definition", "match demo"),
        new("minGroupBoundAh", "the cells' capacities, S and P", "least of several bounds; no grouping can have a larger smallest group", "grouping", "by hand proof in the method page", "match demo"),
        new("noiseSpreadAh", "repeatability, mean capacity, S and P", "expected range of S sums of P readings that differ by noise alone: 2 e(S) x repeatability x mean x square root of P", "grouping", "order statistics of the normal distribution", "match"),
        new("timesEqual", "resistances of the group", "P (1/r) / sum of (1/r): first current of a cell over an equal share", "sharing", "Kirchhoff", "match"),
        new("bringToV", "volts of those it is joined to", "the volts that the cells which agree with one another have in parallel", "joining", "Kirchhoff", "match join"),
        // share, join, balance
        new("currentA", "open-circuit volts, resistances, links, load", "Kirchhoff's laws for the ladder of links", "sharing", "Kirchhoff", "share"),
        new("terminalV", "the same", "volts between the two take-off points", "sharing", "Kirchhoff", "share"),
        new("timesEqual", "the currents of the group's cells", "current of the hardest-worked cell over an equal share of the load", "sharing", "Kirchhoff", "share"),
        new("circulatingA", "open-circuit volts, resistances, links", "without a load: the sum of the currents that flow out of the fuller cells", "sharing", "Kirchhoff", "share"),
        new("inrushA", "volts of the cell and of those already joined, resistances, link", "difference of volts / (R of the cell + R of the others in parallel + link)", "joining", "Kirchhoff", "join"),
        new("resistorOhm", "difference of volts, the current that the ratings allow, the path", "difference of volts / that current, less the path; 0 where none is needed", "joining", "Kirchhoff", "join"),
        new("hours", "volts and capacities of both sides, the resistor", "charge along both curves until the direct current would be within the limit", "joining", "Kirchhoff", "join"),
        new("hours", "charge to move and the current of bleed or charger", "Ah / A; bled all at once, charged group after group", "balancing", "by definition", "balance"),
        new("removeAh", "charge and capacity of each group", "charge above the group that stands lowest at the chosen end", "balancing", "by definition", "balance"),
        new("addAh", "charge and capacity of each group", "charge below the group that stands highest at the chosen end", "balancing", "by definition", "balance"),
        new("spreadAh", "spreads of charge of the group and of the one that it is levelled with", "half the width of the 90 % range: both in quadrature", "balancing", "by definition", "balance"),
        new("chargeAh", "what each group lacks to full", "sum over all groups, charged side by side", "balancing", "by definition", "balance"),
    ];
}
