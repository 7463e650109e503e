using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>job remove JOB FILE...: takes files out of a job again; undo brings them back.</summary>
internal static class JobRemoveAction
{
    internal static Outcome<JobActionDone> Run(VerbCall call, OpenJob job, string[] words)
    {
        if (words.Length == 0)
            return Refusal.CommandLine("words-missing", "job remove", "it wants names of files as job show lists them, such as cells.csv or s2", "packplanner help job shows examples.");
        JobHistory history = job.History;
        foreach (string word in words)
        {
            IReadOnlyList<JobSource> sources = history.Now.Sources;
            JobSource[] meant = sources.Any(source => source.Id == word)
                ? [sources.First(source => source.Id == word)]
                : [.. sources.Where(source => source.File == Path.GetFileName(word))];
            if (meant.Length == 0)
                return Refusal.Input("unknown-source", word, sources.Count == 0 ? "the job holds no file" : "the job holds no file of this name",
                    sources.Count == 0 ? "packplanner job show JOB lists what it holds." : $"Did you mean {NearestName.Of(word, sources.Select(source => source.File))}? Nothing was changed.");
            if (meant.Length > 1)
                return Refusal.Input("source-twice", word, $"the job holds {meant.Length} files of this name: {string.Join(", ", meant.Select(source => source.Id))}", $"Name the one that is meant, such as {meant[^1].Id}. Nothing was changed.");
            history = history.Do(JobChanges.Remove(meant[0]));
        }

        return new JobActionDone(job with { History = history }, [.. words.Select(word => $"took out {word}; undo brings it back")]);
    }
}
