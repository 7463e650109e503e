using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens;

/// <summary>What : shows: every command of every step with its key, so that the list teaches the keys.</summary>
internal static class CommandList
{
    internal static ListOverlay Of(Desk desk)
    {
        IReadOnlyList<ListItem> items = [.. Here(desk), .. Steps(desk), .. Elsewhere(desk), .. General(desk), .. Settings(desk)];
        return new ListOverlay(desk, "commands", () => items, narrows: true) { Runs = "run" };
    }

    private static IEnumerable<ListItem> Here(Desk desk) =>
        desk.Step.Keys.Where(key => !KeyBook.OnlyMoves(key.Entry)).Select(key => Item(desk, key, $"{desk.Step.Name} {key.Entry.Key}"));

    private static IEnumerable<ListItem> General(Desk desk) => desk.GeneralKeys.Select(key => Item(desk, key, key.Entry.Key));

    private static IEnumerable<ListItem> Steps(Desk desk) => desk.Steps.Select((step, i) =>
        new ListItem($"go to {step.Name}: {step.Picture.Question}", $"{i + 1}", () => desk.GoTo(i)));

    private static IEnumerable<ListItem> Elsewhere(Desk desk) => desk.Steps
        .Where(step => step != desk.Step)
        .SelectMany((step, i) => step.Keys
            .Where(key => key.Label.Length > 0 && !KeyBook.OnlyMoves(key.Entry))
            .Select(key => Item(desk, key, $"{step.Name} {key.Entry.Key}", () => desk.GoTo(IndexOf(desk, step)))));

    private static IEnumerable<ListItem> Settings(Desk desk) =>
    [
        new("units: " + (desk.Look.UsUnits ? "metric" : "US (lb, in, °F, miles)"), "", () => desk.ShowAs(desk.Look with { UsUnits = !desk.Look.UsUnits })),
        new("decimal mark: " + (desk.Look.DecimalComma ? "point" : "comma"), "", () => desk.ShowAs(desk.Look with { DecimalComma = !desk.Look.DecimalComma })),
        new("signs: " + (desk.Look.Ascii ? "lines, dots and units as they are" : "nothing beyond ASCII"), "", () => desk.ShowAs(desk.Look with { Ascii = !desk.Look.Ascii })),
        new($"by script: {StepList.ByScript(desk.At)}", "", () => Copy(desk, StepList.ByScript(desk.At))),
        .. JobCommands.Of(desk),
    ];

    private static void Copy(Desk desk, string words) =>
        desk.Says = (desk.Around.Copy(words) ? "copied: " : "") + words + "  (--plain: a fact a line, --json: one document)";

    private static ListItem Item(Desk desk, KeyAction key, string aside, Action? before = null) =>
        new($"{(key.Label.Length > 0 ? key.Label + ": " : "")}{key.Does}", aside, () =>
        {
            before?.Invoke();
            desk.Press(key);
        });

    private static int IndexOf(Desk desk, IStep step) => desk.Steps.ToList().IndexOf(step);
}
