using System.Globalization;
using PackPlanner.Core.Packs;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.CavityScreen;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens;

/// <summary>Asks what carries the current, and tells what it loses: links on Place, cables on Energy, the same as the verb conductor.</summary>
internal sealed class ConductorAsk(Desk desk)
{
    internal static KeyAction Key(Desk desk) => new(
        KeyBook.Conductor, "link or cable", "asks metal, width, thickness and length of a link or the size of a cable: ohms, heat, and the copper that would do the same", () => new ConductorAsk(desk).Ask());

    private void Ask() => desk.Show(new ListOverlay(desk, "what carries the current?", () =>
    [
        new("nickel strip: width, thickness, length", "", () => AskBar(Metal.Nickel)),
        new("copper strip or bar: width, thickness, length", "", () => AskBar(Metal.Copper)),
        new("plated steel strip: width, thickness, length", "", () => AskBar(Metal.Steel)),
        new("copper cable by its size in mm²", "", AskCable),
        new("solid copper wire by gauge (AWG)", "", AskWire),
    ]));

    private void AskBar(Metal metal) => Field(
        $"{metal.ToString().ToLowerInvariant()}, mm", "Width x thickness x length between the joints, such as 10 x 0.2 x 25.", "",
        text => TypedCase.Sizes(text, [3], out double[] mm) ?? NotZero(mm),
        text =>
        {
            TypedCase.Sizes(text, [3], out double[] mm);
            AskPieces(pieces => ("bar", Conductor.Bar(metal, mm[0], mm[1], mm[2] / 1000, pieces)));
        });

    private void AskCable() => desk.Show(new ListOverlay(desk, "size of the cable, flexible copper", () =>
        [.. CableTable.SizesMm2.Select(mm2 => new ListItem(desk.Look.Prose(string.Create(CultureInfo.InvariantCulture, $"{mm2:0.#} mm²")), "", () =>
            AskLength(lengthM => AskPieces(pieces => ("cable", Conductor.Cable(mm2, flexible: true, lengthM, pieces))))))]));

    private void AskWire() => Field(
        "gauge", "A number from 36 to 1, or 1/0 to 4/0.", "",
        text => ConductorWords.Gauge(text.Trim()) is null ? $"\"{text.Trim()}\" is no gauge." : null,
        text => AskLength(lengthM => AskPieces(pieces => ("wire", Conductor.Wire(ConductorWords.Gauge(text.Trim())!.Value, lengthM, pieces)))));

    private void AskLength(Action<double> then) => Field(
        "length, mm", "All of the way that the current takes, there and back: 2000 for a metre of two leads.", "",
        text => TypedCase.Sizes(text, [1], out double[] mm) ?? NotZero(mm),
        text =>
        {
            TypedCase.Sizes(text, [1], out double[] mm);
            then(mm[0] / 1000);
        });

    private void AskPieces(Func<int, (string Kind, Conductor Made)> made) => Field(
        "side by side", "How many share the current, side by side or in layers.", "1",
        text => Pieces(text) is null ? "A whole number of 1 or more was expected." : null,
        text => AskLoad(made(Pieces(text)!.Value), Pieces(text)!.Value));

    private void AskLoad((string Kind, Conductor Made) asked, int pieces) => Field(
        "amperes", "The current through all of them together; empty: only its ohms.", desk.Job?.Givens.NumberOf("steadyA") is { } steady ? desk.Look.AsTyped(steady, "0.##") : "",
        text => text.Trim().Length == 0 || Amperes(text) is not null ? null : "Amperes of 0 or more were expected, such as 40.",
        text =>
        {
            desk.CloseAll();
            desk.Show(Told(ConductorWords.Answer(asked.Kind, asked.Made, pieces, Amperes(text), degC: null)));
        });

    // The reservation stands before where the figures come from: whoever reads no further has read it.
    private static TextOverlay Told(ConductorAnswer answer)
    {
        IReadOnlyList<string> lines = [.. ConductorWords.Lines(answer).Where(line => line != StartingPointWords.NeverFinal && !line.StartsWith("  ", StringComparison.Ordinal))];
        return new TextOverlay("what this link or cable loses",
        [
            .. lines.Select((line, i) => (i == 0 ? "answer" : "", line)),
            ("caution", StartingPointWords.NeverFinal),
            .. answer.Basis.Select((line, i) => (i == 0 ? "where from" : "", line)),
            ("", "docs/methods/conductors.md; packplanner conductor answers the same, also for warm metal"),
        ]);
    }

    private void Field(string what, string tells, string initial, Func<string, string?> check, Action<string> accept) =>
        desk.Show(new FieldOverlay(desk, what, tells, initial, check, accept));

    private static string? NotZero(double[] mm) => mm.Contains(0) ? "A size is above zero." : null;

    private static int? Pieces(string text) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int pieces) && pieces is >= 1 and <= 1000 ? pieces : null;

    private static double? Amperes(string text) =>
        double.TryParse(text.Trim().TrimEnd('A', 'a', ' ').Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double ampere) && double.IsFinite(ampere) ? ampere : null;
}
