using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.Sharing;

/// <summary>Cautions 7 and 8, graded by amperes.</summary>
internal static class JoiningCautions
{
    /// <summary>Difference of resting volts up to which cells of unknown resistance raise nothing.</summary>
    internal const double SmallDifferenceV = 0.05;

    // A danger above twice the cell's Ah as amperes, or above 50 A with more than 1 V between them. Common practice, no source.
    private const double DangerPerHour = 2;
    private const double DangerA = 50;
    private const double DangerV = 1;

    internal static IReadOnlyList<Caution> Of(JoinRequest request, JoinBench bench, IReadOnlyList<JoinStep> steps)
    {
        List<Caution> cautions = [];
        for (int i = 0; i < steps.Count; i++)
        {
            JoinCell cell = request.Cells[i];
            if (!cell.NotToBeCharged && cell.RestV is not null && Current(bench, cell, steps[i]) is { } current)
                cautions.Add(current);
        }

        if (request.Chemistry?.Name == "LFP" && bench.Joinable.Count > 1)
            cautions.Add(new Caution("caution-08", SignalWord.Notice, $"group {request.Group}", "LFP cells to be joined: equal volts do not mean equal charge"));
        if (request.Cells.Any(cell => cell.RestV is null))
            cautions.Add(new Caution("caution-07", SignalWord.Notice, $"group {request.Group}",
                $"not checked: no resting volts for {string.Join(", ", request.Cells.Where(cell => cell.RestV is null).Select(cell => cell.Label).Take(5))}"));
        return cautions;
    }

    private static Caution? Current(JoinBench bench, JoinCell cell, JoinStep step)
    {
        double othersV = bench.Others(cell)?.OpenV ?? bench.Joinable.Where(other => !ReferenceEquals(other, cell)).Select(other => other.RestV!.Value).DefaultIfEmpty(cell.RestV!.Value).Average();
        double differenceV = Math.Abs(othersV - cell.RestV!.Value);
        string where = $"cell {cell.Label}";
        if (step.InrushA is not { } inrushA)
            return differenceV > SmallDifferenceV
                ? new Caution("caution-08", SignalWord.Caution, where, $"its resistance is unknown and it differs from the others by {differenceV:0.000} V; above {SmallDifferenceV} V that matters")
                : null;
        bool fast = (inrushA > DangerPerHour * cell.CapacityAh) || (inrushA > DangerA && differenceV > DangerV);
        if (step.LimitA is not { } limitA)
            return fast
                ? new Caution("caution-07", SignalWord.Danger, where, $"{inrushA:0.0#} A on joining, {differenceV:0.000} V apart")
                : new Caution("caution-07", SignalWord.Notice, where, $"not checked: {inrushA:0.0#} A on joining, but neither a rating nor ampere-hours are known");
        if (inrushA <= limitA)
            return null;
        string bring = step.BringToV is not { } volts ? "Do not join it."
            : step.IsBroughtAlone ? $"Bring it to {volts:0.000} V alone first, then join in the stated order."
            : "It lies where it should: bring those that lie off to its volts alone first, then join in the stated order.";
        return new Caution("caution-07", fast ? SignalWord.Danger : SignalWord.Warning, where,
            $"{inrushA:0.0#} A on joining, {differenceV:0.000} V apart; {limitA:0.0#} A is what the {(step.Receives == true ? "receiver may be charged with and the givers may give" : "giver may give and the receivers may be charged with")}", bring);
    }
}
