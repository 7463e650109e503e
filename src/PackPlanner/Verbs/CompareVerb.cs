using System.CommandLine;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>compare THEN NOW: what changed in a pack between two logs.</summary>
internal static class CompareVerb
{
    private static readonly Argument<string> Then = new("THEN") { Description = "the earlier log" };
    private static readonly Argument<string> Now = new("NOW") { Description = "the later log of the same pack" };
    private static readonly Option<double?> KmThen = new("--km-then") { Description = "kilometres of the earlier ride" };
    private static readonly Option<double?> KmNow = new("--km-now") { Description = "kilometres of the later ride" };
    private static readonly PackLogInput Input = new();

    internal static Verb Definition { get; } = new(
        "compare",
        "what changed in a pack between two logs, and how much of it is pack, cold or vehicle",
        [
            ("packplanner compare may.csv october.csv --given pack.json", "change of each group's Ah and milliohm at like temperature"),
            ("packplanner compare may.csv october.csv --given pack.json --km-then 41 --km-now 33 --use 38Wh/km", "and whether the vehicle uses more, and the range"),
        ],
        [Then, Now],
        [.. Input.All, KmThen, KmNow],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        if (call.Value(KmThen) <= 0 || call.Value(KmNow) <= 0)
            return Refusal.CommandLine("bad-option", "--km-then, --km-now", "a ride has more than 0 km", "Give the kilometres of each ride.");
        if (!Input.Given(call).Is(out GivenPackJson? given, out Refusal? why))
            return why;
        if (!PackLogInput.Open(call, call.Value(Then)!, given).Is(out PackLogInput.Read? then, out why))
            return why;
        if (!PackLogInput.Open(call, call.Value(Now)!, given).Is(out PackLogInput.Read? now, out why))
            return why;
        if (then.Given.Series != now.Given.Series)
            return Refusal.Input("another-pack", now.File, $"it has {now.Given.Series} groups, {then.File} has {then.Given.Series}", "Give two logs of one pack.");
        RideDiagnosis before = RideDiagnoser.Diagnose(then.Reading.Log, then.Given, call.Stopped);
        RideDiagnosis after = RideDiagnoser.Diagnose(now.Reading.Log, now.Given, call.Stopped);
        PackComparison comparison = PackComparison.Of(before, after, call.Value(KmThen), call.Value(KmNow));
        CompareAnswer answer = CompareAnswer.From(comparison, given.WhPerKm) with
        {
            Understood = [.. then.Reading.Understood, .. now.Reading.Understood, .. now.Understood, .. comparison.Notes],
            Cautions = CautionJson.From([.. before.Cautions, .. after.Cautions]),
        };
        answer = RowAccount.Together([then.Reading.Account, now.Reading.Account]).Fill(answer);
        return Reply.Of(answer, CompareAnswerContext.Default.CompareAnswer, CompareWords.Lines(answer), CompareWords.Table(answer));
    }
}
