using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>job favour JOB WHAT: what comes first when the job's groups are made.</summary>
internal static class JobFavourAction
{
    internal static Outcome<JobActionDone> Run(VerbCall call, OpenJob job, string[] words)
    {
        if (words is not [string typed])
            return Refusal.CommandLine("words-missing", "job favour", $"it wants one of {string.Join(", ", FavourText.Names)}", "packplanner help job shows examples.");
        if (FavourText.Read(typed) is not { } favour)
            return Refusal.CommandLine("unknown-favour", typed, $"groups cannot favour \"{OneLine.Of(typed)}\"",
                $"Did you mean {NearestName.Of(typed, FavourText.Names)}? Known are {string.Join(", ", FavourText.Names)}.");
        if (favour == GroupsFavour.FewestMoves && job.History.Now.Grouping is null)
            return Refusal.Input("no-arrangement", job.Path, "moves are counted from groups that were arranged or added, and the job has none", "Add a file of groups by job add JOB groups.json.");
        return new JobActionDone(job with { History = job.History.Do(JobChanges.Prefer(favour)) }, [$"groups favour {typed}"]);
    }
}
