using PackPlanner.Core.Grouping;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>Matched groups as JSON, as lines and as a table.</summary>
public static class MatchWords
{
    // Where a share is marked in the table. Our choice, no source; a warning needs a load and a rating.
    private const double MarkedShare = 1.25;

    /// <summary>Fills the answer.</summary>
    /// <param name="pack">The groups.</param>
    /// <param name="request">What was asked.</param>
    /// <returns>The answer without rows, cautions and replacements.</returns>
    public static MatchAnswer Answer(MatchedPack pack, GroupingRequest request)
    {
        double?[] resistances = [.. pack.Groups.Select(group => group.ResistanceMilliohm)];
        return new MatchAnswer(
            [.. pack.Groups.Select(group => new MatchGroupJson(
                group.Number, [.. group.Cells.Select(cell => cell.Label)], group.CapacityAh, group.ResistanceMilliohm, Share(group.LargestShare)))],
            [.. pack.LeftOut.Select(cell => cell.Label)],
            pack.SmallestAh, pack.SpreadAh, pack.SmallestBoundAh, pack.ProvenOptimal, pack.StrictSmallestAh, pack.StrictSpreadAh,
            pack.NoiseSpreadAh, Share(pack.LargestShare), null)
        {
            MinGroupProven = pack.SmallestProven,
            StepAh = pack.StepAh,
            Prefer = request.Prefer == GroupingPreference.EvenCurrents ? "even-currents" : "equal-ah",
            CostAh = Less(pack.StrictSmallestAh, pack.SmallestAh, pack.StepAh),
            OneMoreCellAh = pack.OneMoreCellAh,
            ResistanceSpreadMilliohm = Array.TrueForAll(resistances, r => r is not null) ? resistances.Max() - resistances.Min() : null,
            Moves = pack.Moves is null ? null : [.. pack.Moves.Select(move => new MatchMoveJson(move.Cell, move.FromGroup, move.ToGroup))],
            FewestMovesBound = pack.FewestMoves,
            Batches = pack.Batches is not { } batches ? null : new MatchBatchesJson(
                batches.MixedGroups, batches.FewestMixedGroups, batches.BoundAh,
                batches.MixedGroups == batches.FewestMixedGroups && Less(batches.BoundAh, pack.SmallestAh, pack.StepAh) <= 0,
                [.. pack.Groups.Select(group => (IReadOnlyList<string?>)[.. group.Cells.Select(cell => cell.Batch).Distinct().Order(StringComparer.Ordinal)])]),
            StoppedBy = pack.Stopped ? "time-limit" : null,
        };
    }

    /// <summary>Lines for people.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="parallel">Cells in each group.</param>
    /// <param name="noise">Repeatability for the noise sentence, and whether it is assumed.</param>
    /// <param name="meanAh">Mean capacity of the used cells.</param>
    /// <returns>The lines.</returns>
    public static IReadOnlyList<string> Lines(MatchAnswer answer, int parallel, (double Fraction, bool Assumed) noise, double meanAh)
    {
        int places = Decimals(answer.StepAh);
        List<string> lines =
        [
            $"{answer.Groups.Count} groups of {parallel}: the smallest holds {Figures.Fixed(answer.MinGroupAh, places)} Ah, the largest {Figures.Fixed(answer.SpreadAh, places)} Ah more.",
            Standing(answer, places),
            Noise(answer, parallel, noise, meanAh),
        ];
        if (answer.CostAh > 0)
            lines.Add($"The strict order would reach {Figures.Fixed(answer.StrictMinGroupAh, places)} Ah and all groups within {Figures.Fixed(answer.StrictSpreadAh, places)} Ah: this choice costs {Figures.Fixed(answer.CostAh, places)} Ah.");
        if (answer.Batches is { } kept)
            lines.Add(Batches(kept, answer, places));
        lines.Add("");
        lines.Add("  group        Ah   mohm  largest share       cells");
        lines.AddRange(answer.Groups.Select(group => Row(group, places)));
        if (answer.LeftOut.Count > 0)
            lines.Add($"Left out ({answer.LeftOut.Count}): {string.Join(" ", answer.LeftOut)}");
        if (answer.NotUsed.Count > 0)
            lines.Add($"May not be used ({answer.NotUsed.Count}): {string.Join(" ", answer.NotUsed.Take(12).Select(cell => cell.Cell))}{(answer.NotUsed.Count > 12 ? " …" : "")}; packplanner cells tells why.");
        lines.Add($"One more cell like the middle one would raise the smallest group by about {Figures.Digits(answer.OneMoreCellAh, 2)} Ah.");
        lines.AddRange(Moves(answer));
        lines.AddRange(Replacements(answer, places));
        return lines;
    }

    /// <summary>One row for each cell; <c>--from</c> reads it back.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="cells">The cells by label.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(MatchAnswer answer, IReadOnlyDictionary<string, GroupingCell> cells) => new(
        ["cell", "group", "capacityAh", "resistanceMilliohm", "groupCapacityAh", "groupResistanceMilliohm"],
        [
            .. answer.Groups.SelectMany(group => group.Cells.Select(cell => (IReadOnlyList<object?>)
                [cell, group.Group, cells[cell].CapacityAh, cells[cell].ResistanceMilliohm, group.CapacityAh, group.ResistanceMilliohm])),
            .. answer.LeftOut.Where(cells.ContainsKey).Select(cell => (IReadOnlyList<object?>)
                [cell, null, cells[cell].CapacityAh, cells[cell].ResistanceMilliohm, null, null]),
        ]);

    private static string Standing(MatchAnswer answer, int places)
    {
        string bound = Figures.Fixed(answer.MinGroupBoundAh, places);
        // What is proven is proven of the strict order; a choice made beyond it may have given some likeness away.
        if (answer.ProvenOptimal)
        {
            double given = Less(answer.SpreadAh, answer.StrictSpreadAh, answer.StepAh);
            return $"Proven: no grouping of these cells has a smallest group above {bound} Ah, nor "
                + (answer.CostAh == 0 && given > 0
                    ? $"groups closer together with it than {Figures.Fixed(answer.StrictSpreadAh, places)} Ah: this choice has {Figures.Fixed(given, places)} Ah more."
                    : "groups closer together with it.");
        }

        if (answer.MinGroupProven)
            return $"Proven: no grouping has a smallest group above {bound} Ah; that none has groups closer together is not proven.";
        double gap = Less(answer.MinGroupBoundAh, answer.StrictMinGroupAh, answer.StepAh);
        return $"Not proven to be the best: no grouping has a smallest group above {bound} Ah, so at most {Figures.Fixed(gap, places)} Ah are missing.";
    }

    private static string Batches(MatchBatchesJson kept, MatchAnswer answer, int places)
    {
        int pure = answer.Groups.Count - kept.MixedGroups;
        string most = kept.MixedGroups == kept.FewestMixedGroups ? "more is not possible" : $"{answer.Groups.Count - kept.FewestMixedGroups} would be possible";
        string best = kept.ProvenOptimal
            ? "no such grouping has a larger smallest group"
            : $"no such grouping has a smallest group above {Figures.Fixed(kept.MinGroupBoundAh, places)} Ah";
        return $"Batches kept together: {pure} of {answer.Groups.Count} groups are of one batch, {most}; {best}. Resistances were not levelled.";
    }

    private static string Noise(MatchAnswer answer, int parallel, (double Fraction, bool Assumed) noise, double meanAh)
    {
        double spread = answer.NoiseSpreadAh ?? GroupMatcher.NoiseSpreadAh(noise.Fraction, meanAh, answer.Groups.Count, parallel);
        string basis = noise.Assumed ? $"{Figures.Digits(100 * noise.Fraction, 2)} % assumed; --repeatability states yours" : $"{Figures.Digits(100 * noise.Fraction, 2)} %";
        return $"Measuring alone would spread groups that are equal in truth by about {Figures.Digits(spread, 2)} Ah ({basis}): equal beyond that is equal on paper only.";
    }

    private static string Row(MatchGroupJson group, int places)
    {
        string share = group.LargestShare is { } largest
            ? $"{Figures.Fixed(largest.TimesEqual, 2)} {largest.Cell}{(largest.TimesEqual > MarkedShare ? " !" : "")}"
            : "-";
        return $"  {group.Group,5} {Figures.Fixed(group.CapacityAh, places),9} {(group.ResistanceMilliohm is { } r ? Figures.Digits(r, 3) : "-"),6}  {share,-18}  {string.Join(" ", group.Cells)}";
    }

    private static IEnumerable<string> Moves(MatchAnswer answer)
    {
        if (answer.Moves is not { } moves)
            yield break;
        yield return moves.Count == 0 ? "Nothing moves." : $"{moves.Count} {(moves.Count == 1 ? "cell moves" : "cells move")} ({CellMove.Told(moves.Select(move => (move.FromGroup, move.ToGroup)))}):";
        if (answer.FewestMovesBound is { } least && moves.Count > 0)
            yield return moves.Count <= least
                ? "  Proven: no fewer moves reach such a smallest group."
                : $"  No fewer than {least} moves reach such a smallest group; that none between {least} and {moves.Count} do is not proven.";
        foreach (MatchMoveJson move in moves)
            yield return $"  {move.Cell} from {(move.FromGroup is { } from ? $"group {from}" : "the spares")} {(move.ToGroup is { } to ? $"to group {to}" : "out")}";
    }

    private static IEnumerable<string> Replacements(MatchAnswer answer, int places)
    {
        if (answer.Replacements is not { } options)
            yield break;
        yield return options.Count == 0 ? "There is no spare to put in." : "Best spares:";
        foreach (MatchReplacementJson option in options)
            yield return $"  {option.Cell} into group {option.Group}: group {Figures.Fixed(option.GroupAh, places)} Ah, pack {Figures.Fixed(option.PackAh, places)} Ah"
                + (option.GroupResistanceMilliohm is { } r ? $", {Figures.Digits(r, 3)} mohm" : "")
                + (option.BringToV is { } volts ? $"; bring it to {Figures.Fixed(volts, 3)} V first." : "; measure the group's resting volts and bring it to them first.");
    }

    private static MatchShareJson? Share(CurrentShare? share) =>
        share is null ? null : new MatchShareJson(share.Group, share.Cell, share.TimesEqual);

    // A difference of two multiples of the step, as the multiple that it is.
    private static double Less(double one, double other, double stepAh)
    {
        double steps = Math.Round((one - other) / stepAh);
        int places = Decimals(stepAh);
        return Math.Round(steps * stepAh, places);
    }

    private static int Decimals(double stepAh)
    {
        int places = 0;
        while (places < 7 && Math.Abs((stepAh * Math.Pow(10, places)) - Math.Round(stepAh * Math.Pow(10, places))) > 1e-6)
            places++;
        return places;
    }
}
