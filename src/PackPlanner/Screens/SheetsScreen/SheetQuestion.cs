using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Sheets;

namespace PackPlanner.Screens.SheetsScreen;

/// <summary>All that sheets are made from: the job, and the groups and places that are on the other screens.</summary>
internal sealed record SheetQuestion(Job Job, int Revision, DateOnly Date, ScreenedLot? Lot, IReadOnlyList<JobGroup>? Groups, FitAnswer? Layout, RideDiagnosis? Diagnosis, EnergyBudget? Energy)
{
    /// <summary>What sheets are made from, or why none can be.</summary>
    internal sealed record Answered(SheetInput? Input, string? WhyNot);

    // The groups and places are those of the screens, so that paper and screen agree and no search runs twice.
    internal Answered Answer()
    {
        FitCase? fitCase = null;
        if (JobFit.IsAsked(Job) && !JobFit.Case(Job).Is(out fitCase, out Refusal? why))
            return new Answered(null, why.Problem.Why);
        IReadOnlyList<JobGroup> groups = Groups ?? [];
        FitAnswer? layout = Layout is { Fits: true, Series: not null } fits ? fits : null;
        return new Answered(
            new SheetInput
            {
                Job = Job,
                Revision = Revision,
                Date = Date,
                Lot = Lot,
                Groups = JobPlaces.InSeries(groups, Job.Placement),
                Layout = layout,
                Case = fitCase,
                Diagnosis = Diagnosis,
                Energy = Energy,
                Places = layout is null ? [] : JobPlaces.Of(layout, groups, Job.Placement),
                Cautions = [.. JobCautions.Of(Job.Givens), .. Lot?.Cautions ?? [], .. layout?.Cautions ?? [], .. Diagnosis?.Cautions ?? []],
                WhyNoGroups = groups.Count > 0 ? null : Lot is null ? "the job has no cells" : "3 Groups has none yet",
            },
            null);
    }
}
