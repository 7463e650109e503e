using static System.FormattableString;

namespace PackPlanner.Core.Cells;

/// <summary>Whether a rated capacity can be meant, beside what was measured.</summary>
public static class RatedDoubt
{
    // No cell holds half as much again as its label says, and one with less than three tenths is seldom tested in a lot of its like (our choice).
    private const double Least = 0.3, Most = 1.5;

    /// <summary>A sentence where the two contradict one another.</summary>
    /// <param name="ratedAh">As stated, ampere-hours.</param>
    /// <param name="seenAh">As measured, ampere-hours.</param>
    /// <param name="seen">What was measured, such as "the lot's median".</param>
    /// <returns>The sentence, or null.</returns>
    public static string? Of(double? ratedAh, double? seenAh, string seen)
    {
        if (ratedAh is not > 0 || seenAh is not > 0)
            return null;
        double share = seenAh.Value / ratedAh.Value;
        return share is >= Least and <= Most ? null : Says(ratedAh.Value, seenAh.Value, seen);
    }

    /// <summary>The sentence itself.</summary>
    /// <param name="ratedAh">As stated, ampere-hours, above 0.</param>
    /// <param name="seenAh">As measured, ampere-hours, above 0.</param>
    /// <param name="seen">What was measured.</param>
    /// <returns>The sentence.</returns>
    public static string Says(double ratedAh, double seenAh, string seen)
    {
        double share = seenAh / ratedAh;
        string meant = share * 1000 is >= Least and <= Most ? $"; if {Invariant($"{ratedAh:0.###}")} mAh are meant, say {Invariant($"{ratedAh / 1000:0.#####}")} Ah"
            : share / 1000 is >= Least and <= Most ? $"; if it was given in kAh, say {Invariant($"{ratedAh * 1000:0.###}")} Ah"
            : "";
        return Invariant($"{seen} {seenAh:0.0##} Ah, {100 * share:0.##} % of the rated {ratedAh:0.###} Ah: the two contradict each other, and what rests on the rated figure is not to be trusted{meant}");
    }
}
