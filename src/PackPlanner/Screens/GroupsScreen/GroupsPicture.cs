using PackPlanner.Core.Cautions;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.GroupsScreen;

/// <summary>What the Groups step says.</summary>
internal static class GroupsPicture
{
    private const string Question = "Which cell goes in which group?";

    internal static readonly IReadOnlyList<(string Word, string Says)> Teaching =
    [
        ("for", "dividing cells into series groups of equal Ah, with the proven limit and what your tester's noise alone would show"),
        ("wants", "cells with Ah (2 Cells), and how many in series and in parallel (1 Job, or e here)"),
        ("gives", "each cell's group, sums that a calculator agrees with, spares, and who works hardest"),
    ];

    /// <param name="desk">The desk.</param>
    /// <param name="lot">The cells, where they are judged.</param>
    /// <param name="former">Groups from before, which stay on the screen until others come; null where there are none.</param>
    internal static StepPicture Waiting(Desk desk, ScreenedLot? lot, GroupsView? former)
    {
        JobGivens? givens = desk.Job?.Givens;
        if (desk.Answers.WasStopped)
        {
            StepPicture stopped = StepPicture.Stopped(Question, 3);
            return former is null ? stopped : stopped with { Answer = $"{stopped.Answer} The groups below are those from before." };
        }

        if (former is not null)
            return new StepPicture(Question, "Being matched anew; the groups below are those from before. The best so far is told in the row above the keys.", "Esc stops and keeps the best so far");
        if (desk.Answers.IsJudging)
            return new StepPicture(Question, "The cells are being judged first.", "Wait a moment");
        if (lot is null)
            return new StepPicture(Question, "Nothing to group yet: there are no cells.", "2 Cells: add a table of cells");
        return givens is { Series: null } or { Parallel: null }
            ? new StepPicture(Question, $"{lot.Count(Verdict.Use)} cells may be used. How many in series and in parallel is not known yet.", "e: say series and parallel")
            : new StepPicture(Question, "The groups are being made; the best so far is told in the row above the keys.", "Esc stops and keeps the best so far");
    }

    internal static StepPicture Refused(GroupingOutcome outcome, Desk desk) => outcome switch
    {
        GroupingOutcome.TooFewCells few => new StepPicture(
            Question,
            $"{few.Needed} cells needed, {few.Usable} usable: short of {few.Needed - few.Usable}.{Shapes(few)}",
            "e: choose another shape, or test more cells in 2 Cells"),
        GroupingOutcome.Contradicts { AsArranged: { } arranged } wrong => new StepPicture(
            Question, $"To be replaced: {wrong.WhyToReplace}, in group {Where(arranged, wrong.ToReplace)}. The groups stand as arranged; nothing is built by them until then.",
            "x in that group shows the best three spares; b, fewest moves, takes them", Arranged(desk)),
        GroupingOutcome.Contradicts wrong => new StepPicture(
            Question, $"{wrong.Problem.Where}: {wrong.Problem.Why}.", wrong.Problem.Remedy, Arranged(desk)),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    internal static StepPicture Of(GroupsView view, Desk desk)
    {
        MatchedPack pack = view.Pack;
        GroupsQuestion asked = view.Question;
        string how = asked.Followed is { } arranged ? $"Arranged ({arranged.From.From})"
            : pack.Stopped ? "Stopped with the best so far" : "Matched";
        string first = asked is { Followed: null, Favour: GroupsFavour.EvenCurrents } ? ", even currents first" : "";
        string best = asked.Followed is not null ? "" : Best(view, desk.Look);
        string noise = view.NoiseAh is { } ah
            ? $" But two tests of one cell differ by {desk.Look.Percent(view.Lot.Repeatability.Fraction, 1)} (noise{(view.Lot.Repeatability.From == RepeatabilityOrigin.Assumed ? ", assumed" : "")}): in truth about {desk.Look.Figure(ah, 2)} Ah."
            : "";
        string notes = Moved(pack) + string.Concat(asked.Notes.Select(note => $"{note} "));
        string answer = $"{notes}{how}{first}: {asked.Series} groups of {asked.Parallel} within {desk.Look.Figure(pack.SpreadAh, view.AhDecimals)} Ah{best}; {pack.LeftOut.Count} spare.{noise}";
        string inTruth = view.NoiseAh is { } likely ? $", {desk.Look.Figure(likely, 2)} with tester's noise" : "";
        string shorter = $"{notes}Within {desk.Look.Figure(pack.SpreadAh, view.AhDecimals)} Ah{inTruth}; {pack.LeftOut.Count} spare.";
        return new StepPicture(Question, answer, Next(view, desk), [.. GroupingCautions.Mixed(pack) is { } mixed ? (Caution[])[mixed] : [], .. view.Lot.Cautions.Where(c => c.Code is "caution-06" or "caution-14"), .. view.JoiningCautions(desk.Job!.Givens)]) { Short = shorter };
    }

    // How far what was arranged has to be taken apart, before anything else is said.
    private static string Moved(MatchedPack pack)
    {
        if (pack.Moves is not { } moves)
            return "";
        if (moves.Count == 0)
            return "No cell moves. ";
        string which = string.Join(", ", moves.Take(MostMoves).Select(move => move.ToGroup is not { } to ? $"{move.Cell} out of {move.FromGroup}"
            : move.FromGroup is { } from ? $"{move.Cell} from {from} to {to}" : $"{move.Cell} into {to}"));
        return $"{moves.Count} {(moves.Count == 1 ? "cell moves" : "cells move")} ({CellMove.Told(moves.Select(move => (move.FromGroup, move.ToGroup)))}): {which}{(moves.Count > MostMoves ? $" and {moves.Count - MostMoves} more" : "")}. ";
    }

    private const int MostMoves = 4;

    // What is proven is proven of the strict order; a choice made beyond it may have given some likeness away.
    private static string Best(GroupsView view, Look look)
    {
        MatchedPack pack = view.Pack;
        double half = pack.StepAh / 2;
        if (!pack.ProvenOptimal || pack.SmallestAh < pack.StrictSmallestAh - half)
            return $", smallest {look.Figure(pack.SmallestAh, view.AhDecimals)} of at most {look.Figure(pack.SmallestBoundAh, view.AhDecimals)}";
        return pack.SpreadAh <= pack.StrictSpreadAh + half ? ", proven best"
            : $", smallest proven best, within {look.Figure(pack.StrictSpreadAh, view.AhDecimals)} is possible";
    }

    private static string Where(MatchedPack arranged, IReadOnlySet<string> labels) =>
        string.Join(", ", arranged.Groups.Where(group => group.Cells.Any(cell => labels.Contains(cell.Label))).Select(group => group.Number));

    // Those of the cells that somebody put into groups: he may have them in his hands.
    private static IReadOnlyList<Caution> Arranged(Desk desk)
    {
        HashSet<string> places = [.. (desk.Job?.Grouping?.Groups.SelectMany(group => group) ?? []).Select(Caution.OfCell)];
        return [.. (desk.Answers.Lot?.Cautions ?? []).Where(caution => places.Contains(caution.Where))];
    }

    private static string Next(GroupsView view, Desk desk) =>
        desk.Job!.Givens.RepeatabilityFraction is null && view.Pack.Groups.All(group => group.ResistanceMilliohm is not null)
            ? "6 Energy. With your repeatability (p in Cells) mΩ is evened out too"
            : "6 Energy: how much of it is usable, and how far that is";

    private static string Shapes(GroupingOutcome.TooFewCells few) => few.Shapes.Count == 0
        ? ""
        : $" Enough for {string.Join(", ", few.Shapes.Take(3).Select(shape => $"{shape.Series}s{shape.Parallel}p"))}.";
}
