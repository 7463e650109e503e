namespace PackPlanner.Screens.Reading;

/// <summary>A path as people type, paste or drop it: quoted, with blanks behind backslashes, from the home folder, as a file's address.</summary>
internal static class TypedPath
{
    /// <summary>Whether the text can only be a path, and no part of a name.</summary>
    internal static bool IsPath(string text)
    {
        string bare = Bare(text);
        return (bare.Length > 0 && text.TrimStart()[0] is '"' or '\'') || bare is "." or ".." or "~" || bare.AsSpan().ContainsAny('/', '\\');
    }

    /// <summary>The whole path that is meant; null when nothing is typed.</summary>
    /// <param name="text">As it was typed.</param>
    /// <param name="folder">Where a path that is not whole begins.</param>
    internal static string? Full(string text, string folder)
    {
        string bare = Bare(text);
        if (bare.Length == 0)
            return null;
        if (bare.StartsWith("file:", StringComparison.OrdinalIgnoreCase) && Uri.TryCreate(bare, UriKind.Absolute, out Uri? address) && address.IsFile)
            bare = address.LocalPath;
        string[] meant = OperatingSystem.IsWindows() ? [bare] : [bare, Unescaped(bare), bare.Replace('\\', '/')];
        string[] whole = [.. meant.Select(path => Path.GetFullPath(FromHome(path), folder))];
        return whole.FirstOrDefault(Path.Exists) ?? whole[0];
    }

    // One sign of a pair counts already: the other comes with the end of what is being typed.
    private static string Bare(string text)
    {
        string bare = text.Trim();
        if (bare.Length > 0 && bare[0] is '"' or '\'' && !Path.Exists(bare))
            bare = bare.TrimEnd(bare[0]).TrimStart(bare[0]);
        return bare.Replace("\0", "", StringComparison.Ordinal);
    }

    private static string FromHome(string path) => path == "~" || path.StartsWith("~/", StringComparison.Ordinal)
        ? Path.Join(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), path[1..])
        : path;

    // As shells and file managers write a blank in a path: a backslash before it.
    private static string Unescaped(string path)
    {
        System.Text.StringBuilder plain = new();
        for (int i = 0; i < path.Length; i++)
        {
            if (path[i] == '\\' && i + 1 < path.Length)
                i++;
            plain.Append(path[i]);
        }

        return plain.ToString();
    }
}
