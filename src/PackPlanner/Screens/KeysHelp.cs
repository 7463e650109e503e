using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens;

/// <summary>What ? shows: the keys of this screen in its present state, each with what it will do or why it cannot.</summary>
internal static class KeysHelp
{
    internal static TextOverlay Of(Desk desk)
    {
        List<(string, string)> lines = [("", $"on {desk.Step.Name}")];
        lines.AddRange(desk.Step.Keys.Select(Line));
        lines.Add(("", ""));
        lines.Add(("", "on every screen"));
        lines.Add((KeyBook.Steps.Key, "the step of that number"));
        lines.AddRange(desk.GeneralKeys.Where(key => desk.Step.Keys.All(own => own.Entry != key.Entry)).Select(Line));
        lines.Add((KeyBook.Back.Key, KeyBook.Back.Meaning));
        lines.Add(("field", KeyBook.InFields));
        lines.Add(("mouse", "click steps, hints, headings and rows; the wheel scrolls; with Shift the terminal selects text"));
        return new TextOverlay($"keys of {desk.Step.Name}, as things stand now", lines);
    }

    private static (string, string) Line(KeyAction action) =>
        (action.Entry.Key, action.WhyNot() is { } why ? $"{action.Does} - not now: {why}" : action.Does);
}
