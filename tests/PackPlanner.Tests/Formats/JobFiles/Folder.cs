namespace PackPlanner.Tests.Formats.JobFiles;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
internal sealed class Folder : IDisposable
{
    internal string Path { get; } = Directory.CreateTempSubdirectory("packplanner-test-").FullName;

    internal string File(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
