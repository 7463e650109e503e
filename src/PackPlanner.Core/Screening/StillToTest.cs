using MathNet.Numerics;

namespace PackPlanner.Core.Screening;

/// <summary>How many more cells must be tested to fill the places of a pack.</summary>
/// <param name="Missing">Places that usable cells do not fill yet.</param>
/// <param name="Low">Fewest tests: in one case of twenty even fewer do.</param>
/// <param name="Likely">Places short over the pass rate so far, rounded up; null while no cell has passed.</param>
/// <param name="High">Most tests: in one case of twenty more are needed; null while too little is known.</param>
/// <param name="Rounds">Rounds of testing for <see cref="Likely"/>, all slots filled; null when the slots are unknown.</param>
/// <param name="Hours">Hours for those rounds; null when slots or hours are unknown.</param>
/// <param name="Passed">Cells that passed so far.</param>
/// <param name="Tried">Cells judged so far; those without a whole test are not among them.</param>
/// <remarks>
/// Low and high hold the truth nine times in ten: the pass rate after n cells is known as a beta distribution
/// (Jeffreys' prior), and the number of further tests until the last place is filled is negative binomial for any
/// one rate; both chances are taken together. Pass rate times number alone would forget both.
/// </remarks>
public sealed record StillToTest(int Missing, int Low, int? Likely, int? High, int? Rounds, double? Hours, int Passed, int Tried)
{
    // Beyond this many tests nobody plans; the high end is then unknown.
    private const int MostTests = 1_000_000;

    /// <summary>Counts what is still to do.</summary>
    /// <param name="lot">The lot so far.</param>
    /// <param name="places">Cells in series times cells in parallel.</param>
    /// <param name="slots">Tester slots; null when unknown.</param>
    /// <param name="hoursPerTest">Hours of one test; null when unknown.</param>
    /// <returns>The count.</returns>
    public static StillToTest Of(ScreenedLot lot, int places, int? slots, double? hoursPerTest)
    {
        int passed = lot.Count(Verdict.Use);
        int tried = lot.Cells.Count(cell => cell.CapacityAh is not null || cell.Verdict == Verdict.Reject);
        return Of(places, passed, tried, slots, hoursPerTest);
    }

    /// <summary>Counts what is still to do from the bare numbers.</summary>
    /// <param name="places">Places to fill.</param>
    /// <param name="passed">Cells that passed.</param>
    /// <param name="tried">Cells judged, at least <paramref name="passed"/>.</param>
    /// <param name="slots">Tester slots; null when unknown.</param>
    /// <param name="hoursPerTest">Hours of one test; null when unknown.</param>
    /// <returns>The count.</returns>
    public static StillToTest Of(int places, int passed, int tried, int? slots, double? hoursPerTest)
    {
        int missing = Math.Max(0, places - passed);
        if (missing == 0)
            return new StillToTest(0, 0, 0, 0, 0, slots is null || hoursPerTest is null ? null : 0, passed, tried);
        int? likely = passed == 0 ? null : (int)Math.Min(MostTests, Math.Ceiling((double)missing * tried / passed));
        int? rounds = likely is { } tests && slots is > 0 ? (tests + slots.Value - 1) / slots.Value : null;
        return new StillToTest(
            missing, Quantile(missing, passed, tried, 0.05) ?? missing, likely, tried == 0 ? null : Quantile(missing, passed, tried, 0.95),
            rounds, rounds * hoursPerTest, passed, tried);
    }

    // Tests after which `missing` passes have come with at least this chance. The chance of k failures before the r-th
    // pass is C(k+r-1, k) B(a+r, b+k) / B(a, b), with a = passed + 1/2 and b = failed + 1/2.
    private static int? Quantile(int missing, int passed, int tried, double chance)
    {
        double a = passed + 0.5;
        double b = tried - passed + 0.5;
        double log = SpecialFunctions.BetaLn(a + missing, b) - SpecialFunctions.BetaLn(a, b);
        double total = 0;
        for (int failures = 0; failures < MostTests; failures++)
        {
            total += Math.Exp(log);
            if (total >= chance)
                return missing + failures;
            log += Math.Log((failures + missing) / (failures + 1.0)) + Math.Log((b + failures) / (a + missing + b + failures));
        }

        return null;
    }
}
