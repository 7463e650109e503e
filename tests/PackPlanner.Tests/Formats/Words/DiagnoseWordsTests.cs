using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Tests.Formats.Words;

public class DiagnoseWordsTests
{
    private static DiagnoseAnswer Answer(bool told, params string[] findings) => new()
    {
        Groups = [new DiagnosedGroupJson(1, new RangedJson(20, 19, 21), null, null, null, null, null, 0, findings, [.. findings.Select(f => new FindingDetailJson(f, ["a ground"], "high", "a measurement"))])],
        Recovery = new RecoveryJson(20, 20, 20, 1, 1, 1, null),
        Remedies = [],
        Events = [],
        Cold = null,
        CapacityTold = told,
        CannotTellBecause = told ? null : "the log is short",
        Log = "ride.csv",
    };

    // The next step follows what was found: a sound pack has no gravest finding to measure.
    [Fact]
    public void The_next_step_follows_what_was_found()
    {
        Assert.Contains("keep this log", DiagnoseWords.Lines(Answer(true))[^1], StringComparison.Ordinal);
        Assert.Contains("log what is named above", DiagnoseWords.Lines(Answer(false, "cannot-tell"))[^1], StringComparison.Ordinal);
        Assert.Contains("measurement named beside the gravest finding", DiagnoseWords.Lines(Answer(true, "imbalance"))[^1], StringComparison.Ordinal);
        Assert.Contains("measurement named beside the gravest finding", DiagnoseWords.Lines(Answer(false, "connection", "cannot-tell"))[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Figures_that_rest_on_capacities_not_told_say_so()
    {
        Assert.Contains(DiagnoseWords.Lines(Answer(false, "cannot-tell")), line => line.Contains("suppose the likeliest capacities, which this log does not tell", StringComparison.Ordinal));
        Assert.DoesNotContain(DiagnoseWords.Lines(Answer(true)), line => line.Contains("likeliest capacities", StringComparison.Ordinal));
    }
}
