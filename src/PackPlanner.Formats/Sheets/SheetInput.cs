using PackPlanner.Core.Cautions;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Core.Sharing;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Formats.Sheets;

/// <summary>Everything that sheets of one job are made from, worked out once.</summary>
public sealed record SheetInput
{
    /// <summary>The job.</summary>
    public required Job Job { get; init; }

    /// <summary>Its revision, which stands on every block.</summary>
    public required int Revision { get; init; }

    /// <summary>The day that stands on every block.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Its cells, judged; null when it has none.</summary>
    public ScreenedLot? Lot { get; init; }

    /// <summary>Its groups in series order from pack minus; empty while they cannot be made.</summary>
    public IReadOnlyList<JobGroup> Groups { get; init; } = [];

    /// <summary>What happens if the cells of each group are joined as they rest, in the order of <see cref="Groups"/>.</summary>
    public IReadOnlyList<JoinPlan> Joinings { get; init; } = [];

    /// <summary>Where the cells go; null when the job has no cavity or the pack does not fit.</summary>
    public FitAnswer? Layout { get; init; }

    /// <summary>The cavity; null when the job has none.</summary>
    public FitCase? Case { get; init; }

    /// <summary>The places with their cells; empty without a layout.</summary>
    public IReadOnlyList<PlacedLabel> Places { get; init; } = [];

    /// <summary>What the job's latest log shows; null without a log, or while the chemistry or the rated charge is unknown.</summary>
    public RideDiagnosis? Diagnosis { get; init; }

    /// <summary>From the label to usable energy; null while the chemistry, its limits or a capacity is unknown.</summary>
    public EnergyBudget? Energy { get; init; }

    /// <summary>Cautions that the job raises.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    /// <summary>What of the job is not followed on these sheets, and why; a sentence each.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Why there are no groups; null when there are.</summary>
    public string? WhyNoGroups { get; init; }

    /// <summary>Why there is no layout; null when there is.</summary>
    public string? WhyNoPlaces { get; init; }

    /// <summary>Works out what sheets need of a job.</summary>
    /// <param name="history">The job.</param>
    /// <param name="date">The day that goes on the sheets.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>The input; refused when the cavity cannot be read.</returns>
    public static Outcome<SheetInput> Of(JobHistory history, DateOnly date, CancellationToken stopped)
    {
        Job job = history.Now;
        ScreenedLot? lot = job.Rows.Count > 0 ? JobLot.Judge(job) : null;
        IReadOnlyList<JobGroup> groups = [];
        Core.Grouping.GroupingOutcome? outcome = null;
        if (lot is not null)
            (groups, outcome) = JobGroups.Find(job, lot, stopped);
        FitCase? fitCase = null;
        FitAnswer? layout = null;
        if (JobFiles.JobFit.IsAsked(job)
            && (!JobFiles.JobFit.Case(job).Is(out fitCase, out Refusal? why) || !JobFiles.JobFit.Find(job, stopped).Is(out layout, out why)))
            return why;
        RideLog? log = job.Logs.LastOrDefault()?.Log;
        RideDiagnosis? diagnosis = log is null ? null : JobLogs.Diagnosed(job.Givens, log, stopped);
        string? whyNoGroups = WhyNone(lot, outcome);
        return Of(job, history.Revision, date, lot, groups, whyNoGroups, fitCase, layout, diagnosis, JobEnergy.Figures(job, groups, diagnosis, stopped));
    }

    /// <summary>Why a job has no groups, as sheets say it.</summary>
    /// <param name="lot">Its cells, judged; null when it has none.</param>
    /// <param name="outcome">How groups came about.</param>
    /// <returns>Why; null when there are groups.</returns>
    public static string? WhyNone(ScreenedLot? lot, Core.Grouping.GroupingOutcome? outcome) => lot is null ? "the job has no cells"
        : JobGroups.WhyNone(outcome) is not { } none ? null
        : outcome is Core.Grouping.GroupingOutcome.Contradicts ? $"{none.Where}: {none.Why}" : none.Why;

    /// <summary>The same from answers that are known already, so that paper and screen agree and no search runs twice.</summary>
    /// <param name="job">The job.</param>
    /// <param name="revision">Its revision.</param>
    /// <param name="date">The day that goes on the sheets.</param>
    /// <param name="lot">Its cells, judged; null when it has none.</param>
    /// <param name="groups">Its groups as they were made.</param>
    /// <param name="whyNoGroups">Why there are none; null when there are.</param>
    /// <param name="fitCase">Its cavity; null without one.</param>
    /// <param name="layout">Its places; null or without places when it does not fit.</param>
    /// <param name="diagnosis">What its latest log shows.</param>
    /// <param name="energy">Its usable energy.</param>
    /// <returns>The input.</returns>
    public static SheetInput Of(
        Job job,
        int revision,
        DateOnly date,
        ScreenedLot? lot,
        IReadOnlyList<JobGroup> groups,
        string? whyNoGroups,
        FitCase? fitCase,
        FitAnswer? layout,
        RideDiagnosis? diagnosis,
        StringFigures? energy)
    {
        IEnumerable<Caution> ofPlaces = layout is null ? [] : LayoutOfJob.Cautions(layout, job.Givens);
        string? whyNoPlaces = NoPlaces(fitCase, layout);
        if (whyNoPlaces is not null)
            layout = null;
        IReadOnlyList<JobGroup> inSeries = JobPlaces.InSeries(groups, job.Placement);
        JoinPlan[] joinings = [.. inSeries.Select((group, i) => JobJoining.Plan(i + 1, group.Cells, job.Givens))];
        return new SheetInput
        {
            Diagnosis = diagnosis,
            Energy = energy?.Budget,
            Job = job,
            Revision = revision,
            Date = date,
            Lot = lot,
            Groups = inSeries,
            Joinings = joinings,
            Layout = layout,
            Case = fitCase,
            Places = layout is null ? [] : JobPlaces.Of(layout, groups, job.Placement),
            Cautions = Caution.OfOneJob([.. JobCautions.Of(job.Givens), .. energy?.Raised ?? [], .. lot?.Cautions ?? [], .. ofPlaces, .. diagnosis?.Cautions ?? [],
                .. GroupingCautions.Mixed(groups.Select(group => group.Cells.Select(cell => cell.Model))) is { } mixed ? (Caution[])[mixed] : [], .. joinings.SelectMany(plan => plan.Cautions), .. job.TapReadings.IsEmpty ? [] : JobTaps.Cautions(job, inSeries)]),
            Notes = [.. lot is null ? [] : JobGroups.Notes(job, lot), .. new[] { (layout?.Series ?? groups.Count) is > 0 and { } series ? job.Placement.LeftOutWithin(series) : null }.OfType<string>()],
            WhyNoGroups = whyNoGroups,
            WhyNoPlaces = whyNoPlaces,
        };
    }

    private static string? NoPlaces(FitCase? fitCase, FitAnswer? layout) => (fitCase, layout) switch
    {
        (null, _) => "the job has no cavity",
        (_, null) => "4 Cavity still looks for places",
        (_, { Series: null, Fits: true }) => "series and parallel are not said",
        (_, { Fits: false }) => "the pack does not fit its cavity",
        _ => null,
    };

    /// <summary>Volts from pack minus to the plus of a group, from the first row of the latest log that holds them all.</summary>
    /// <param name="group">From 1.</param>
    /// <returns>The sum; null when the log never shows all of them.</returns>
    internal double? LastRestV(int group)
    {
        if (Job.Logs.LastOrDefault()?.Log is not { } log || group > log.Groups)
            return null;
        for (int row = 0; row < log.Rows; row++)
        {
            double sum = log.GroupV.Take(group).Sum(volts => volts[row]);
            if (double.IsFinite(sum) && Math.Abs(log.CurrentA?[row] ?? 0) < 1)
                return sum;
        }

        return null;
    }
}
