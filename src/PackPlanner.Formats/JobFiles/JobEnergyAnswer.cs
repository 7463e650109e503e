using PackPlanner.Core.Cells;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.JobFiles;

/// <summary>What a job's groups deliver, as the verb energy answers it.</summary>
public static class JobEnergyAnswer
{
    /// <summary>Works it out.</summary>
    /// <param name="job">The job.</param>
    /// <param name="groups">Its groups.</param>
    /// <param name="outcome">How they came about.</param>
    /// <param name="notes">What of the job its groups do not follow.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>The answer, and the figures behind it; refused while something that it rests on is unknown.</returns>
    public static Outcome<(EnergyAnswer Answer, StringFigures Figures)> Of(
        Job job, IReadOnlyList<JobGroup> groups, GroupingOutcome? outcome, IEnumerable<string> notes, CancellationToken stopped)
    {
        if (job.Givens.Chemistry is null)
            return Refusal.Input("no-chemistry", job.Title, "the job does not say which chemistry its cells are", $"Set it: job set JOB chemistry={string.Join("|", Chemistries.All)}.");
        if (JobGroups.AreOfCells(job) && JobGroups.WhyNone(outcome) is { } none)
            return Refusal.Input("no-groups", $"{job.Title}, {none.Where}", none.Why, none.Remedy);
        if (JobEnergy.Request(job, groups, stopped) is not { } request)
            return Refusal.Input("no-groups", job.Title, "the job has neither groups with known capacities nor a last log that tells them", "Add cells, and set series and parallel; or add a log of a ride from full to empty, and set ratedAh.");
        if (request.EndsAtV >= request.ChargedToV)
            return Refusal.Input("limits-crossed", job.Title, $"{request.EndsAtV} V empty is not below {request.ChargedToV} V full", "Set fullV and emptyV of one cell.");
        if (!request.HasLimitsOfItsChemistry)
            return EnergyWords.LimitsOutside(request, job.Title, "Set fullV and emptyV of one cell, and the right chemistry.");
        StringFigures figures = StringFigures.Of(request, JobEnergy.Protection(job.Givens, groups), stopped);
        EnergyAnswer answer = EnergyWords.Answer(figures, job.Givens.NumberOf("whPerKm")) with
        {
            Understood = [.. notes, .. EnergyAssumptions.Of(request, job.Givens.RepeatabilityFraction is not null)],
        };
        return (answer, figures);
    }
}
