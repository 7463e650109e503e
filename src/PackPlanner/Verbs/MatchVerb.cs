using System.CommandLine;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Tables;
using PackPlanner.Formats.Words;
using UnitsNet;

namespace PackPlanner.Verbs;

/// <summary>match FILE... --series S --parallel P: which cell goes into which group.</summary>
internal static class MatchVerb
{
    private static readonly Argument<string[]> Files = new("FILE...") { Description = "tables of cells; - for standard input", Arity = ArgumentArity.OneOrMore };
    private static readonly Option<int?> Series = new("--series") { Description = "groups in series" };
    private static readonly Option<int?> Parallel = new("--parallel") { Description = "cells in parallel in each group" };
    private static readonly Option<string?> Lock = new("--lock") { Description = "table of cells that must be in a group: cell,group" };
    private static readonly Option<string?> LeaveOut = new("--leave-out") { Description = "labels of cells to leave out, commas between" };
    private static readonly Option<string?> Model = new("--model") { Description = "use only cells of this model, as the column model names it" };
    private static readonly Option<bool> All = new("--all") { Description = "no limits of capacity, resistance or lot; never cells that are set apart for safety or have no capacity" };
    private static readonly Option<bool> UseHeld = new("--use-held") { Description = "also cells on hold, except for safety" };
    private static readonly Option<string?> From = new("--from") { Description = "an existing grouping: a table cell,group or the JSON answer of match" };
    private static readonly Option<bool> FewestMoves = new("--fewest-moves") { Description = "with --from: exchange single cells only as long as the smallest group gains" };
    private static readonly Option<bool> KeepBatches = new("--keep-batches") { Description = "cells of one batch in a group as far as they go, before equal groups; the table has a column batch" };
    private static readonly Option<string> Prefer = new("--prefer") { Description = "equal-ah (default), or even-currents: like resistances within each group", DefaultValueFactory = _ => "equal-ah" };
    private static readonly Option<string?> Replace = new("--replace") { Description = "name the best three spares for this cell" };
    private static readonly Option<string?> Load = new("--load") { Description = "current drawn from the pack, such as 40A, to check it against --discharge-rating" };
    private static readonly Option<string?> Rating = new("--discharge-rating") { Description = "highest continuous current of a new cell, such as 10A" };

    internal static Verb Definition { get; } = new(
        "match",
        "which cell goes into which group, how equal they are, and whether better is possible",
        [
            ("packplanner match cells.csv --series 13 --parallel 4", "groups that hold as nearly the same as can be"),
            ("packplanner match cells.csv --series 13 --parallel 4 --repeatability 1% --json", "with like group resistances inside the tester's noise"),
            ("packplanner match cells.csv --series 13 --parallel 4 --from groups.csv --replace K07", "the best spares for a failed cell"),
        ],
        [Files],
        [Series, Parallel, Lock, LeaveOut, Model, All, UseHeld, From, FewestMoves, KeepBatches, Prefer, Replace, Load, Rating, .. ScreeningOptions.All],
        Run);

    private static Outcome<Reply> Run(VerbCall call)
    {
        ScreeningRequest screening = ScreeningOptions.Read(call) with { OnlySafety = call.Value(All) };
        (int series, int parallel) = (Count(call, Series), Count(call, Parallel));
        double? loadA = call.Quantity<ElectricCurrent>(Load, "a current", "40A")?.Amperes;
        double? ratingA = call.Quantity<ElectricCurrent>(Rating, "a current", "10A")?.Amperes;
        string prefer = call.Value(Prefer)!;
        if (prefer is not ("equal-ah" or "even-currents"))
            call.Refuse("--prefer", $"\"{prefer}\" is not a preference", "Write --prefer equal-ah or --prefer even-currents.");
        if (call.Value(FewestMoves) && call.Value(From) is null)
            call.Refuse("--fewest-moves", "there is no grouping to move cells of", "Give it with --from FILE.");
        if (call.Value(KeepBatches) && (call.Value(FewestMoves) || prefer == "even-currents" || (call.Value(Replace) is not null && call.Value(From) is not null)))
            call.Refuse("--keep-batches", "it does not go with --fewest-moves, --prefer even-currents or --from with --replace: each of them says what comes first", "Leave one of them out.");
        if ((long)series * parallel > 1_000_000)
            call.Refuse("--parallel", $"{series} x {parallel} cells are more than a pack has", "Give at most a million places.");
        if (call.Wrong is { } wrong)
            return wrong;
        if (!CellFiles.Read(call, call.Value(Files)!, screening).Is(out CellTableReading? reading, out Refusal? why))
            return why;
        ScreenedLot lot = LotScreening.Judge(reading.Rows, screening);
        IReadOnlyList<string> leaveOut = Split(call.Value(LeaveOut));
        if (call.Value(Model) is { } model)
        {
            if (!UsableCells.OfOtherModels(lot, model).Is(out IReadOnlyList<string>? others, out why))
                return why;
            leaveOut = [.. leaveOut.Union(others)];
        }

        if (!UsableCells.Of(lot, leaveOut, call.Value(UseHeld), screening.Chemistry is not null).Is(out UsableCells? usable, out why))
            return why;
        if (call.Value(KeepBatches) && usable.Cells.All(cell => cell.Batch is null))
            return Refusal.Input("no-batches", string.Join(", ", call.Value(Files)!), "no cell that may be used names its batch", "Add a column batch, or leave --keep-batches out.");
        List<string> understood = [.. reading.Understood, .. usable.Understood];
        if (!Request(call, lot, usable, (series, parallel), understood).Is(out GroupingRequest? request, out why))
            return why;
        GroupingOutcome outcome = GroupMatcher.Match(request, Progress(call), call.Stopped);
        return outcome switch
        {
            GroupingOutcome.Matched matched => Reply(call, matched.Pack, request, lot, usable, reading.Account, understood, (loadA, ratingA, screening)),
            GroupingOutcome.TooFewCells few => TooFew(few, lot, usable, series, parallel, screening, reading),
            GroupingOutcome.Contradicts contradicts => new Refusal(ExitCodes.Input, "contradiction", contradicts.Problem),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static Outcome<GroupingRequest> Request(VerbCall call, ScreenedLot lot, UsableCells usable, (int Series, int Parallel) shape, List<string> understood)
    {
        ReadOptions options = call.ReadOptions();
        Dictionary<string, int> locks = [];
        List<IReadOnlyList<string>>? existing = null;
        if (call.Value(Lock) is { } lockFile)
        {
            if (!GroupingFile.Read(lockFile, options with { GroupsFromOne = true }).Is(out GroupingRead? pins, out Refusal? why))
                return why;
            understood.AddRange(pins.Understood);
            foreach ((string cell, int group) in pins.Pairs)
                locks[cell] = group;
        }

        if (call.Value(From) is { } fromFile)
        {
            if (!GroupingFile.Read(fromFile, options).Is(out GroupingRead? placed, out Refusal? why))
                return why;
            understood.AddRange(placed.Understood);
            existing = [];
            for (int g = 1; g <= Math.Max(shape.Series, placed.Pairs.Max(pair => pair.Group)); g++)
                existing.Add([.. placed.Pairs.Where(pair => pair.Group == g).Select(pair => pair.Cell)]);
        }

        // A failed cell is still where it was: the pack stands as it is, and only the spare is asked for.
        bool asItIs = call.Value(Replace) is not null && existing is not null;
        return GroupableCells.Request(lot, usable.Cells, shape.Series, shape.Parallel) with
        {
            Locks = locks,
            Existing = existing,
            FewestMoves = call.Value(FewestMoves),
            Shunned = existing is not null && call.Value(FewestMoves) ? ShunnedSpares.Of(lot, existing, shape.Parallel, new JobGivens()) : new HashSet<string>(),
            KeepBatches = call.Value(KeepBatches),
            AsItIs = asItIs,
            Prefer = call.Value(Prefer) == "even-currents" ? GroupingPreference.EvenCurrents : GroupingPreference.EqualAh,
            Seed = call.Seed,
        };
    }

    private static Outcome<Reply> Reply(
        VerbCall call, MatchedPack pack, GroupingRequest request, ScreenedLot lot, UsableCells usable, RowAccount account, List<string> understood,
        (double? LoadA, double? RatingA, ScreeningRequest Screening) use)
    {
        MatchAnswer answer = MatchWords.Answer(pack, request);
        if (call.Value(Replace) is { } failed)
        {
            if (!pack.Groups.Any(group => group.Cells.Any(cell => cell.Label == failed)))
                return Refusal.Input("unknown-cell", $"--replace {failed}", "no group holds a cell with this label",
                    $"Did you mean {NearestName.Of(failed, pack.Groups.SelectMany(group => group.Cells).Select(cell => cell.Label))}? --from FILE says how the pack is built.");
            answer = answer with
            {
                Replacements = [.. SpareAdvice.Best(pack, failed).Select(option => new MatchReplacementJson(
                    option.Cell, option.Group, option.GroupAh, option.PackAh, option.GroupResistanceMilliohm, option.BringToV))],
            };
        }

        answer = account.Fill(answer) with
        {
            LeftOut = [.. answer.LeftOut, .. usable.LeftOut],
            NotUsed = [.. usable.NotUsed.Select(cell => new MatchNotUsedJson(
                cell.Label, VerdictWords.Name(cell.Verdict), [.. cell.Reasons.Select(reason => reason.Code).Distinct()]))],
            Understood = understood,
            Cautions = CautionJson.From(
            [
                .. use.Screening.Chemistry is not null ? LotCautions.OfOneChemistry(lot) : lot.Cautions,
                .. GroupingCautions.Of(pack, lot.Chemistry, use.Screening.FullV, use.LoadA, use.RatingA, use.Screening.RatedAh),
            ]),
        };
        GroupingCell[] used = [.. pack.Groups.SelectMany(group => group.Cells)];
        bool assumed = lot.Repeatability.From == RepeatabilityOrigin.Assumed;
        IReadOnlyList<string> words =
        [
            // Before the figures, which say nothing of it.
            .. GroupingCautions.Mixed(pack) is { } mixed ? (string[])[$"{mixed.Saw}: --model uses one alone."] : [],
            .. MatchWords.Lines(answer, request.Parallel, (lot.Repeatability.Fraction, assumed), used.Average(cell => cell.CapacityAh)),
        ];
        Dictionary<string, GroupingCell> byLabel = usable.Cells.ToDictionary(cell => cell.Label);
        return Verbs.Reply.Of(answer, MatchAnswerContext.Default.MatchAnswer, words, MatchWords.Table(answer, byLabel));
    }

    private static Refusal TooFew(
        GroupingOutcome.TooFewCells few, ScreenedLot lot, UsableCells usable, int series, int parallel, ScreeningRequest screening, CellTableReading reading)
    {
        List<string> next = [];
        foreach ((int s, int p) in few.Shapes)
            next.Add(s == series
                ? $"{s} in series with {p} in parallel needs {s * p}"
                : $"{s} in series with {p} in parallel needs {s * p}, but another number in series wants another charger and controller");
        string shapes = next.Count == 0 ? "These cells make no such pack. " : $"Nearest: {string.Join("; or ", next)}. ";
        int all = screening.OnlySafety
            ? 0
            : UsableCells.Count(LotScreening.Judge(reading.Rows, screening with { OnlySafety = true }), usable.LeftOut);
        string more = all > few.Usable ? $" --all would let {all} cells in." : "";
        int unused = lot.Cells.Count - few.Usable - usable.LeftOut.Count;
        string held = unused > 0 ? $"; {unused} are on hold or rejected" : "";
        return Refusal.NoAnswer("too-few-cells", $"{series} in series, {parallel} in parallel",
            $"{few.Usable} cells may be used and {few.Needed} are needed{held}",
            $"{shapes}Or test {few.Needed - few.Usable} more.{more}");
    }

    private static Progress<GroupingProgress>? Progress(VerbCall call) => call.Verbose
        ? new Progress<GroupingProgress>(best => call.Note($"packplanner: smallest group {best.SmallestAh} Ah, all within {best.SpreadAh} Ah so far"))
        : null;

    private static int Count(VerbCall call, Option<int?> option)
    {
        int value = call.Value(option) ?? 0;
        if (value is < 1 or > 100_000)
            call.Refuse(option.Name, call.Value(option) is null ? $"{option.Name} is missing" : $"{value} is not a number of cells",
                $"Write {option.Name} with a whole number from 1 up, such as {option.Name} 4.");
        return value;
    }

    private static string[] Split(string? labels) =>
        (labels ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
