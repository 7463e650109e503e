using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Core.Sizing;

/// <summary>The arithmetic of sizing. Missing figures are null and carry through by lifted operators.</summary>
/// <remarks>Validity: steady currents, one resistance for the whole discharge; a starting point for a design, not a measurement.</remarks>
internal static class SizingFigures
{
    /// <summary>Relative slack within which equal counts as kept: 80 A x 1.25 is 100 A, not a hair more.</summary>
    private const double Slack = 1e-9;

    internal static RoadLoad? Road(VehicleNeed need) =>
        need is { MassKg: { } mass, DragAreaM2: { } drag, RollingCoefficient: { } rolling }
            ? new RoadLoad(mass, drag, rolling, (need.GradePercent ?? 0) / 100, need.AirDensityKgM3 ?? 1.225)
            : null;

    internal static NeedFigures Need(VehicleNeed need)
    {
        double? whPerKm = need.WhPerKm
            ?? (need.SpeedKmh is { } speed && Road(need) is { } road
                ? road.WhPerKm(speed, need.EfficiencyFraction ?? 1, need.AccessoryW ?? 0)
                : null);
        double? delivered = whPerKm * need.RangeKm;
        return new NeedFigures(whPerKm, delivered, delivered / KeptFraction(need));
    }

    /// <summary>Share of the rated energy that is left after reserve, working limits, age and cold.</summary>
    internal static double KeptFraction(VehicleNeed need) =>
        (1 - (need.ReserveFraction ?? 0)) * (need.UsableFraction ?? 1) * (need.AgeingFraction ?? 1) * (need.TemperatureFactor ?? 1);

    internal static SeriesWindow Window(SizingCell cell, Electrics electrics)
    {
        int? min = Ceiling(electrics.ControllerMinV / cell.CutoffV);
        int? max = Floor(electrics.ControllerMaxV / cell.FullV);
        int? stranding = Floor(electrics.ControllerMinV / cell.NominalV) + 1;
        IReadOnlyList<int>? matching = electrics.ChargerV is { } charger && cell.FullV is { } full
            ? [.. Enumerable.Range(1, (int)(charger / full / 0.97) + 2).Where(series => Matches(charger, series * full))]
            : null;
        return new SeriesWindow(min, max, stranding, matching);
    }

    /// <summary>Gentle charger settings are ordinary, over-charging is not: 3 % below to 0.5 % above. Common practice, no source.</summary>
    internal static bool Matches(double chargerV, double fullV) =>
        AtLeast(chargerV, 0.97 * fullV) && AtLeast(ChargerSettings.HighestOverFull * fullV, chargerV);

    /// <summary>Lowest volts at which the load still runs: the cells' cut-off or the controller's limit, whichever is higher.</summary>
    internal static double? LowEndV(SizingCell cell, Electrics electrics, int series)
    {
        double? cutoff = series * cell.CutoffV;
        return electrics.ControllerMinV is { } controller && cutoff is { } cells ? Math.Max(cells, controller) : cutoff;
    }

    internal static double? PeakA(SizingRequest request, SizingCell cell, int series)
    {
        double? asked = request.Need.PeakPowerW / LowEndV(cell, request.Electrics, series);
        return asked is { } amperes && request.Electrics.ControllerMaxA is { } most ? Math.Min(amperes, most) : asked;
    }

    internal static double? ContinuousW(SizingRequest request) =>
        request.Need.ContinuousPowerW ?? Need(request.Need).WhPerKm * request.Need.SpeedKmh;

    internal static double? ResistanceOhm(SizingRequest request, double? cellMilliohm, int series, double parallel) =>
        (series * cellMilliohm / parallel + request.Electrics.LinkResistanceMilliohm) / 1000;

    /// <summary>Usable watt-hours of S x P cells.</summary>
    internal static double? UsableWh(SizingRequest request, SizingCell cell, int series, double parallel)
    {
        double? nominalV = series * cell.NominalV;
        double? loss = ContinuousW(request) / nominalV * ResistanceOhm(request, cell.ResistanceMilliohm, series, parallel) / nominalV;
        // Where the cells lose all of their volts on the way, nothing arrives.
        return nominalV * parallel * cell.CapacityAh * KeptFraction(request.Need) * (loss is { } lost ? Math.Max(0, 1 - lost) : null);
    }

    /// <summary>Smallest P whose usable energy covers the range; null when unknown or when no P does.</summary>
    internal static int? ParallelForEnergy(SizingRequest request, SizingCell cell, int series)
    {
        if (Need(request.Need).EnergyDeliveredWh is not { } wanted || UsableWh(request, cell, series, 1) is null)
            return null;
        const int most = 1_000_000;
        if (!AtLeast(UsableWh(request, cell, series, most)!.Value, wanted))
            return null;
        int low = 0;
        int high = most;
        while (high - low > 1)
        {
            int middle = low + (high - low) / 2;
            if (AtLeast(UsableWh(request, cell, series, middle)!.Value, wanted))
                high = middle;
            else
                low = middle;
        }

        return high;
    }

    internal static bool AtLeast(double value, double limit) => value >= limit - Slack * Math.Max(1, Math.Abs(limit));

    internal static int? Ceiling(double? value) => value is { } known ? (int)Math.Ceiling(known - Slack * Math.Max(1, known)) : null;

    private static int? Floor(double? value) => value is { } known ? (int)Math.Floor(known + Slack * Math.Max(1, known)) : null;
}
