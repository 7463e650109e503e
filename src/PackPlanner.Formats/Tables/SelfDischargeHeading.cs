using System.Text.RegularExpressions;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Tables;

/// <summary>In what a heading that names self-discharge says that it is counted.</summary>
internal static partial class SelfDischargeHeading
{
    /// <summary>The column of a heading that speaks of self-discharge.</summary>
    /// <param name="index">Its place.</param>
    /// <param name="heading">The heading.</param>
    /// <param name="byWords">What its words mean without the unit.</param>
    /// <param name="byUnit">What its words mean of the unit's quantity; unknown where they mean nothing of it.</param>
    /// <returns>Null where the heading is of something else, or has volts a time, or no unit at all.</returns>
    // "self discharge (mV/quarter)" is no resting voltage in mV, and 3 % a month are not 3 mV a day.
    internal static CellColumn? Of(int index, HeadingWords heading, (ColumnRole Role, int Fit) byWords, ColumnRole byUnit)
    {
        if (byWords.Role != ColumnRole.SelfDischarge || heading.Unit is { Of: Dimension.VoltageRate })
            return null;
        if (heading.Unit is null ? !OtherUnit().IsMatch(heading.Raw) : byUnit != ColumnRole.Unknown && byWords.Fit < 1000 && !ATime().IsMatch(heading.Raw))
            return null;
        FileUnit? rate = Words().Match(heading.Raw) is { Success: true } words ? FileUnit.Find($"mv/{words.Groups[1].Value}") : null;
        return new CellColumn(index, heading) { Role = ColumnRole.SelfDischarge, Fit = byWords.Fit, Unit = rate, HasUnknownUnit = rate is null };
    }

    /// <summary>Refuses a self-discharge whose unit is not understood.</summary>
    internal static Refusal? Unknown(SourceFile source, CellTableLayout layout) =>
        layout.Columns.FirstOrDefault(column => column is { HasUnknownUnit: true, Role: ColumnRole.SelfDischarge, Unit: null }) is not { } column ? null
        : Refusal.Input("not-understood", $"{source.Name}, column {column.Name}",
            "it names a self-discharge, but in no unit that can be read; it is read in volts a time alone: mV/day, mV/h, mV/week, mV/month",
            $"Write the fall of the resting volts, as in self discharge (mV/day); or pass the column over: --column \"{OneLine.Of(column.Name)}=not used\".");

    [GeneratedRegex(@"[%‰]|(?<![a-z])(pct|percent|prozent)(?![a-z])|[(\[{（【][^)\]}]*(/|\b(per|pro|par|por)\b)|/\s*(s|min|h|hr|hour|d|day|tag|w|week|woche|month|monat|mois|mes|y|year|jahr)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OtherUnit();

    // "self discharge [mAh per month]" is no capacity.
    [GeneratedRegex(@"(/|\b(per|pro|par|por|a|al|przez|na))\s*(s|sec|second|min|minute|h|hr|hour|stunde|heure|hora|ora|d|day|tag|jour|dia|giorno|dag|w|week|woche|semaine|semana|settimana|month|monat|mois|mes|mese|maand|miesiac|y|year|jahr)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex ATime();

    // self_discharge_mV_per_day, driftMillivoltPerDay
    [GeneratedRegex(@"(?:mv|millivolts?)[ _]*(?:per|a|pro|/)?[ _]*(day|d|tag|week|woche|month|monat|hour|h)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Words();
}
