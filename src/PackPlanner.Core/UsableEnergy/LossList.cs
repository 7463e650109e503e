using PackPlanner.Core.Cells;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>The discharges behind the list, one after the other, each with one more thing that costs energy.</summary>
internal sealed class LossList(EnergyRequest request, StringModel model, CancellationToken stopped, int stepCount = Discharge.Steps)
{
    private readonly List<LossStep> steps = [];
    private readonly double warmthOfCapacity = request.TemperatureDegC is { } degC ? ColdCapacity.Fraction(request.Chemistry, degC) : 1;
    private readonly double warmthOfOhms = request.TemperatureDegC is { } degC ? ResistanceLaw.AtTemperature(degC) : 1;
    private double reachedWh;

    internal IReadOnlyList<LossStep> Steps => steps;

    internal double NominalWh => request.Groups.Count * request.LabelV * request.LabelAh;

    /// <summary>The last discharge before something is kept back.</summary>
    internal DischargeRun BeforeReserve { get; private set; } = null!;

    /// <summary>The last discharge of all.</summary>
    internal DischargeRun Last { get; private set; } = null!;

    /// <summary>The string of <see cref="BeforeReserve"/>.</summary>
    internal SeriesString Ridden { get; private set; } = null!;

    /// <summary>Runs all discharges.</summary>
    /// <returns>The one at rest: warm, without load, nothing kept back.</returns>
    internal DischargeRun Build()
    {
        reachedWh = NominalWh;
        double endV = request.TestCutoffV ?? request.EndsAtV;
        double[] full = model.All(1);
        double[] mean = model.All(model.CapacityAh.Average());
        if (request.RatedAh is { } ratedAh)
        {
            Step("curve's mean volts against nominal", AtRest(model.All(ratedAh), full, endV));
            Step("ageing", AtRest(mean, full, endV));
        }
        else
        {
            Step("curve's mean volts against nominal", AtRest(mean, full, endV));
        }

        Step("weakest group", AtRest(model.CapacityAh, full, endV));
        Step("charge offsets", AtRest(model.CapacityAh, model.Offsets(1), endV));
        double[] start = model.Offsets(model.TopFraction);
        DischargeRun atRest = AtRest(model.CapacityAh, start, request.EndsAtV);
        if (model.TopFraction < 1 || request.EndsAtV != endV)
            Step("charged and emptied within other limits", atRest);
        if (request.Load is not null)
            UnderLoad(start);
        if (request.PackEmptyV is not null)
            Step("controller's low-voltage limit", Run(model.Now(), End()));
        Ridden = Chilled(model.Now());
        (BeforeReserve, DischargeRun kept) = Ride(model.Now());
        if (request.TemperatureDegC is not null)
            Step("temperature", BeforeReserve);
        if (request.ReserveFraction > 0)
            Step("reserve", kept);
        Last = kept;
        return atRest;
    }

    /// <summary>One ride with all that the request names, and the same ride stopped when only the reserve is left.</summary>
    /// <param name="warm">The string at the temperature of the tests.</param>
    internal (DischargeRun Ride, DischargeRun Kept) Ride(SeriesString warm)
    {
        SeriesString pack = Chilled(warm);
        DischargeRun ride = Run(pack, End());
        return (ride, request.ReserveFraction > 0
            ? Run(pack, End() with { AfterWh = ride.DeliveredWh * (1 - request.ReserveFraction) })
            : ride);
    }

    private void UnderLoad(double[] start)
    {
        bool known = model.ResistanceOhm is not null;
        SeriesString cells = model.String(model.CapacityAh, start, withCells: true, withLinks: false);
        SeriesString all = model.Now();
        DischargeEnd resting = new(request.EndsAtV, UnderLoad: false);
        Step("heat in cells", known ? Run(cells, resting) : null);
        Step("heat in links", model.LinkOhm is null ? null : Run(all, resting));
        Step("cut-off under load", known ? Run(all, new DischargeEnd(request.EndsAtV, UnderLoad: true)) : null);
    }

    private DischargeEnd End() => new(request.EndsAtV, UnderLoad: true, request.PackEmptyV);

    private DischargeRun AtRest(double[] capacityAh, double[] start, double endV) => Discharge.Run(
        model.String(capacityAh, start, withCells: false, withLinks: false), null, new DischargeEnd(endV, UnderLoad: false), stopped, stepCount);

    private DischargeRun Run(SeriesString pack, DischargeEnd end) => Discharge.Run(pack, request.Load, end, stopped, stepCount);

    private SeriesString Chilled(SeriesString warm) => request.TemperatureDegC is null ? warm : new()
    {
        Curve = warm.Curve,
        CapacityAh = [.. warm.CapacityAh.Select(ah => ah * warmthOfCapacity)],
        StartFraction = warm.StartFraction,
        CellOhm = [.. warm.CellOhm.Select(ohm => ohm * warmthOfOhms)],
        LinkOhm = warm.LinkOhm,
    };

    // A step that could not be computed stays in the list without a figure, and moves nothing.
    private void Step(string name, DischargeRun? run)
    {
        steps.Add(new LossStep(name, run is null ? null : run.DeliveredWh - reachedWh));
        reachedWh = run?.DeliveredWh ?? reachedWh;
    }
}
