using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Jobs;

/// <summary>Whether the full and empty volts that a job is told can be those of one of its cells.</summary>
public static class CellVoltsGiven
{
    // Wider than any lithium cell that is sold: common practice, no source.
    private const double LowestV = 0.5, HighestV = 5;

    /// <summary>What cannot be.</summary>
    /// <param name="givens">The givens as they would be.</param>
    /// <returns>A sentence without its stop; null when nothing is wrong.</returns>
    public static string? Wrong(JobGivens givens)
    {
        foreach ((string key, string word) in new[] { ("fullV", "full"), ("emptyV", "empty") })
        {
            if (givens.NumberOf(key) is { } volts && volts is < LowestV or > HighestV)
                return FormattableString.Invariant($"{volts:0.###} V is not what one cell has when {word}; the volts of the whole pack are not asked for");
        }

        return (givens.NumberOf("fullV") is not null || givens.NumberOf("emptyV") is not null) && givens.FullV <= givens.EmptyV
            ? FormattableString.Invariant($"full ({givens.FullV:0.##} V) has to lie above empty ({givens.EmptyV:0.##} V)")
            : null;
    }

    /// <summary>Caution 3 where the full volts lie above those of the chemistry: chargers are set by them.</summary>
    /// <param name="givens">The givens.</param>
    /// <returns>The caution; null where they do not, or the chemistry is not known.</returns>
    public static Caution? AboveChemistry(JobGivens givens) =>
        givens is { Chemistry: { } chemistry } && givens.NumberOf("fullV") is { } full && full > chemistry.FullV + Chemistry.OverFullV
            ? new Caution(
                "caution-03", SignalWord.Warning, "full volts as told", FormattableString.Invariant($"{full:0.00} V named as full; {chemistry.Name} is full at {chemistry.FullV:0.00} V"),
                "Look at the data sheet of the cell, and correct the volts, before a charger is set by them.")
            : null;
}
