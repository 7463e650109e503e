using PackPlanner.Core.Screening;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Core.Jobs;

/// <summary>What happens if the cells of a job's group are joined as they rest now.</summary>
public static class JobJoining
{
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

    /// <summary>How far apart the resting volts of cells may lie that are joined without more ado: the tightest of their limits.</summary>
    /// <param name="plan">The plan of a group.</param>
    /// <returns>Volts to either side of what the others settle at; null where no limit is known.</returns>
    public static double? ApartV(JoinPlan plan) => plan.Cells.Min(cell => cell.ApartV);
}
