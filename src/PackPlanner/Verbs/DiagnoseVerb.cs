using System.CommandLine;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>diagnose LOG…: which group limits the pack, what is wrong with it, what a repair gives back.</summary>
internal static class DiagnoseVerb
{
    private static readonly Argument<string[]> Logs = new("LOG") { Description = "one or several logs of the same pack: each is fitted alone, and the one that tells most gives the figures; packplanner compare tells what changed from one to the other; - for standard input", Arity = ArgumentArity.OneOrMore };
    private static readonly PackLogInput Input = new();

    internal static Verb Definition { get; } = new(
        "diagnose",
        "which group limits a pack, what is wrong with it, and what a repair gives back",
        [
            ("packplanner diagnose ride.csv --given pack.json", "every group's capacity, charge and resistance, with findings"),
            ("packplanner diagnose ride.csv --chemistry NMC --rated-ah 17.8Ah --use 38Wh/km", "and the range now and after each remedy"),
        ],
        [Logs],
        Input.All,
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        if (!Input.Given(call).Is(out GivenPackJson? given, out Refusal? why))
            return why;
        List<(PackLogInput.Read Read, RideDiagnosis Diagnosis)> all = [];
        foreach (string file in call.Value(Logs)!)
        {
            if (!PackLogInput.Open(call, file, given).Is(out PackLogInput.Read? read, out why))
                return why;
            if (all.Count > 0 && all[0].Read.Given.Series != read.Given.Series)
                return Refusal.Input("another-pack", file, $"it has {read.Given.Series} groups, {all[0].Read.File} has {all[0].Read.Given.Series}", "Give logs of one pack, or run diagnose for each.");
            call.Note($"{file}: {read.Reading.Log.Rows} rows read; fitting {read.Reading.Log.Groups} groups");
            all.Add((read, RideDiagnoser.Diagnose(read.Reading.Log, read.Given, call.Stopped)));
        }
        (PackLogInput.Read main, RideDiagnosis diagnosis) = RideDiagnoser.MostTelling([.. all.Select(a => (a.Read, a.Diagnosis))]);
        DiagnoseAnswer answer = DiagnoseWords.Answer(diagnosis, main.File, [.. all.Select(a => (a.Read.File, a.Diagnosis))], given.WhPerKm) with
        {
            Understood =
            [
                .. all.SelectMany(a => a.Read.Reading.Understood), .. main.Understood, .. diagnosis.Notes,
                .. all.Count > 1 ? [$"Each log was fitted by itself; the figures are those of {main.File}, which tells most. What changed between two: packplanner compare THEN NOW."] : Array.Empty<string>(),
            ],
        };
        answer = RowAccount.Together(all.Select(a => a.Read.Reading.Account)).Fill(answer);
        return Reply.Of(answer, DiagnoseAnswerContext.Default.DiagnoseAnswer, DiagnoseWords.Lines(answer), DiagnoseWords.Table(answer));
    }
}
