using System.CommandLine;
using PackPlanner.Core.Fitting;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>fit CASE.json: does it fit, where is each cell, and how are they linked.</summary>
internal static class FitVerb
{
    private static readonly Argument<string> Case = new("CASE") { Description = "a case in JSON: cavity, keepOuts, cell, clearance, pack; - reads standard input" };
    private static readonly Option<bool> QuickLook = new("--quick") { Description = "regular nests and quick slabs only: a first look" };

    private static readonly Option<int> Work = new("--work") { Description = "millions of steps that the search may take (default 700); more can find more", DefaultValueFactory = _ => FitEffort.Full.MillionSteps };

    private static readonly Option<string?> Groups = new("--groups") { Description = "the JSON answer of match, or a table with cell and group: its cells go to the places of their group" };

    private static readonly Option<string> Prefer = new("--prefer")
    {
        Description = "places or groups: what counts where larger groups cost more than one place in fifty (default places)",
        DefaultValueFactory = _ => "places",
    };

    internal static Verb Definition { get; } = new(
        "fit",
        "fit cells into a cavity, group them and link them in series",
        [
            ("packplanner fit tray.json", "how many fit, the links, the masses, what is left over"),
            ("packplanner fit tray.json --csv --output places.csv", "where each cell goes"),
            ("packplanner fit tray.json --groups groups.json --csv", "which measured cell goes where"),
        ],
        [Case],
        [QuickLook, Work, Prefer, Groups],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        if (call.Value(Work) is < 0 or > 1_000_000)
            return Refusal.CommandLine("bad-option", "--work", $"{call.Value(Work)} is not from 0 to 1000000", "Write --work 700, or more to look longer.");
        if (call.Value(Prefer) is not ("places" or "groups"))
            return Refusal.CommandLine("bad-option", "--prefer", $"\"{call.Value(Prefer)}\" is neither places nor groups", "Write --prefer groups for the largest groups, whatever they cost in places.");
        string file = call.Value(Case)!;
        if (!JsonInput.Open(file, call.StandardInput).Is(out JsonInput? input, out Refusal? why))
            return why;
        List<string> understood = [];
        if (!FitCaseJson.Read(input, understood).Is(out FitCase? fitCase, out why))
            return why;
        PlacedGroups? placed = null;
        if (call.Value(Groups) is { } named)
        {
            if (!PlacedGroups.Read(named, call.ReadOptions()).Is(out placed, out why) || !placed.Asked(fitCase, file).Is(out fitCase, out why))
                return why;
            understood.AddRange(placed.Understood);
        }

        understood.AddRange(input.NotRead);
        FitEffort effort = new(call.Value(QuickLook) ? 0 : call.Value(Work), PreferGroups: call.Value(Prefer) == "groups");
        Progress notes = new(call);
        FitAnswer answer = LayoutSearch.Search(fitCase, effort, notes, call.Stopped, call.StoppedSoon);
        IReadOnlyDictionary<int, string>? labels = placed?.Labels(answer);
        FitAnswerJson json = FitAnswerJson.From(answer, understood, answer.Stopped ? "time-limit" : null, labels);
        return Reply.Of(
            json, FitAnswerJsonContext.Default.FitAnswerJson, FitWords.Of(answer, fitCase), FitWords.Table(answer, labels),
            answer.Fits ? ExitCodes.Done : ExitCodes.NoAnswer);
    }

    /// <summary>Notes on standard error with --verbose; told on the searching thread, so that the order stays.</summary>
    private sealed class Progress(VerbCall call) : IProgress<FitProgress>
    {
        public void Report(FitProgress value)
        {
            if (call.Verbose)
                call.Note($"{value.Stage}: best {value.Best} places{(value.Bound is int bound ? $", proven limit {bound}" : "")}");
        }
    }
}
