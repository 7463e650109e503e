using PackPlanner.Core.Cautions;
using static System.FormattableString;

namespace PackPlanner.Core.Packs;

/// <summary>Caution 27: a box that one person should not lift.</summary>
public static class HeavyBox
{
    // Common practice, no source.
    private const double HeavyKg = 25;

    /// <summary>The caution, where a box is heavy.</summary>
    /// <param name="where">The box.</param>
    /// <param name="massKg">Kilograms; null when it is not known.</param>
    /// <param name="weighed">What the mass holds, in words that follow it.</param>
    /// <returns>The caution, or null.</returns>
    public static Caution? Of(string where, double? massKg, string weighed) => massKg > HeavyKg
        ? new Caution("caution-27", SignalWord.Caution, where, Invariant($"{massKg:0.0} kg {weighed}; a box is heavy above {HeavyKg:0} kg"))
        : null;
}
