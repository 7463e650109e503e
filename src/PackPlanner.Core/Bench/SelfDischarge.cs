using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Bench;

/// <summary>What dated resting volts of one cell tell about the charge it loses by itself.</summary>
/// <param name="MillivoltPerDay">Fall of the resting volts, positive when falling.</param>
/// <param name="SpreadMillivoltPerDay">One standard deviation of that; null when the table states the rate without its readings.</param>
/// <param name="PercentPerMonth">Charge lost in 30 days, percent of the capacity; null unless <see cref="Answer"/> is <see cref="LeakAnswer.Told"/>.</param>
/// <param name="SpreadPercentPerMonth">One standard deviation of the loss, also where it is too wide to be told; null without a curve.</param>
/// <param name="Days">Between the first and the last reading; null when the table states only the rate.</param>
/// <param name="Answer">Whether the charge lost can be told.</param>
/// <param name="DaysNeeded">Days between the readings after which it could be told with this meter; null when it is told or time does not help.</param>
/// <remarks>
/// Millivolts a day are never the judge: 0.5 mV/day is little on a steep curve and 19 % a month on an LFP plateau.
/// They are turned into charge through the slope of the chemistry's resting curve at the cell's own volts.
/// </remarks>
public sealed record SelfDischarge(
    double MillivoltPerDay,
    double? SpreadMillivoltPerDay,
    double? PercentPerMonth,
    double? SpreadPercentPerMonth,
    double? Days,
    LeakAnswer Answer,
    double? DaysNeeded)
{
    /// <summary>A month of self-discharge is 30 days.</summary>
    public const double DaysInMonth = 30;

    /// <summary>The least one standard deviation of a bench reading of resting volts. Source: [CommonPractice].</summary>
    public const double LeastSpreadV = 0.001;

    /// <summary>Readings closer together than this show settling, not loss. Source: [CommonPractice].</summary>
    public const double FewestDays = 3;

    /// <summary>A loss is told when twice its spread is no more than this, percent a month, or than half of the loss. Our choice.</summary>
    public const double WidestPercent = 3;

    /// <summary>
    /// Under this slope, taken over ten percent of charge to either side, a resting voltage tells no charge: millivolts
    /// per percent. Our choice; the LFP plateau has 0.8 to 1.2, and the small step within it is no help, because
    /// hysteresis moves it.
    /// </summary>
    public const double FlatMillivoltPerPercent = 2;

    /// <summary>On a flat curve a fall is told once it is larger than settling and hysteresis: 5 to 25 mV. Source: [LfpHysteresis].</summary>
    public const double ClearFallOnFlatV = 0.025;

    /// <summary>Judges dated readings.</summary>
    /// <param name="days">Days since any moment, rising, shape [n], n ≥ 2, the last above the first.</param>
    /// <param name="volts">Resting volts, shape [n].</param>
    /// <param name="stepV">Smallest step in which the meter writes volts; 0 when unknown.</param>
    /// <param name="curve">Resting curve of the chemistry; null when unknown.</param>
    /// <returns>What can be told.</returns>
    /// <exception cref="ArgumentException">Fewer than two readings, or no time between them.</exception>
    public static SelfDischarge Of(IReadOnlyList<double> days, IReadOnlyList<double> volts, double stepV, OpenCircuitCurve? curve)
    {
        if (days.Count < 2 || days.Count != volts.Count || days[^1] <= days[0])
            throw new ArgumentException("Two readings at two moments are needed at least.");
        double meanDay = days.Average();
        double squares = days.Sum(day => (day - meanDay) * (day - meanDay));
        double slopeV = days.Zip(volts, (day, volt) => (day - meanDay) * volt).Sum() / squares;
        double spreadV = SpreadOfReadingV(stepV) / Math.Sqrt(squares);
        double span = days[^1] - days[0];
        SelfDischarge bare = new(-slopeV * 1000, spreadV * 1000, null, null, span, LeakAnswer.NoCurve, null);
        return curve is null ? bare : bare.Through(curve, volts.Average(), stepV);
    }

    /// <summary>Judges a rate that the table states itself.</summary>
    /// <param name="millivoltPerDay">Fall a day, positive when falling.</param>
    /// <param name="restV">Resting volts at which it holds; null when unknown.</param>
    /// <param name="curve">Resting curve of the chemistry; null when unknown.</param>
    /// <returns>What can be told.</returns>
    public static SelfDischarge Stated(double millivoltPerDay, double? restV, OpenCircuitCurve? curve)
    {
        SelfDischarge bare = new(millivoltPerDay, null, null, null, null, LeakAnswer.NoCurve, null);
        if (curve is null || restV is not { } volts)
            return bare;
        double slope = MillivoltPerPercent(curve, volts);
        return IsFlat(curve, volts)
            ? bare with { Answer = LeakAnswer.FlatCurve }
            : bare with { Answer = LeakAnswer.Told, PercentPerMonth = millivoltPerDay * DaysInMonth / slope };
    }

    /// <summary>One standard deviation of one reading of a meter that writes this step.</summary>
    /// <param name="stepV">Smallest step, volts; 0 when unknown.</param>
    /// <returns>Volts.</returns>
    public static double SpreadOfReadingV(double stepV) => Math.Max(LeastSpreadV, stepV / Math.Sqrt(12));

    /// <summary>The steady current that would lose the same charge.</summary>
    /// <param name="percentPerMonth">Percent of the capacity in 30 days.</param>
    /// <param name="capacityAh">Capacity, Ah.</param>
    /// <returns>Milliamperes.</returns>
    public static double LeakMilliamp(double percentPerMonth, double capacityAh) =>
        percentPerMonth / 100 * capacityAh / (DaysInMonth * 24) * 1000;

    /// <summary>Slope of a resting curve at a resting voltage.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="volts">Resting volts.</param>
    /// <returns>Millivolts per percent of charge.</returns>
    public static double MillivoltPerPercent(OpenCircuitCurve curve, double volts) =>
        curve.SlopeAt(Math.Clamp(curve.FractionAt(volts), 0, 1)) * 10;

    private static bool IsFlat(OpenCircuitCurve curve, double volts)
    {
        double middle = Math.Clamp(curve.FractionAt(volts), 0, 1);
        double low = Math.Max(0, middle - 0.1);
        double high = Math.Min(1, middle + 0.1);
        return (curve.VoltsAt(high) - curve.VoltsAt(low)) / (high - low) * 10 < FlatMillivoltPerPercent;
    }

    private SelfDischarge Through(OpenCircuitCurve curve, double middleV, double stepV)
    {
        double slope = MillivoltPerPercent(curve, middleV);
        double fallV = MillivoltPerDay * Days!.Value / 1000;
        double lost = curve.FractionAt(middleV + fallV / 2) - curve.FractionAt(middleV - fallV / 2);
        double percent = 100 * lost / Days.Value * DaysInMonth;
        double spread = SpreadMillivoltPerDay!.Value * DaysInMonth / slope;
        double narrow = spread / SpreadOfReadingV(stepV) * LeastSpreadV;
        LeakAnswer answer =
            Days < FewestDays ? LeakAnswer.TooEarly
            : IsFlat(curve, middleV) && fallV < ClearFallOnFlatV ? LeakAnswer.FlatCurve
            : MillivoltPerDay < -3 * SpreadMillivoltPerDay ? LeakAnswer.Rose
            : IsNarrow(percent, spread) ? LeakAnswer.Told
            : IsNarrow(percent, narrow) ? LeakAnswer.CoarseMeter
            : LeakAnswer.TooEarly;
        return this with
        {
            Answer = answer,
            PercentPerMonth = answer == LeakAnswer.Told ? percent : null,
            SpreadPercentPerMonth = spread,
            DaysNeeded = answer is LeakAnswer.TooEarly or LeakAnswer.CoarseMeter
                ? Math.Ceiling(Math.Max(FewestDays, Days.Value * 2 * spread / WidestPercent))
                : null,
        };
    }

    private static bool IsNarrow(double percent, double spread) => 2 * spread <= Math.Max(WidestPercent, percent / 2);
}
