using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>The cavity of a job, and where the cells go in it.</summary>
public static class JobFit
{
    /// <summary>Whether the job has places for its cells: a cavity, or all that a plain block needs.</summary>
    /// <param name="job">A job.</param>
    /// <returns>True when <see cref="Case"/> and <see cref="Find"/> can be asked.</returns>
    public static bool IsAsked(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return job.FitCase is not null || JobBlock.IsKnown(job.Givens);
    }

    /// <summary>Reads the job's fit case; without one the plain block is its own.</summary>
    /// <param name="job">A job.</param>
    /// <returns>The case; refused when the job has none or when it cannot be read.</returns>
    public static Outcome<FitCase> Case(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (job.FitCase is not { } document)
            return JobBlock.Of(job.Givens) is { } block ? block.Case : NoCavity(job);
        return JobDocuments.Root(document).Is(out JsonInput? input, out Refusal? why) ? FitCaseJson.Read(input, []) : why;
    }

    /// <summary>Takes the places from the answer that the job holds; else searches them by regular nests, as holders and hands want them; where those do not take the pack, also freely, unless no layout can hold it.</summary>
    /// <param name="job">A job.</param>
    /// <param name="stopped">The user's cancel; the best so far is answered.</param>
    /// <param name="progress">Told of the best so far; may be null.</param>
    /// <param name="first">Told what rows alone hold, where that is not enough and the search goes on freely; may be null.</param>
    /// <returns>The places; refused when there is no cavity, or when the places of the answer do not keep its rules.</returns>
    public static Outcome<FitAnswer> Find(Job job, CancellationToken stopped, IProgress<FitProgress>? progress = null, Action<FitAnswer>? first = null)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (job.FitCase is null)
            return JobBlock.Of(job.Givens) is { } block ? block.Answer : NoCavity(job);
        if (!Case(job).Is(out FitCase? fitCase, out Refusal? why))
            return why;
        FitCase asked = Asked(fitCase, job.Givens);
        if (job.FitAnswer is { } places)
            return GivenPlaces.Of(places, asked);
        FitAnswer regular = LayoutSearch.Search(asked, FitEffort.Quick, progress, stopped);
        if (regular.Fits || asked.Series is not { } series || regular.Bound < series * (asked.Parallel ?? 1))
            return regular;
        first?.Invoke(regular);
        return LayoutSearch.Search(asked, FitEffort.Full, progress, stopped);
    }

    /// <summary>Searches the job's cavity as long as the verb fit does, whatever rows alone would hold.</summary>
    /// <param name="job">A job.</param>
    /// <param name="effort">How long to look.</param>
    /// <param name="stopped">The user's cancel; the best so far is answered.</param>
    /// <param name="progress">Told of the best so far; may be null.</param>
    /// <returns>The places, or why there is no cavity.</returns>
    public static Outcome<FitAnswer> FindMost(Job job, FitEffort effort, CancellationToken stopped, IProgress<FitProgress>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (job.FitCase is null)
            return NoCavity(job);
        return Case(job).Is(out FitCase? fitCase, out Refusal? why) ? LayoutSearch.Search(Asked(fitCase, job.Givens), effort, progress, stopped) : why;
    }

    private static Refusal NoCavity(Job job) => Refusal.Input(
        "no-cavity", job.Title, "the job has no cavity", "Add a fit case by job add JOB case.json, or say the size of a cell for a plain block: job set JOB cellDiameterMm=21.2 cellLengthMm=70.2.");

    // What the job was told wins over what the case said: the case may be older.
    private static FitCase Asked(FitCase fitCase, JobGivens givens) => fitCase with
    {
        Series = givens.Series ?? fitCase.Series,
        Parallel = givens.Parallel ?? fitCase.Parallel,
        CellMassLimitKg = givens.NumberOf("cellMassLimitKg") ?? fitCase.CellMassLimitKg,
        NominalV = givens.NominalV ?? fitCase.NominalV,
        FullV = givens.FullV ?? fitCase.FullV,
        HasVentPath = givens.TickOf("vents") ?? fitCase.HasVentPath,
        IsClamped = givens.TickOf("clamping"),
        CellMassG = fitCase.CellMassG ?? givens.NumberOf("cellMassKg") * 1000,
    };
}
