using System.CommandLine;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>job new|set|add|... JOB: the job of the screens, by script.</summary>
internal static class JobVerb
{
    private static readonly Argument<string> Action = new("DO") { Description = string.Join(", ", JobActions.All.Select(action => action.Name)) };
    private static readonly Argument<string> JobPath = new("JOB") { Description = "the job's file; .job.json is added when it is missing" };
    private static readonly Argument<string[]> Words = new("WORDS") { Description = "what to set, add or write; see the examples", Arity = ArgumentArity.ZeroOrMore };
    internal static readonly Option<string?> Reason = new("--reason") { Description = "why you set a verdict by hand" };
    internal static readonly Option<string?> Into = new("--into") { Description = "folder for the files that export writes" };

    internal static Verb Definition { get; } = new(
        "job",
        "keeps a job in one file: what you know, your data, your decisions, every change",
        [
            ("packplanner job new trike.job.json chemistry=NMC series=13", "makes a job and tells it two things"),
            ("packplanner job add trike.job.json cells.csv groups.json fit.json", "takes the data itself into the job"),
            ("packplanner job set trike.job.json parallel=9 ratedAh=5.0Ah reserve=10%", "an empty value makes it unknown again"),
            ("packplanner job verdict trike.job.json T091 hold --reason \"repeat it in slot 2\"", "a verdict by hand; auto goes back to the limits"),
            ("packplanner job edit trike.job.json T091 laterRestV=3.612V laterDate=2026-11-24", "what was read is kept beside"),
            ("packplanner job favour trike.job.json even-currents", "what comes first in the groups; or equal-ah, fewest-moves"),
            ("packplanner job remove trike.job.json tray.json", "takes a file out of it; undo brings it back"),
            ("packplanner job undo trike.job.json", "takes the last change back; redo makes it again"),
        ],
        [Action, JobPath, Words],
        [Reason, Into],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        string typed = call.Value(Action)!;
        string[] words = call.Value(Words) ?? [];
        string path = call.Value(JobPath)!;
        if (JobActions.All.All(known => known.Name != typed))
            return Refusal.CommandLine("unknown-action", $"job {typed}", $"job cannot \"{OneLine.Of(typed)}\"",
                $"Did you mean {NearestName.Of(typed, JobActions.All.Select(known => known.Name))}? packplanner help job shows them all.");
        if (typed == "new")
            return New(call, path, words);
        if (!JobFile.Open(path).Is(out OpenJob? job, out Refusal? why))
            return why;
        if (!JobActions.All.First(known => known.Name == typed).Run(call, job, words).Is(out JobActionDone? done, out why))
            return why;
        OpenJob saved = done.Job;
        if (!ReferenceEquals(saved.History, job.History) && saved.Path == job.Path && !JobFile.Save(saved).Is(out saved!, out why))
            return why;
        if (typed != "show")
            return Answer(saved, done, JobSummary.Quick(saved.History.Now));
        // A space that cannot be read is told, and the rest of the job is shown all the same.
        return JobSummary.Whole(saved.History, call.Stopped).Is(out IReadOnlyList<Caution>? cautions, out why) ? Answer(saved, done, cautions)
            : Answer(saved, done with { Understood = [.. done.Understood ?? [], $"The space is not judged: {why.Problem.Where}: {why.Problem.Why}. {why.Problem.Remedy}"] }, JobSummary.Quick(saved.History.Now));
    }

    private static Outcome<Reply> New(VerbCall call, string path, string[] words)
    {
        string file = JobFile.WithEnding(path);
        string title = Path.GetFileName(file);
        title = title[..^(title.EndsWith(JobFile.Ending, StringComparison.OrdinalIgnoreCase) ? JobFile.Ending : ".json").Length];
        OpenJob? made = null;
        if (!JobActions.Told(JobHistory.Of(new Job { Title = title.Length > 0 ? title : "job" }), words, Today.Date()).Is(out JobHistory? history, out Refusal? why)
            || !JobFile.Create(file, history).Is(out made, out why))
            return why;
        return Answer(made, new JobActionDone(made, [$"made {made.Path}"]), JobSummary.Quick(made.History.Now));
    }

    private static Reply Answer(OpenJob job, JobActionDone done, IReadOnlyList<Caution> cautions)
    {
        JobAnswer answer = JobSummary.Answer(job, done.Did, cautions) with { Understood = done.Understood ?? [], Files = done.Files ?? [] };
        answer = done.Account?.Fill(answer) ?? answer;
        return Reply.Of(answer, JobAnswerContext.Default.JobAnswer, JobSummary.Lines(answer), JobSummary.Table(answer));
    }
}
