using PackPlanner.Formats.Words;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens;

/// <summary>What a folder holds, as lines to choose from: folders first, then files, each by name.</summary>
internal static class FolderEntries
{
    // More lines than anybody looks through; what is typed is looked for among all.
    private const int Most = 2000;

    /// <summary>The lines.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="part">Only names with this in them; names that begin with it come first.</param>
    /// <param name="open">What a folder does when it is chosen.</param>
    /// <param name="take">What a file does.</param>
    internal static IReadOnlyList<ListItem> Of(string folder, string part, Action<string> open, Action<string> take)
    {
        List<FileSystemInfo> entries;
        try
        {
            entries =
            [
                .. new DirectoryInfo(folder).EnumerateFileSystemInfos()
                    .Where(entry => (!entry.Name.StartsWith('.') || part.StartsWith('.')) && entry.Name.Contains(part, StringComparison.OrdinalIgnoreCase))
                    .OrderBy(entry => !entry.Name.StartsWith(part, StringComparison.OrdinalIgnoreCase))
                    .ThenBy(entry => entry is FileInfo)
                    .ThenBy(entry => entry.Name, StringComparer.OrdinalIgnoreCase)
                    .Take(Most + 1),
            ];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return [new ListItem($"{folder} cannot be read: {OneLine.Of(fault.Message)}")];
        }

        List<ListItem> items = [.. entries.Take(Most).Select(entry => Line(entry, open, take))];
        if (entries.Count > Most)
            items.Add(new ListItem($"and more: the first {Most} are listed; type the path of another"));
        return items;
    }

    private static ListItem Line(FileSystemInfo entry, Action<string> open, Action<string> take) => entry is FileInfo file
        ? new ListItem(entry.Name, Size(file), () => take(entry.FullName))
        : new ListItem(entry.Name + "/", "folder", () => open(entry.FullName));

    /// <summary>How much a file holds; a link to nothing holds nothing.</summary>
    internal static string Size(FileInfo file)
    {
        long bytes = file.Exists ? file.Length : 0;
        return bytes < 10_000 ? $"{bytes} B" : bytes < 10_000_000 ? $"{bytes / 1000} kB" : $"{bytes / 1_000_000} MB";
    }
}
