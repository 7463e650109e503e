using PackPlanner.Core.Packs;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>Where the heat goes: at the effective current of the ride, and at the largest current.</summary>
/// <param name="Riding">At the effective current; null without a load.</param>
/// <param name="Peak">At the largest current; null where none is given.</param>
/// <remarks>
/// I² R with the DC resistance of a load that lasts. Between cells of one group the mean is told; the hardest-worked
/// one takes more, as sharing tells. Source: [BatteryKnowledge].
/// </remarks>
public sealed record HeatParts(HeatAt? Riding, HeatAt? Peak)
{
    internal static HeatParts Of(EnergyRequest request, StringModel model, double effectiveA) => new(
        request.Load is null ? null : At(request, model, effectiveA, seconds: 60),
        request.PeakA is { } peakA ? At(request, model, peakA, request.PeakS) : null);

    private static HeatAt At(EnergyRequest request, StringModel model, double loadA, double? seconds)
    {
        double warmth = request.TemperatureDegC is { } degC ? ResistanceLaw.AtTemperature(degC) : 1;
        double square = loadA * loadA;
        double? cellsW = model.ResistanceOhm is { } ohms ? square * ohms.Sum() * warmth : null;
        int? cells = request.Groups.All(group => group.Parallel is not null) ? request.Groups.Sum(group => group.Parallel!.Value) : null;
        int fewest = cells is null ? 1 : request.Groups.Min(group => group.Parallel!.Value);
        double? cellW = cellsW / cells;
        (double Low, double High)? riseK = null;
        if (cellW is { } watts && request.CellMassKg is { } kg && seconds is { } lasts)
            riseK = (CellHeat.RiseK(watts, lasts, kg, CellHeat.SpecificHeat.High), CellHeat.RiseK(watts, lasts, kg, CellHeat.SpecificHeat.Low));
        return new HeatAt(
            loadA,
            seconds,
            cellsW,
            model.LinkOhm is { } linkOhm ? square * linkOhm : null,
            cellW,
            request.LinkMilliohm is { } link ? square * link / 1000 : null,
            request.JointMilliohm is { } joint && cells is not null ? square / fewest / fewest * joint / 1000 : null,
            riseK)
        {
            CellsMilliohm = model.ResistanceOhm?.Sum() * 1000,
            WarmthFactor = warmth,
            LinksMilliohm = model.LinkOhm * 1000,
        };
    }
}

/// <summary>Heat at one current.</summary>
/// <param name="LoadA">The current, amperes.</param>
/// <param name="Seconds">Time that <paramref name="RiseK"/> is told for; null when unknown.</param>
/// <param name="CellsW">All cells, watts; null when a resistance is unknown.</param>
/// <param name="LinksW">All links, joints and leads, watts; null when none is known.</param>
/// <param name="PerCellW">One cell, watts, the mean; null where the number in parallel is unknown too.</param>
/// <param name="PerLinkW">One link, watts; null when unknown.</param>
/// <param name="PerJointW">One joint of a cell in the smallest group, watts; null when unknown.</param>
/// <param name="RiseK">Kelvin by which a cell warms in that time if no heat leaves it, for the highest and the lowest specific heat; null when its mass or time is unknown.</param>
public sealed record HeatAt(
    double LoadA, double? Seconds, double? CellsW, double? LinksW, double? PerCellW, double? PerLinkW, double? PerJointW, (double Low, double High)? RiseK)
{
    /// <summary>DC resistance of all groups in series as it was measured, milliohm; null when a resistance is unknown.</summary>
    public double? CellsMilliohm { get; init; }

    /// <summary>Factor on it at the temperature of the ride, 1 at 25 °C or where none is given.</summary>
    public double WarmthFactor { get; init; } = 1;

    /// <summary>Links, joints and leads, milliohm; null when none is known.</summary>
    public double? LinksMilliohm { get; init; }
}
