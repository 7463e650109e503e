using System.CommandLine;
using PackPlanner.Core.Bench;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>capacity FILE...: what logs of a cell or a string hold.</summary>
internal static class CapacityVerb
{
    private static readonly Argument<string[]> Files = new("FILE...") { Description = "charge and discharge logs of one cell or string; - for standard input", Arity = ArgumentArity.OneOrMore };
    private static readonly Option<string?> CutOffV = new("--cutoff-v") { Description = "where a discharge is to end, of what the log's volts show, such as 2.5V" };
    private static readonly Option<int?> Series = new("--series") { Description = "cells in series in what the log shows" };
    private static readonly Option<bool> CorrectOffset = new("--correct-offset") { Description = "take the current that the sensor shows at rest off every reading" };

    internal static Verb Definition { get; } = new(
        "capacity",
        "Ah, Wh and pulse resistance from the raw log of a cell or a string",
        [
            ("packplanner capacity discharge.csv --cutoff-v 2.5V", "charge of each step, and up to 2.5 V"),
            ("packplanner capacity pulses.csv --json", "every resistance with its step and seconds"),
        ],
        [Files],
        [CutOffV, Series, CorrectOffset, GroupFiles.RatedAh],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        CurveRequest request = new()
        {
            CutOffV = ScreeningOptions.Figure<ElectricPotential>(call, CutOffV, "V", "2.5V", volts => volts.Volts),
            Chemistry = call.Chemistry(),
            Series = call.Value(Series),
            CorrectOffset = call.Value(CorrectOffset),
        };
        double? ratedAh = GroupFiles.RatedAhOf(call);
        if (request.Series is < 1 or > 1000)
            call.Refuse("--series", $"{request.Series} is not a number of cells in series", "Give a whole number from 1 up.");
        if (call.Wrong is { } wrong)
            return wrong;
        List<(CurveReading Reading, TesterLogReading Log)> read = [];
        foreach (string file in call.Value(Files)!)
        {
            if (!TesterLogs.Read(file, Options(call, request) with { RatedAh = ratedAh }).Is(out TesterLogReading? log, out Refusal? why))
                return why;
            read.Add((TestCurves.Read(log.Curve, RequestFor(request, log)), log));
        }

        CapacityAnswer answer = RowAccount.Together(read.Select(each => each.Log.Account)).Fill(CapacityJson.From(read, request.CorrectOffset));
        answer = answer with
        {
            Understood = [.. read.SelectMany(each => each.Log.Understood), .. read.SelectMany(each => CapacityWords.Holes(each.Reading)), .. answer.Files.SelectMany(CapacityWords.Understood)],
        };
        return Reply.Of(answer, CapacityAnswerContext.Default.CapacityAnswer, CapacityWords.Lines(answer), CapacityWords.Table(answer));
    }

    private static CurveRequest RequestFor(CurveRequest request, TesterLogReading log) =>
        request with { Series = request.Series ?? (log.SeriesGroups > 1 ? log.SeriesGroups : null), IsStepTable = log.IsStepTable };

    private static ReadOptions Options(VerbCall call, CurveRequest request) => call.ReadOptions() with
    {
        Chemistry = request.Chemistry,
        Series = request.Series,
    };
}
