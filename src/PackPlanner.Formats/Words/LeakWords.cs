using System.Globalization;
using PackPlanner.Core.Bench;

namespace PackPlanner.Formats.Words;

/// <summary>How a cell's loss of charge at rest comes about, so that it can be repeated on paper.</summary>
public static class LeakWords
{
    /// <summary>The fall of the volts, the days, and what a percent of charge is in millivolts there.</summary>
    /// <param name="loss">The loss.</param>
    /// <returns>A line without a stop at its end.</returns>
    public static string Of(SelfDischarge loss)
    {
        string fall = loss.Days is { } days
            ? $"{Text(loss.MillivoltPerDay * days, "0.#")} mV in {Text(days, "0.#")} days, {Text(loss.MillivoltPerDay, "0.00")} mV a day"
            : $"{Text(loss.MillivoltPerDay, "0.00")} mV a day, as the table states it";
        if (loss.PercentPerMonth is not { } percent || percent == 0)
            return fall + "; what that is in charge cannot be told";
        double millivoltPerPercent = loss.MillivoltPerDay * SelfDischarge.DaysInMonth / percent;
        return $"{fall}; at these volts {Text(millivoltPerPercent, "0.0")} mV is 1 % of the charge (the chemistry's curve), so {Text(percent, "0.0")} % in {SelfDischarge.DaysInMonth:0} days"
            + (loss.SpreadPercentPerMonth is { } spread ? $", one standard deviation {Text(spread, "0.0")}" : "");
    }

    private static string Text(double figure, string format) => figure.ToString(format, CultureInfo.InvariantCulture);
}
