using PackPlanner.Formats.Words;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Reading;

namespace PackPlanner.Screens;

/// <summary>Adding a file: by its path, typed or pasted, or out of the files of a folder.</summary>
internal static class FileChooser
{
    internal static void Ask(Desk desk) => Ask(desk, Environment.CurrentDirectory);

    private static void Ask(Desk desk, string folder)
    {
        void Open(string other) => Ask(desk, other);
        void Take(string file) => ReadingStart.File(desk, file);
        IReadOnlyList<ListItem> items =
        [
            new("..", "folder above", () => Open(Path.GetDirectoryName(folder) ?? folder)),
            .. FolderEntries.Of(folder, "", Open, Take),
        ];
        (string Typed, IReadOnlyList<ListItem> Lines) last = ("", items);
        desk.Show(new ListOverlay(desk, $"a file of {folder}", () => items, narrows: true)
        {
            Asks = "name or path:",
            Instead = typed =>
            {
                if (!TypedPath.IsPath(typed))
                    return null;
                if (last.Typed != typed)
                    last = (typed, OfPath(TypedPath.Full(typed, folder)!, typed, Open, Take));
                return last.Lines;
            },
        });
    }

    // A path that is there is the first line, so that Enter takes it; one that is being typed shows what it can become.
    private static IReadOnlyList<ListItem> OfPath(string path, string typed, Action<string> open, Action<string> take)
    {
        if (Directory.Exists(path))
            return [new(path, "open this folder", () => open(path)), .. FolderEntries.Of(path, "", open, take)];
        if (File.Exists(path))
            return [new(path, FolderEntries.Size(new FileInfo(path)), () => take(path))];
        string above = Path.GetDirectoryName(path) ?? path;
        string name = Path.GetFileName(path);
        if (Directory.Exists(above))
        {
            IReadOnlyList<ListItem> close = name.Length == 0 ? [] : FolderEntries.Of(above, name, open, take);
            return close.Count > 0 ? close : [new($"there is no {OneLine.Of(name)} in {above}"), new(above, "open this folder", () => open(above))];
        }

        string there = above;
        while (!Directory.Exists(there) && Path.GetDirectoryName(there) is { } higher)
        {
            name = Path.GetFileName(there);
            there = higher;
        }

        bool isOfWindows = !OperatingSystem.IsWindows() && typed.Contains('\\', StringComparison.Ordinal);
        return
        [
            new($"there is no folder {OneLine.Of(name)} in {there}{(isOfWindows ? "; folders are parted by / here" : "")}"),
            new(there, "open this folder", () => open(there)),
        ];
    }
}
