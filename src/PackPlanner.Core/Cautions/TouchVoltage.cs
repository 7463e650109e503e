using static System.FormattableString;

namespace PackPlanner.Core.Cautions;

/// <summary>Volts that are dangerous to touch, wherever a pack's full voltage is known.</summary>
public static class TouchVoltage
{
    /// <summary>Volts DC above which a touch is dangerous. Source: [Iso6469-4] 5.2.2.</summary>
    public const double LimitV = 60;

    /// <summary>The caution of a pack above the limit.</summary>
    /// <param name="where">What it hangs on.</param>
    /// <param name="fullV">Volts of the whole pack at full charge; null when unknown.</param>
    /// <returns>Null at or below the limit, and when unknown.</returns>
    public static Caution? Of(string where, double? fullV) => fullV > LimitV
        ? new Caution("caution-09", SignalWord.Warning, where, Invariant($"{fullV:0.0#} V when full, above {LimitV:0} V DC"))
        : null;
}
