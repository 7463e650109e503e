using PackPlanner.Core.Screening;

namespace PackPlanner.Core.Jobs;

/// <summary>The cells of a job as the room Screening judges them: the same question from every screen, sheet and verb.</summary>
public static class JobLot
{
    /// <summary>What the job says about its lot.</summary>
    /// <param name="job">The job.</param>
    /// <returns>Limits and verdicts by hand.</returns>
    public static ScreeningRequest Request(Job job) => new()
    {
        RatedAh = job.Givens.RatedAh,
        LeastFraction = job.Givens.NumberOf("minShareOfRated"),
        HighestMilliohm = job.Givens.NumberOf("maxMilliohm"),
        Chemistry = job.Givens.Chemistry,
        FullV = job.Givens.NumberOf("fullV"),
        EmptyV = job.Givens.NumberOf("emptyV"),
        RepeatabilityFraction = job.Givens.RepeatabilityFraction,
        ByHand = job.Verdicts.ToDictionary(
            pair => pair.Key, pair => new HandVerdict(pair.Value.Verdict, pair.Value.Reason), StringComparer.Ordinal),
    };

    /// <summary>Judges the cells.</summary>
    /// <param name="job">The job.</param>
    /// <returns>A verdict for each cell.</returns>
    public static ScreenedLot Judge(Job job) => LotScreening.Judge(job.Rows, Request(job));
}
