using PackPlanner.Core.Jobs;

namespace PackPlanner.Tests.Core.Jobs;

/// <summary>Full and empty volts of one cell. That NMC is charged to 4.20 V and LFP to 3.65 V is common practice, no source.</summary>
public class CellVoltsGivenTests
{
    private static JobGivens Told(string chemistry, double? full, double? empty)
    {
        Origin you = Origin.You(new DateOnly(2026, 11, 2));
        JobGivens givens = new JobGivens().With("chemistry", new Given(new JobValue.Word(chemistry), you)).With("series", new Given(new JobValue.Number(13), you));
        givens = full is { } f ? givens.With("fullV", new Given(new JobValue.Number(f), you)) : givens;
        return empty is { } e ? givens.With("emptyV", new Given(new JobValue.Number(e), you)) : givens;
    }

    [Theory]
    [InlineData(4.2, 3.0, null)]
    [InlineData(4.1, null, null)]
    [InlineData(42.0, 3.0, "not what one cell has when full")]
    [InlineData(2.0, 3.0, "has to lie above empty (3 V)")]
    [InlineData(null, 4.5, "full (4.2 V) has to lie above")]
    [InlineData(null, 39.0, "when empty")]
    public void Volts_that_cannot_be_are_told(double? full, double? empty, string? why)
    {
        string? wrong = CellVoltsGiven.Wrong(Told("NMC", full, empty));

        if (why is null)
            Assert.Null(wrong);
        else
            Assert.Contains(why, wrong, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("NMC", 4.25, false)]
    [InlineData("NMC", 4.26, true)]
    [InlineData("NMC", 4.5, true)]
    [InlineData("LFP", 4.2, true)]
    public void A_full_voltage_above_that_of_the_chemistry_is_a_caution_before_a_charger_is_set_by_it(string chemistry, double full, bool warned)
    {
        Assert.Equal(warned, JobCautions.Of(Told(chemistry, full, null)).Any(caution => caution.Code == "caution-03" && caution.Saw.Contains("named as full", StringComparison.Ordinal)));
    }
}
