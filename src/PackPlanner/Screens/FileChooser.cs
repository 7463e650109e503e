using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens;

/// <summary>Adding a file: a typed path, or the folder's files to choose from.</summary>
internal static class FileChooser
{
    internal static void Ask(Desk desk) => Ask(desk, Environment.CurrentDirectory);

    private static void Ask(Desk desk, string folder)
    {
        IReadOnlyList<ListItem> items =
        [
            new("type or paste the path of a file", "", () => AskPath(desk)),
            new("..", "folder above", () => Ask(desk, Path.GetDirectoryName(folder) ?? folder)),
            .. Entries(desk, folder),
        ];
        desk.Show(new ListOverlay(desk, $"a file of {folder}", () => items, narrows: true));
    }

    private static void AskPath(Desk desk) => desk.Show(new FieldOverlay(
        desk, "file", "A cell table, a log, a grouping, or a case.json; the file itself is left as it is.", "",
        path => path.Trim().Trim('"', '\'').Length == 0 ? "Type the path of a file." : null,
        path => Reading.ReadingStart.File(desk, path.Trim().Trim('"', '\''))));

    private static IEnumerable<ListItem> Entries(Desk desk, string folder)
    {
        FileSystemInfo[] entries;
        try
        {
            entries = [.. new DirectoryInfo(folder).EnumerateFileSystemInfos().Where(entry => !entry.Name.StartsWith('.')).Take(2000)];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return [new ListItem($"this folder cannot be read: {fault.Message}")];
        }

        return entries
            .OrderBy(entry => entry is FileInfo)
            .ThenBy(entry => entry.Name, StringComparer.OrdinalIgnoreCase)
            .Select(entry => entry is DirectoryInfo
                ? new ListItem(entry.Name + "/", "folder", () => Ask(desk, entry.FullName))
                : new ListItem(entry.Name, Size(((FileInfo)entry).Length), () => Reading.ReadingStart.File(desk, entry.FullName)));
    }

    private static string Size(long bytes) => bytes < 10_000 ? $"{bytes} B" : bytes < 10_000_000 ? $"{bytes / 1000} kB" : $"{bytes / 1_000_000} MB";
}
