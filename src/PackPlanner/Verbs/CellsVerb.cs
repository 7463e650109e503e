using System.CommandLine;
using PackPlanner.Core.Screening;
using PackPlanner.Formats;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Tables;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>cells FILE...: which cells may be used, and why.</summary>
internal static class CellsVerb
{
    private static readonly Argument<string[]> Files = new("FILE...") { Description = "tables of cells, or one log a cell; - for standard input", Arity = ArgumentArity.OneOrMore };
    private static readonly Option<int?> Series = new("--series") { Description = "cells in series, to tell how many are still missing" };
    private static readonly Option<int?> Parallel = new("--parallel") { Description = "cells in parallel" };
    private static readonly Option<int?> Slots = new("--slots") { Description = "tester slots; without it, the slots that the table names" };
    private static readonly Option<string?> HoursPerTest = new("--hours-per-test") { Description = "hours of one test, such as 9" };

    internal static Verb Definition { get; } = new(
        "cells",
        "which cells may be used: use, hold or reject, each with its reason",
        [
            ("packplanner cells cells.csv --rated-ah 5 --chemistry NMC", "a verdict for each cell"),
            ("packplanner cells cells.csv --series 13 --parallel 9 --slots 4 --hours-per-test 9", "and how many more to test"),
            ("packplanner cells cells.csv --why T091", "where the verdict on one cell comes from"),
        ],
        [Files],
        [.. ScreeningOptions.All, Series, Parallel, Slots, HoursPerTest],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        ScreeningRequest request = ScreeningOptions.Read(call);
        int? series = Positive(call, Series);
        int? parallel = Positive(call, Parallel);
        int? slots = Positive(call, Slots);
        double? hours = ScreeningOptions.Figure<UnitsNet.Duration>(call, HoursPerTest, "h", "9", time => time.Hours);
        if ((series is null) != (parallel is null))
            call.Refuse(series is null ? "--series" : "--parallel", "--series and --parallel belong together", "Give both or neither.");
        if (call.Wrong is { } wrong)
            return wrong;
        if (!CellFiles.Read(call, call.Value(Files)!, request).Is(out CellTableReading? reading, out Refusal? why))
            return why;
        if (reading.Rows.Count == 0)
            return Refusal.Input("no-cells", string.Join(", ", call.Value(Files)!), "no usable row of a cell was found", "packplanner look FILE shows how the file was read.");
        ScreenedLot lot = LotScreening.Judge(reading.Rows, request);
        int places = (series ?? 0) * (parallel ?? 0);
        StillToTest? still = places == 0 ? null : StillToTest.Of(lot, places, slots ?? (lot.Slots.Count > 0 ? lot.Slots.Count : null), hours);
        CellsAnswer answer = reading.Account.Fill(CellsJson.From(lot, still, places)) with
        {
            Understood = [.. reading.Understood, .. CellsWords.Basis(lot)],
        };
        // --why T091 is about a cell; --why capacityAh is about a figure and answered for every verb alike.
        ScreenedCell? asked = call.Why is { } label ? lot.Cells.FirstOrDefault(cell => cell.Label == label) : null;
        if (asked is null && call.Why is { } what && Mistyped(what, lot) is { } mistyped)
            return mistyped;
        IReadOnlyList<string> words = asked is null ? CellsWords.Lines(lot, answer) : CellsWords.Why(lot, asked);
        if (asked is not null)
            answer = answer with { Why = words };
        return Reply.Of(answer, CellsAnswerContext.Default.CellsAnswer, words, CellsWords.Table(lot)) with { ExplainsItself = asked is not null };
    }

    // A label of the lot that is more likely meant than any figure.
    private static Refusal? Mistyped(string what, ScreenedLot lot)
    {
        string near = NearestName.Of(what, lot.Cells.Select(cell => cell.Label));
        return FigureRules.Of(what.Split('.')[^1], "cells") is null && NearestName.IsNear(what, near)
            ? Refusal.CommandLine("unknown-figure", $"--why {what}", "no cell and no figure of the answer has this name", $"Did you mean {near}?")
            : null;
    }

    private static int? Positive(VerbCall call, Option<int?> option)
    {
        int? value = call.Value(option);
        if (value is < 1 or > 100_000)
            call.Refuse(option.Name, $"{value} is not a number of cells or slots", "Give a whole number from 1 up.");
        return value;
    }
}
