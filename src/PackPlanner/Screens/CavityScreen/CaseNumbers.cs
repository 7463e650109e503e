using PackPlanner.Core.Cells;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>What the case itself says of the numbers of this step: it holds until the job is told otherwise.</summary>
internal static class CaseNumbers
{
    internal static JobGivens Of(Job job)
    {
        if (job.FitCase is null || !JobFit.Case(job).Is(out FitCase? known, out _))
            return job.Givens;
        (string Key, JobValue? Value)[] said =
        [
            ("series", Number(known.Series)), ("parallel", Number(known.Parallel)), ("cellMassLimitKg", Number(known.CellMassLimitKg)),
            ("vents", known.HasVentPath is { } vents ? new JobValue.YesNo(vents) : null),
        ];
        Origin origin = new("its case", Standing.Measured);
        JobGivens givens = said.Where(one => one.Value is not null && !job.Givens.Known.ContainsKey(one.Key))
            .Aggregate(job.Givens, (sum, one) => sum.With(one.Key, new Given(one.Value!, origin)));
        // The one figure where the case wins: it weighed its own cell.
        return known.CellMassG is { } grams ? givens.With("cellMassKg", new Given(new JobValue.Number(grams / 1000), origin)) : givens;
    }

    private static JobValue.Number? Number(double? value) => value is { } known ? new JobValue.Number(known) : null;
}
