using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Verbs;

/// <summary>Where files made of a job go unless the user says otherwise.</summary>
internal static class JobFolder
{
    /// <summary>A folder of the job's name beside it, and in that one for this kind of file.</summary>
    internal static string Of(string job, string kind)
    {
        string name = Path.GetFileName(job);
        string bare = name.EndsWith(JobFile.Ending, StringComparison.OrdinalIgnoreCase) ? name[..^JobFile.Ending.Length] : Path.GetFileNameWithoutExtension(name);
        return Path.Combine(Path.GetDirectoryName(job) ?? "", bare, kind);
    }
}
