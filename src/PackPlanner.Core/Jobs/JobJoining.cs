using System.Collections.Immutable;
using PackPlanner.Core.Screening;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Core.Jobs;

/// <summary>What happens if the cells of a job's group are joined as they rest now.</summary>
public static class JobJoining
{
    // A fifth of what a tap reading may lie off.
    private const double AlikeV = 0.02;

    /// <summary>Plans the joining of one group, with the link and the ratings that the job states.</summary>
    /// <param name="number">The group, from 1.</param>
    /// <param name="cells">Its cells as they were judged.</param>
    /// <param name="givens">What the job was told.</param>
    /// <returns>The plan, with the cautions that it raises.</returns>
    public static JoinPlan Plan(int number, IEnumerable<ScreenedCell> cells, JobGivens givens) => JoiningCheck.Plan(new JoinRequest(
        number,
        [.. cells.Select(cell => new JoinCell(cell.Label, cell.RestV, cell.ResistanceMilliohm, cell.CapacityAh, cell.HeldForSafety))],
        givens.LinkMilliohm ?? 0,
        givens.NumberOf("cellChargeA"),
        givens.NumberOf("cellDischargeA"),
        givens.Chemistry));

    /// <summary>Volts to which cells of a group are brought alone, before any joining.</summary>
    /// <param name="group">The group.</param>
    /// <param name="givens">What the job was told.</param>
    /// <returns>By label; empty where all may be joined as they rest.</returns>
    public static IReadOnlyDictionary<string, double> BroughtToV(JobGroup group, JobGivens givens)
    {
        double[] restV = [.. group.Cells.Select(cell => cell.RestV).OfType<double>()];
        // Nearer together than this they make no difference to a reading, and thousands of cells need not be planned for nothing.
        return restV.Length < 2 || restV.Max() - restV.Min() <= AlikeV
            ? ImmutableDictionary<string, double>.Empty
            : Plan(group.Number, group.Cells, givens).Cells.Where(step => step.IsBroughtAlone).ToDictionary(step => step.Label, step => step.BringToV!.Value, StringComparer.Ordinal);
    }

    /// <summary>How far apart the resting volts of cells may lie that are joined without more ado: the tightest of their limits.</summary>
    /// <param name="plan">The plan of a group.</param>
    /// <returns>Volts to either side of what the others settle at; null where no limit is known.</returns>
    public static double? ApartV(JoinPlan plan) => plan.Cells.Min(cell => cell.ApartV);
}
