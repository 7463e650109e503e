using System.CommandLine;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>The options that say how a lot is judged, for every verb that judges one.</summary>
internal static class ScreeningOptions
{
    internal static readonly Option<string?> RatedAh = new("--rated-ah") { Description = "capacity of a new cell, Ah" };
    private static readonly Option<string?> MinPercent = new("--min-percent") { Description = "least capacity in percent of rated, or of the lot's median where no rated one is known (default 80, our choice)" };
    private static readonly Option<string?> MaxMilliohm = new("--max-milliohm") { Description = "highest resistance, milliohm (default 1.5 times the median)" };
    private static readonly Option<string?> FullV = new("--full-v") { Description = "charge limit from the data sheet, such as 4.2V (default: the chemistry's)" };
    private static readonly Option<string?> EmptyV = new("--empty-v") { Description = "cut-off from the data sheet, such as 2.5V (default: the chemistry's)" };
    private static readonly Option<string?> Require = new("--require") { Description = "readings without which a cell is held: resistance, rest-voltage, self-discharge, condition; commas between" };
    private static readonly Option<bool> CorrectSlots = new("--correct-slots") { Description = "judge capacities with each slot's own offset taken off" };

    internal static IReadOnlyList<Option> All { get; } = [RatedAh, MinPercent, MaxMilliohm, FullV, EmptyV, Require, CorrectSlots];

    internal static ScreeningRequest Read(VerbCall call) => new()
    {
        RatedAh = Figure<ElectricCharge>(call, RatedAh, "Ah", "5", charge => charge.AmpereHours),
        LeastFraction = Percent(call),
        HighestMilliohm = Figure<ElectricResistance>(call, MaxMilliohm, "mohm", "60", resistance => resistance.Milliohms),
        Chemistry = call.Chemistry(),
        FullV = Figure<ElectricPotential>(call, FullV, "V", "4.2V", volts => volts.Volts),
        EmptyV = Figure<ElectricPotential>(call, EmptyV, "V", "2.5V", volts => volts.Volts),
        RepeatabilityFraction = Repeatability(call),
        Required = Required(call),
        CorrectSlots = call.Value(CorrectSlots),
    };

    /// <summary>An option whose name states its unit: a bare number is in that unit, another unit is converted.</summary>
    internal static double? Figure<TQuantity>(
        VerbCall call, Option<string?> option, string unit, string example, Func<TQuantity, double> convert)
        where TQuantity : struct, IQuantity
    {
        if (call.Value(option) is not { } typed)
            return null;
        string withUnit = TypedQuantity.Split(typed, out _, out string own) && own.Length == 0 ? typed + unit : typed;
        double? value = call.Quantity<TQuantity>(option.Name, withUnit, "a value", example) is { } quantity ? convert(quantity) : null;
        if (value is <= 0)
        {
            call.Refuse(option.Name, $"\"{typed}\" is not above zero", $"Write {option.Name} {example}.");
            return null;
        }

        return value;
    }

    private static double? Percent(VerbCall call)
    {
        double? fraction = Figure<Ratio>(call, MinPercent, "%", "80", ratio => ratio.DecimalFractions);
        if (fraction is > 1.5)
            call.Refuse("--min-percent", $"{100 * fraction} % of the rated capacity is more than any cell holds", "Write --min-percent 80.");
        return fraction;
    }

    private static double? Repeatability(VerbCall call)
    {
        double? fraction = call.RepeatabilityFraction();
        if (fraction is < 0 or > 0.5)
            call.Refuse("--repeatability", $"{100 * fraction} % is not how well a tester repeats", "Write --repeatability 1.5%.");
        return fraction;
    }

    private static List<ReadingName> Required(VerbCall call)
    {
        List<ReadingName> required = [];
        foreach (string word in (call.Value(Require) ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            string name = word is "rest" or "resting-volts" ? "rest-voltage" : word.ToLowerInvariant();
            if (VerdictWords.Reading(name) is { } reading)
                required.Add(reading);
            else
                call.Refuse("--require", $"\"{word}\" is not a reading", $"Did you mean {NearestName.Of(name, Enum.GetValues<ReadingName>().Select(VerdictWords.Name))}?");
        }

        return required;
    }
}
