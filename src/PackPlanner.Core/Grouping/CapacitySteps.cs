namespace PackPlanner.Core.Grouping;

/// <summary>Capacities as whole steps of the resolution in which they were written, so that all sums are exact.</summary>
/// <param name="Steps">Each capacity in steps.</param>
/// <param name="UnitDigits">The unit is a power of ten: 10 to the minus this many ampere-hours.</param>
/// <param name="UnitsPerStep">Units in one step.</param>
internal sealed record CapacitySteps(long[] Steps, int UnitDigits, long UnitsPerStep)
{
    /// <summary>Finer than any tester resolves; figures that were computed are rounded to this.</summary>
    private const int MostDigits = 7;

    /// <summary>The step itself, ampere-hours.</summary>
    internal double StepAh => InAh(1);

    /// <summary>Finds the coarsest decimal step in which all capacities are whole.</summary>
    /// <param name="capacityAh">Ampere-hours, finite and above zero.</param>
    internal static CapacitySteps Of(IReadOnlyList<double> capacityAh)
    {
        int digits = 0;
        while (digits < MostDigits && !capacityAh.All(ah => IsWhole(ah, digits)))
            digits++;
        double scale = Math.Pow(10, digits);
        long[] units = [.. capacityAh.Select(ah => (long)Math.Round(ah * scale))];
        long common = 0;
        foreach (long unit in units)
            common = CommonDivisor(unit, common);
        common = Math.Max(1, common);
        return new CapacitySteps([.. units.Select(unit => unit / common)], digits, common);
    }

    /// <summary>Steps as ampere-hours: the double nearest to the exact decimal.</summary>
    internal double InAh(long steps) => steps * UnitsPerStep / Math.Pow(10, UnitDigits);

    /// <summary>One of the capacities in steps.</summary>
    internal long StepsOf(double ah) => (long)Math.Round(ah * Math.Pow(10, UnitDigits)) / UnitsPerStep;

    private static bool IsWhole(double ah, int digits)
    {
        double scaled = ah * Math.Pow(10, digits);
        return Math.Abs(scaled - Math.Round(scaled)) <= 1e-12 * Math.Max(1, scaled) * 8;
    }

    private static long CommonDivisor(long a, long b) => b == 0 ? a : CommonDivisor(b, a % b);
}
