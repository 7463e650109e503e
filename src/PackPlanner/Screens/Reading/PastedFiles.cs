namespace PackPlanner.Screens.Reading;

/// <summary>Files that hold pasted tables while the program runs: a table may be read again with other words on its columns.</summary>
internal sealed class PastedFiles : IDisposable
{
    private readonly List<string> paths = [];

    /// <summary>Keeps a pasted text.</summary>
    /// <param name="text">The text.</param>
    /// <returns>The file's path.</returns>
    /// <exception cref="IOException">It cannot be written.</exception>
    internal string Keep(string text)
    {
        string path = Path.Combine(Path.GetTempPath(), $"packplanner-pasted-{Guid.NewGuid():N}.csv");
        paths.Add(path);
        File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Takes them all away.</summary>
    public void Dispose()
    {
        foreach (string path in paths)
        {
            try
            {
                File.Delete(path);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                // The job holds the data; what is left in the folder of passing files does no harm.
            }
        }

        paths.Clear();
    }
}
