using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Screens.EnergyScreen;

/// <summary>All that the usable energy depends on.</summary>
/// <param name="Groups">Groups of cells; empty when they come from a log.</param>
/// <param name="Diagnosis">What a log says of the groups; used only where there are no cells.</param>
/// <param name="Givens">Chemistry, load, limits, temperature.</param>
internal sealed record EnergyQuestion(IReadOnlyList<JobGroup> Groups, RideDiagnosis? Diagnosis, JobGivens Givens)
{
    /// <summary>Why it cannot be asked; null when it can.</summary>
    internal static string? WhyNot(JobGivens givens)
    {
        if (givens.Chemistry is not { } chemistry)
            return "the chemistry is not known, and without its curve no energy can be told";
        double full = givens.NumberOf("fullV") ?? chemistry.FullV;
        double empty = givens.NumberOf("emptyV") ?? chemistry.CutoffV;
        return !new EnergyRequest { Groups = [], Chemistry = chemistry, FullV = full, EmptyV = empty }.HasLimitsOfItsChemistry
            ? $"{full:0.00} V full and {empty:0.00} V empty do not fit {chemistry.Name}, which works from {chemistry.CutoffV:0.00} to {chemistry.FullV:0.00} V"
            : null;
    }

    internal StringFigures Answer(CancellationToken stop) => StringFigures.Of(Request(), JobEnergy.Protection(Givens, Groups), stop);

    private EnergyRequest Request() => Groups.Count > 0
        ? JobEnergy.Request(new Job { Title = "", Givens = Givens }, Groups)!
        : JobEnergy.Request(Givens, Diagnosis!)!;
}
