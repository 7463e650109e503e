using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Formats.Sheets;

namespace PackPlanner.Screens.SheetsScreen;

/// <summary>All that sheets are made from: the job, and the groups and places that are on the other screens.</summary>
internal sealed record SheetQuestion(Job Job, int Revision, DateOnly Date, ScreenedLot? Lot, GroupingOutcome? Outcome, IReadOnlyList<JobGroup>? Groups, FitAnswer? Layout, RideDiagnosis? Diagnosis, StringFigures? Energy)
{
    /// <summary>What sheets are made from, or why none can be.</summary>
    internal sealed record Answered(SheetInput? Input, string? WhyNot);

    // The groups and places are those of the screens, so that paper and screen agree and no search runs twice.
    internal Answered Answer()
    {
        FitCase? fitCase = null;
        if (JobFit.IsAsked(Job) && !JobFit.Case(Job).Is(out fitCase, out Refusal? why))
            return new Answered(null, why.Problem.Why);
        string? whyNoGroups = Groups is { Count: > 0 } ? null : Lot is null ? "the job has no cells" : Outcome is null ? "3 Groups has none yet" : SheetInput.WhyNone(Lot, Outcome);
        return new Answered(SheetInput.Of(Job, Revision, Date, Lot, Groups ?? [], whyNoGroups, fitCase, Layout, Diagnosis, Energy), null);
    }
}
