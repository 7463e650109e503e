using PackPlanner.Core.Sharing;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>The answer of <c>join</c> as JSON, as lines and as a table.</summary>
public static class JoinWords
{
    /// <summary>Fills the answer.</summary>
    /// <param name="requests">What was asked, group by group.</param>
    /// <param name="plans">What came out, in the same order.</param>
    /// <returns>The answer without cautions.</returns>
    public static JoinAnswer Answer(IReadOnlyList<JoinRequest> requests, IReadOnlyList<JoinPlan> plans) => new(
        [.. plans.SelectMany((plan, g) => plan.Cells.Select((step, i) => Cell(plan.Group, requests[g].Cells[i], step)))],
        [.. plans.SelectMany(plan => plan.Order)],
        [.. plans.Where(plan => plan.WorstPair is not null).Select(plan => new JoinPairJson(plan.Group, plan.WorstPair!.Giver, plan.WorstPair.Receiver, plan.WorstPair.InrushA))]);

    /// <summary>Lines for people.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The lines.</returns>
    public static IReadOnlyList<string> Lines(JoinAnswer answer)
    {
        List<string> lines = [];
        foreach (IGrouping<int, JoinCellJson> group in answer.Groups.GroupBy(cell => cell.Group))
        {
            int first = group.Count(cell => cell.InrushA > cell.LimitA);
            lines.Add(first == 0 && group.Count() > 1 && group.All(cell => cell.InrushA is null)
                ? $"Group {group.Key}: no current on joining can be told, because resistances or resting volts are missing."
                : first == 0
                ? $"Group {group.Key}: no cell passes its limit on joining the others, where it is known."
                : $"Group {group.Key}: {first} of {group.Count()} cells would pass their limit on joining the others.");
            lines.Add("  order cell           rest V   all others A   in order A   limit A   bring to V   resistor ohm   hours");
            lines.AddRange(group.OrderBy(cell => cell.Order ?? int.MaxValue).Select(cell =>
                $"  {(cell.Order?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "-"),5} {cell.Cell,-12} {Figures.Fixed(cell.RestV, 3),8} {Figures.Digits(cell.InrushA, 3),14} {Figures.Digits(cell.InOrderA, 3),12} {Figures.Digits(cell.LimitA, 3),9} {Figures.Fixed(cell.BringToV, 3),12} {Figures.Digits(cell.ResistorOhm, 3),14} {Figures.Digits(cell.Hours, 2),7}{(cell.Reason is null ? "" : "  " + cell.Reason)}"));
        }

        lines.AddRange(answer.WorstPairs.Select(pair =>
            $"Worst pair of group {pair.Group}: {pair.Giver} into {pair.Receiver} alone, {Figures.Digits(pair.InrushA, 3)} A."));
        return lines;
    }

    /// <summary>One row for each cell.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(JoinAnswer answer) => new(
        ["group", "cell", "restV", "inrushA", "direction", "limitA", "inOrderA", "bringToV", "resistorOhm", "hours", "order", "reason"],
        [.. answer.Groups.Select(cell => (IReadOnlyList<object?>)[cell.Group, cell.Cell, cell.RestV, cell.InrushA, cell.Direction, cell.LimitA, cell.InOrderA, cell.BringToV, cell.ResistorOhm, cell.Hours, cell.Order, cell.Reason])]);

    private static JoinCellJson Cell(int group, JoinCell cell, JoinStep step) => new(
        group,
        step.Label,
        cell.RestV,
        JsonFigures.Known(step.InrushA),
        step.Receives switch { true => "receives", false => "gives", null => null },
        JsonFigures.Known(step.LimitA),
        JsonFigures.Known(step.InOrderA),
        JsonFigures.Known(step.BringToV),
        step.Within is { } within ? new RangeJson(within.LowV, within.HighV) : null,
        JsonFigures.Known(step.ResistorOhm),
        JsonFigures.Known(step.Hours),
        step.Place,
        step.Reason);
}
