using System.CommandLine;
using PackPlanner.Core.Packs;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>conductor: what does this wire, cable, bar or strip lose, and how warm could it get?</summary>
internal static class ConductorVerb
{
    private static readonly Option<string?> Awg = new("--awg") { Description = "solid copper wire by American gauge: 10, 4, 1/0" };
    private static readonly Option<double?> Mm2 = new("--mm2") { Description = "copper cable by its nominal size: 16, 25, 35" };
    private static readonly Option<bool> Stranded = new("--stranded") { Description = "the cable is of few stiff strands (class 2), not flexible (class 5)" };
    private static readonly Option<string?> Wide = new("--wide") { Description = "width of a bar or strip, such as 10mm" };
    private static readonly Option<string?> Thick = new("--thick") { Description = "its thickness, such as 0.2mm" };
    private static readonly Option<string> MetalOption = new("--metal") { Description = "copper, nickel or steel (plated), for a bar or strip", DefaultValueFactory = _ => "copper" };
    private static readonly Option<string?> Long = new("--long") { Description = "length, such as 25mm or 2m" };
    private static readonly Option<bool> BothWays = new("--both-ways") { Description = "the length is one way: the current goes there and back" };
    private static readonly Option<int> Pieces = new("--pieces") { Description = "how many side by side or in layers (default 1)", DefaultValueFactory = _ => 1 };
    private static readonly Option<string?> Load = new("--load") { Description = "current through it, such as 40A" };
    private static readonly Option<string?> TemperatureOption = new("--temperature") { Description = "of the metal, such as 60degC (default 20degC)" };

    internal static Verb Definition { get; } = new(
        "conductor",
        "what a wire, cable, bar or strip loses, its heat, and the copper that would do the same",
        [
            ("packplanner conductor --metal nickel --wide 10mm --thick 0.2mm --long 25mm --load 10A", "a link of nickel strip"),
            ("packplanner conductor --mm2 25 --long 2m --both-ways --load 150A --temperature 60degC", "the leads to the controller"),
        ],
        [],
        [Awg, Mm2, Stranded, Wide, Thick, MetalOption, Long, BothWays, Pieces, Load, TemperatureOption],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        double? loadA = call.Quantity<ElectricCurrent>(Load, "a current", "40A")?.Amperes;
        double? degC = call.Quantity<Temperature>(TemperatureOption, "a temperature", "60degC")?.DegreesCelsius;
        double? lengthM = call.Quantity<Length>(Long, "a length", "25mm")?.Meters;
        int pieces = call.Value(Pieces);
        if (loadA < 0 || lengthM <= 0 || pieces < 1)
            call.Refuse("--load, --long, --pieces", "a load below zero, or a length or a number of pieces that is not above zero", "Correct the figure.");
        if (degC is < -60 or > 250)
            call.Refuse("--temperature", $"{degC:0} °C is no temperature of a conductor in use", "Give degrees Celsius such as 60degC.");
        if (call.Wrong is null && lengthM is null)
            call.Refuse("--long", "the length is missing", "Write --long 25mm, or --long 2m --both-ways.");
        (string Kind, Conductor Conductor)? found = call.Wrong is null ? Of(call, lengthM!.Value * (call.Value(BothWays) ? 2 : 1), pieces) : null;
        if (call.Wrong is { } wrong)
            return wrong;
        ConductorAnswer answer = ConductorWords.Answer(found!.Value.Kind, found.Value.Conductor, pieces, loadA, degC);
        return Reply.Of(answer, ConductorAnswerContext.Default.ConductorAnswer, ConductorWords.Lines(answer), ConductorWords.Table(answer));
    }

    private static (string Kind, Conductor Conductor)? Of(VerbCall call, double lengthM, int pieces)
    {
        bool bar = call.Given(Wide) || call.Given(Thick);
        if ((call.Given(Awg) ? 1 : 0) + (call.Given(Mm2) ? 1 : 0) + (bar ? 1 : 0) != 1)
        {
            call.Refuse("--awg, --mm2, --wide", "one of a gauge, a cable's size, or width and thickness is wanted", "Write --awg 10, or --mm2 25, or --wide 10mm --thick 0.2mm.");
            return null;
        }

        return bar ? Bar(call, lengthM, pieces) : call.Given(Awg) ? Wire(call, lengthM, pieces) : Cable(call, lengthM, pieces);
    }

    private static (string, Conductor)? Wire(VerbCall call, double lengthM, int pieces)
    {
        if (IsCopper(call) && ConductorWords.Gauge(call.Value(Awg)!) is { } gauge)
            return ("wire", Conductor.Wire(gauge, lengthM, pieces));
        call.Refuse("--awg", $"\"{call.Value(Awg)}\" is no gauge", "Write a number from 36 to 1, or 1/0 to 4/0.");
        return null;
    }

    private static (string, Conductor)? Cable(VerbCall call, double lengthM, int pieces)
    {
        double mm2 = call.Value(Mm2)!.Value;
        if (IsCopper(call) && CableTable.SizesMm2.Contains(mm2))
            return ("cable", Conductor.Cable(mm2, !call.Value(Stranded), lengthM, pieces));
        call.Refuse("--mm2", $"{mm2} is no size of the table", $"Use one of {string.Join(", ", CableTable.SizesMm2)}.");
        return null;
    }

    private static (string, Conductor)? Bar(VerbCall call, double lengthM, int pieces)
    {
        double? wideMm = call.Quantity<Length>(Wide, "a length", "10mm")?.Millimeters;
        double? thickMm = call.Quantity<Length>(Thick, "a length", "0.2mm")?.Millimeters;
        if (!(wideMm > 0 && thickMm > 0))
            call.Refuse("--wide, --thick", "both are wanted, above zero", "Write --wide 10mm --thick 0.2mm.");
        if (!Enum.TryParse(call.Value(MetalOption), ignoreCase: true, out Metal metal) || !Enum.IsDefined(metal))
            call.Refuse("--metal", $"\"{call.Value(MetalOption)}\" is not known", "Use copper, nickel or steel.");
        return call.Wrong is null ? ("bar", Conductor.Bar(metal, wideMm!.Value, thickMm!.Value, lengthM, pieces)) : null;
    }

    private static bool IsCopper(VerbCall call)
    {
        if (string.Equals(call.Value(MetalOption), nameof(Metal.Copper), StringComparison.OrdinalIgnoreCase))
            return true;
        call.Refuse("--metal", "gauges and cable sizes are those of copper", "Leave --metal out, or give --wide and --thick.");
        return false;
    }
}
