using System.CommandLine;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.Files;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>demo [NAME]: a whole job on invented data.</summary>
internal static class DemoVerb
{
    private static readonly Argument<string?> Name = new("NAME") { Description = "trike (default), tractor or scooter", Arity = ArgumentArity.ZeroOrOne };
    private static readonly Option<string?> Into = new("--into") { Description = "folder in which to write the job and its files; without it nothing is written" };

    internal static Verb Definition { get; } = new(
        "demo",
        "runs a whole job on invented data, to see what the program does",
        [
            ("packplanner demo trike", "150 used cells: verdicts, groups, a place in the tray, usable energy"),
            ("packplanner demo tractor --into tractor", "writes the invented job and its files into a folder, to go on from there"),
        ],
        [Name],
        [Into],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        string name = call.Value(Name) ?? "trike";
        if (!DemoRun.Of(name, call.Stopped).Is(out (DemoAnswer Answer, IReadOnlyList<string> Lines) done, out Refusal? why))
            return why;
        (DemoAnswer answer, IReadOnlyList<string> lines) = done;
        if (call.Value(Into) is { } folder)
        {
            if (!Write(name, folder).Is(out IReadOnlyList<string>? files, out why))
                return why;
            answer = answer with { Files = files };
            lines = [.. lines, "", .. files.Select(file => $"wrote {file}")];
        }

        MainTable table = new(["part", "figure", "value"], [.. Facts(answer).Select(fact => new object?[] { fact.Part, fact.Figure, fact.Value })]);
        return Reply.Of(answer, DemoAnswerContext.Default.DemoAnswer, lines, table);
    }

    private static Outcome<IReadOnlyList<string>> Write(string name, string folder)
    {
        string path = Path.Combine(folder, name + JobFile.Ending);
        if (File.Exists(path))
            return Refusal.Input("job-exists", path, "there is already a job of this name", "Name another folder. Nothing was written.");
        OpenJob? made = null;
        Refusal? why;
        if (!FolderFiles.Write(folder, DemoJobs.Files(name)).Is(out IReadOnlyList<string>? files, out why)
            || !DemoJobs.Of(name).Is(out JobHistory? job, out why)
            || !JobFile.Create(path, job).Is(out made, out why))
            return why;
        return new List<string>([made.Path, .. files]);
    }

    private static IEnumerable<(string Part, string Figure, object? Value)> Facts(DemoAnswer answer)
    {
        if (answer.Cells is { } cells)
            yield return ("cells", "use", cells.Use);
        if (answer.Match is { } match)
            yield return ("match", "minGroupAh", match.MinGroupAh);
        if (answer.Fit is { } fit)
            yield return ("fit", "used", fit.Used);
        if (answer.Size is { } size)
            yield return ("size", "energyUsableWh", size.EnergyUsableWh);
        if (answer.Energy is { } energy)
            yield return ("energy", "usableWh", energy.UsableWh);
        if (answer.Log is { } log)
            yield return ("log", "findings", log.Findings.Count);
    }
}
