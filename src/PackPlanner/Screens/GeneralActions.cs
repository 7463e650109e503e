using PackPlanner.Formats.Words;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens;

/// <summary>The keys that work on every screen.</summary>
internal static class GeneralActions
{
    internal static IReadOnlyList<KeyAction> For(Desk desk) =>
    [
        new(KeyBook.Help, "keys", "lists the keys of this screen", () => desk.Show(KeysHelp.Of(desk))),
        new(KeyBook.Commands, "commands", "lists every command, narrowed by typing", () => desk.Show(CommandList.Of(desk))),
        new(KeyBook.Cautions, "cautions", "lists the cautions, each with why, do and do not", () => desk.Show(new CautionsOverlay(desk))),
        new(KeyBook.WhereFrom, "where from", "shows the inputs, rule, source and spread of the figure under the cursor",
            () => desk.Step.WhereFrom() is null ? "nothing under the cursor has a figure to explain" : null,
            () => ShowWhereFrom(desk)),
        new(KeyBook.Undo, "undo", UndoWords(desk),
            () => desk.Open?.History.UndoName is null && !CanBringBack(desk) ? "nothing to take back" : null,
            () => Undo(desk)),
        new(KeyBook.Redo, "", "redo: makes the change that was taken back again",
            () => desk.Open?.History.RedoName is null ? "nothing to make again" : null,
            () => Redo(desk)),
        new(KeyBook.Write, "write", "writes this screen's answer and table to a file",
            () => desk.Job is null ? "no job is open" : null,
            () => WriteScreen.Ask(desk)),
        new(KeyBook.Copy, "", "copy: the row or the answer goes to the terminal's clipboard", () => Copy(desk)),
        new(KeyBook.Leave, "leave", "leaves; every change is saved already", desk.Leave),
    ];

    private static string UndoWords(Desk desk) =>
        CanBringBack(desk) ? "brings back the job that was put aside"
        : desk.Open?.History.UndoName is { } name ? $"takes back: {name}" : "takes the last change back";

    private static bool CanBringBack(Desk desk) => desk.Open is null && desk.Store.Deleted is not null;

    private static void ShowWhereFrom(Desk desk)
    {
        if (desk.Step.WhereFrom() is { } from)
            desk.Show(new TextOverlay($"where {from.Title} comes from", from.Lines));
    }

    private static void Undo(Desk desk)
    {
        if (CanBringBack(desk))
        {
            desk.Store.BringBack();
            return;
        }

        string name = desk.Open!.History.UndoName!;
        desk.Open.Undo();
        desk.Says = $"undone: {name}   (U makes it again)";
        desk.TellIfNotSaved();
    }

    private static void Redo(Desk desk)
    {
        string name = desk.Open!.History.RedoName!;
        desk.Open.Redo();
        desk.Says = $"made again: {name}";
        desk.TellIfNotSaved();
    }

    private static void Copy(Desk desk)
    {
        string text = desk.Look.Of(OneLine.Of(desk.Step.CopyText() ?? desk.Step.Picture.Answer));
        desk.Says = desk.Around.Copy(text)
            ? $"copied: {text}"
            : "This terminal takes no copies from programs; w writes the screen to a file.";
    }
}
