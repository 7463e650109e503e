using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Tells the pack's current from limits, other machines' currents, and from a charge and a discharge that stand in two columns.</summary>
internal static class LogCurrents
{
    // In several languages: figures that were set or allowed, and no reading.
    private static readonly string[] Limits = ["max", "min", "maximum", "minimum", "limit", "lim", "peak", "allowed", "allowable", "rated", "setpoint", "set", "soll", "consigne", "target", "ccl", "dcl", "grenzwert", "zulassig", "limite", "limiet"];

    private static readonly string[] Elsewhere = ["motor", "phase", "charger", "solar", "pv", "load", "inverter", "balance", "balancer", "bal", "heater", "moteur", "silnik", "lader", "ladegerat"];

    /// <summary>Gives the role of the current to the best column alone.</summary>
    /// <param name="all">Columns with their roles by name.</param>
    internal static void Choose(LogColumn[] all)
    {
        LogColumn[] currents = [.. all.Where(column => column.Role is ColumnRole.Current or ColumnRole.ChargeCurrent)];
        if (currents.Length < 2)
        {
            if (currents is [{ Role: ColumnRole.ChargeCurrent } only])
                only.Role = ColumnRole.Current;
            return;
        }

        foreach (LogColumn column in currents)
        {
            if (Limits.Any(column.Heading.Has))
                column.Fit -= 4000;
            else if (Elsewhere.Any(column.Heading.Has))
                column.Fit -= 2000;
        }

        LogColumn main = currents.OrderByDescending(column => column.Fit >= 0 ? (column.Role == ColumnRole.ChargeCurrent ? 1 : IsDischarge(column) ? 2 : 3) : 0)
            .ThenByDescending(column => column.Fit).ThenBy(column => column.Index).First();
        LogColumn? charge = IsDischarge(main) ? currents.FirstOrDefault(column => column.Role == ColumnRole.ChargeCurrent && column.Fit >= 0) : null;
        foreach (LogColumn column in currents)
        {
            if (column == main)
                column.Role = ColumnRole.Current;
            else if (column == charge)
                column.Role = ColumnRole.ChargeCurrent;
            else
                (column.Role, column.SetBy) = (ColumnRole.Unknown, $"heading; \"{main.Name}\" is used");
        }
    }

    /// <summary>Takes the charge column off the discharge column, in place, where the log has both.</summary>
    /// <returns>False where there are no two, or where both flow at once, which no pack does: then they are not halves of one current.</returns>
    internal static bool InTwoColumns(LogColumns columns, LogColumn discharge, List<string> said)
    {
        if (columns[ColumnRole.ChargeCurrent] is not { Values.Length: > 0 } charge)
            return false;
        double apart = charge.Unit is { } one && discharge.Unit is { } other ? one.Scale / other.Scale : 1;
        double[] off = Array.ConvertAll(charge.Values, value => Math.Abs(value) * apart);
        double[] current = discharge.Values;
        int both = current.Where((value, i) => Math.Abs(value) > 0 && off[i] > 0).Count();
        int either = current.Where((value, i) => Math.Abs(value) > 0 || off[i] > 0).Count();
        if (both * 20 > either)
        {
            (charge.Role, charge.SetBy, charge.Values) = (ColumnRole.Unknown, "values: it flows together with the discharge current", []);
            return false;
        }

        // The idle one of the two is often left blank.
        for (int i = 0; i < current.Length; i++)
            current[i] = double.IsNaN(current[i]) && double.IsNaN(off[i]) ? double.NaN : Known(Math.Abs(current[i])) - Known(off[i]);
        said.Add($"Discharge and charge stand in two columns; the current is {discharge.Name} less {charge.Name}.");
        return true;
    }

    private static double Known(double figure) => double.IsNaN(figure) ? 0 : figure;

    /// <summary>Gives an unsigned current its sign by a column of states, in place.</summary>
    /// <param name="columns">All columns.</param>
    /// <param name="column">The current, in amperes.</param>
    /// <param name="timeS">Seconds.</param>
    /// <param name="volts">Volts of a cell, or the mean of the groups.</param>
    /// <param name="options">What the user said.</param>
    /// <param name="said">Gets a sentence.</param>
    /// <returns>False where the log has no such column, or the current a sign of its own.</returns>
    internal static bool SignByWords(LogColumns columns, LogColumn column, double[] timeS, double[] volts, ReadOptions options, List<string> said)
    {
        if (columns.Direction is not { Values.Length: > 0 } words || options.CurrentSign != "auto" || column.Values.Any(value => value < 0))
            return false;
        double[] current = column.Values;
        double[] signed = [.. current.Select((value, i) => IsCharge(words, i) ? 0 - value : value)];
        // A column of yes and no may mean something else, so the volts are asked.
        if (words.YesIs != 0 && !(CurrentSigns.Answer(timeS, signed, volts) < Math.Min(-0.25, CurrentSigns.Answer(timeS, current, volts) - 0.005)))
        {
            if (signed.Any(value => value < 0))
                said.Add($"Column {words.Name} reads like charge and discharge, but the volts do not bear it out; it is not used.");
            return false;
        }

        signed.CopyTo(current, 0);
        (words.Role, words.SetBy) = (ColumnRole.Mode, words.YesIs != 0 ? "heading and values: yes and no" : "values: words for charge and discharge");
        said.Add($"The current has no sign; column {words.Name} says in words when it is charge, and those rows are taken so.");
        return true;
    }

    private static bool IsCharge(LogColumn words, int row) => words.YesIs == 0 ? words.Values[row] < 0
        : words.YesIs < 0 ? words.Values[row] == 1 : words.Values[row] == 0;

    private static bool IsDischarge(LogColumn column) => DirectionWords.Of(column.Heading.Raw) > 0;
}
