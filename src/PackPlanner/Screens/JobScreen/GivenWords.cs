using System.Globalization;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.JobScreen;

/// <summary>Values of the givens form in words, and where they come from.</summary>
internal static class GivenWords
{
    /// <summary>A value as it is shown; unknown is a dash.</summary>
    internal static string Value(GivenEntry entry, JobGivens givens, Look look)
    {
        if (entry.Kind == GivenKind.YesNo)
            return Tick(givens.TickOf(entry.Key)) + " " + Short(entry);
        JobValue? value = givens.Known.GetValueOrDefault(entry.Key)?.Value ?? FromChemistry(entry, givens);
        return value switch
        {
            null => "-",
            JobValue.Word word => word.Value,
            JobValue.Number number => Number(entry.Kind, number.Value, look),
            JobValue.Moment moment => moment.Value.ToString("d MMM yyyy", CultureInfo.InvariantCulture),
            _ => "-",
        };
    }

    /// <summary>Who said it; blank when nobody did.</summary>
    /// <param name="row">The line.</param>
    /// <param name="givens">The givens.</param>
    /// <param name="under">The value on the line that is asked about; null: each of them, where they come from more than one.</param>
    internal static string From(GivenRow row, JobGivens givens, int? under = null) => under is { } at
        ? From(row.Entries.ElementAt(at), givens)
        : string.Join(" / ", row.Entries.Select(entry => From(entry, givens)).Where(from => from.Length > 0).Distinct());

    private static string From(GivenEntry entry, JobGivens givens) => givens.Known.TryGetValue(entry.Key, out Given? given) ? Origin(given.From)
        : FromChemistry(entry, givens) is not null ? givens.Chemistry!.Name : "";

    internal static string Origin(Origin from) =>
        from.On is { } day ? $"{from.From}, {day.ToString("d MMM", CultureInfo.InvariantCulture)}" : from.From;

    /// <summary>Whether everything on the line is known.</summary>
    internal static bool IsKnown(GivenRow row, JobGivens givens) => row.Entries.All(entry =>
        givens.Known.ContainsKey(entry.Key) || FromChemistry(entry, givens) is not null);

    /// <summary>What is used while the user has said nothing, because the chemistry says it.</summary>
    internal static JobValue? FromChemistry(GivenEntry entry, JobGivens givens)
    {
        double? volts = entry.Key switch
        {
            "fullV" => givens.FullV,
            "emptyV" => givens.EmptyV,
            "nominalV" => givens.NominalV,
            _ => null,
        };
        return volts is { } known ? new JobValue.Number(known) : null;
    }

    /// <summary>What stands in the field when a value is changed: the figure in full, in its own unit.</summary>
    internal static string Initial(GivenEntry entry, JobGivens givens, Look look) => givens.Known.GetValueOrDefault(entry.Key)?.Value switch
    {
        JobValue.Word word => word.Value,
        JobValue.Number number when entry.Kind == GivenKind.Fraction => look.AsTyped(number.Value * 100, "0.####"),
        JobValue.Number number => look.AsTyped(FieldUnits.Shown(entry.Kind, number.Value, look), FieldUnits.AreOthers(entry.Kind, look) ? "0.####" : "0.########"),
        _ => "",
    };

    private static string Number(GivenKind kind, double value, Look look)
    {
        return kind switch
        {
            GivenKind.Fraction => look.Figure(value * 100, value * 100 % 1 == 0 ? 0 : 1) + " %",
            GivenKind.DegC => look.Temperature(value),
            GivenKind.Kilometres => look.Distance(value, 1),
            GivenKind.Millimetres => look.Length(value),
            GivenKind.Kilograms => look.Mass(value, value < 1 ? 3 : 1),
            GivenKind.WattHoursPerKm when look.UsUnits => look.Use(value),
            GivenKind.Volts => look.Figure(value, value >= 10 && value % 1 == 0 ? 0 : 2),
            _ => look.AsTyped(value, "0.####"),
        };
    }

    private static string Tick(bool? ticked) => ticked switch { true => "[x]", false => "[ ]", null => "[-]" };

    private static string Short(GivenEntry entry) => entry.Key switch
    {
        "bms" => "BMS per group",
        "cellFuse" or "clamping" or "vents" => "",
        _ => entry.What,
    };
}
