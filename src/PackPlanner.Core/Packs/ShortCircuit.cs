using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.Packs;

/// <summary>How hard a pack, or the neighbours of one shorted cell, can bite.</summary>
/// <remarks>
/// Always two figures. By DC resistance the low one: will the fuse clear? By 1 kHz resistance the first instant: what
/// must the fuse be able to break? Where the 1 kHz resistance is unknown the first instant is taken as twice the
/// DC figure. Source: [Kirchhoff]; the factor of two is [CommonPractice].
/// </remarks>
public static class ShortCircuit
{
    /// <summary>First instant over DC figure where the 1 kHz resistance is unknown.</summary>
    public const double FirstInstantOverDc = 2;

    /// <summary>Amperes from which tools melt and caution 21 is raised.</summary>
    public const double HighA = 1000;

    /// <summary>Cells in parallel up to which no fuse for each cell is asked about.</summary>
    public const int FewInParallel = 4;

    // Small: what is built with many in parallel and a strip, not with bolts. Common practice, no source.
    private const double SmallAh = 10;
    private const double SmallMilliohm = 5;

    /// <summary>Amperes through a dead short.</summary>
    /// <param name="openCircuitV">Volts of the whole source.</param>
    /// <param name="resistanceOhm">Cells, links and leads in its path, ohms, above zero.</param>
    /// <returns>Amperes.</returns>
    public static double CurrentA(double openCircuitV, double resistanceOhm) => openCircuitV / resistanceOhm;

    /// <summary>Most that the other cells of a group can drive through one that has shorted inside.</summary>
    /// <param name="parallel">Cells in parallel, at least 1.</param>
    /// <param name="cellV">Volts of a cell.</param>
    /// <param name="cellOhm">Resistance of a cell, ohms: 1 kHz, or half the DC figure.</param>
    /// <returns>Amperes: an upper bound, because the shorted cell and the links add resistance of their own.</returns>
    public static double IntoOneShortedCellA(int parallel, double cellV, double cellOhm) => (parallel - 1) * cellV / cellOhm;

    /// <summary>Caution 21, where the prospective current is above 1 kA.</summary>
    /// <param name="where">What would be shorted.</param>
    /// <param name="prospectiveA">First instant, amperes.</param>
    /// <returns>The caution, or null.</returns>
    public static Caution? HighCurrent(string where, double prospectiveA) => prospectiveA > HighA
        ? new Caution("caution-21", SignalWord.Warning, where, $"a short circuit begins at about {prospectiveA:0} A; the limit is {HighA:0} A")
        : null;

    /// <summary>Cells of which several in parallel ask for a fuse each; unknown ones count among them.</summary>
    /// <param name="cellAh">Capacity of a cell; null when unknown.</param>
    /// <param name="cellMilliohm">DC resistance of a cell, milliohm; null when unknown.</param>
    /// <returns>Whether it is small.</returns>
    public static bool IsSmall(double? cellAh, double? cellMilliohm) => cellAh is { } ah ? ah <= SmallAh : cellMilliohm is null or >= SmallMilliohm;

    /// <summary>Caution 22, where more than four small cells stand in parallel and no fuse for each is stated.</summary>
    /// <param name="where">The group.</param>
    /// <param name="parallel">Cells in parallel.</param>
    /// <param name="cellV">Most volts that a cell can have then, that of full where no reading says less; null when unknown.</param>
    /// <param name="cellMilliohm">DC resistance of a cell, milliohm; null when unknown.</param>
    /// <param name="cellAh">Capacity of a cell; null when unknown.</param>
    /// <returns>The caution, or null.</returns>
    public static Caution? NoCellFuses(string where, int parallel, double? cellV, double? cellMilliohm, double? cellAh)
    {
        string bound = cellMilliohm is { } milliohm && cellV is { } volts
            ? $"; if one shorts inside, the others can drive up to {IntoOneShortedCellA(parallel, volts, milliohm / 1000 / FirstInstantOverDc):0} A into it"
            : "; their milliohm is unknown, so the current into a shorted one is not known either";
        return parallel > FewInParallel && IsSmall(cellAh, cellMilliohm) ? Unfused(where, parallel, bound) : null;
    }

    /// <summary>The same where only the givens of a job are known: nothing is said of the current into a shorted cell.</summary>
    /// <param name="where">The group.</param>
    /// <param name="parallel">Cells in parallel.</param>
    /// <param name="cellAh">Capacity of a cell; null when unknown.</param>
    /// <returns>The caution, or null.</returns>
    public static Caution? NoCellFuses(string where, int parallel, double? cellAh) =>
        parallel > FewInParallel && IsSmall(cellAh, null) ? Unfused(where, parallel, "") : null;

    private static Caution Unfused(string where, int parallel, string bound) => new("caution-22", SignalWord.Caution, where,
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{parallel} small cells in parallel and no fuse for each cell stated; one is asked for above {FewInParallel}{bound}"));
}
